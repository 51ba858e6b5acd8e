import type { WireComponent } from '../contract.ts';
import { isWebAddress } from './addresses.ts';
import { announce } from './announce.ts';
import type { Deeds } from './deeds.ts';
import { make, pressable } from './dom.ts';
import { choicesOf } from './lists.ts';
import { openPicker } from './picker.ts';
import { fieldsOf, Kind, numberOf, textOf } from './wire.ts';

const LINK = 5;
/** Names of the bot API's button styles, for the style sheet. */
const WEIGHTS: Readonly<Record<number, string>> = { 1: 'main', 2: 'plain', 3: 'done', 4: 'grave' };

/** A button of a message. */
export function button(component: WireComponent, messageId: string, deeds: Deeds): HTMLElement {
  const emoji = textOf(fieldsOf(component['emoji'])['name']);
  const label = [emoji, component.label ?? ''].filter((part) => part !== '').join(' ') || 'Unnamed';
  const style = numberOf(component['style']) ?? 2;
  const address = textOf(component['url']);
  if (style === LINK && isWebAddress(address)) {
    const rel = 'noopener noreferrer nofollow';
    return make(
      'a',
      { class: 'press', href: address, title: address, target: '_blank', rel, dir: 'auto' },
      label,
    );
  }
  const customId = component.custom_id ?? '';
  const press = pressable(label, () => void once(press, label, () => deeds.press(messageId, customId)), {
    'data-weight': WEIGHTS[style] ?? 'plain',
    'data-control': customId,
    dir: 'auto',
  });
  press.disabled = component.disabled === true || customId === '';
  return press;
}

/** A list of a message, opened as a sheet to choose from. */
export function select(component: WireComponent, messageId: string, deeds: Deeds): HTMLElement {
  const customId = component.custom_id ?? '';
  const prompt = textOf(component['placeholder']) || 'Choose from a list';
  const act = async (): Promise<void> => {
    const choices = choicesOf(component, deeds.lists());
    const least = numberOf(component['min_values']) ?? 1;
    const most = numberOf(component['max_values']) ?? 1;
    const values = await openPicker({ prompt, choices, least, most });
    if (values !== undefined) await once(open, prompt, () => deeds.choose(messageId, customId, values));
  };
  const chosen = choicesOf(component, deeds.lists()).filter((choice) => choice.chosen);
  const label = chosen.length > 0 ? chosen.map((choice) => choice.label).join(', ') : prompt;
  const open = pressable(`${label} …`, () => void act(), {
    class: 'press list',
    'data-control': customId,
    'aria-haspopup': 'dialog',
    dir: 'auto',
  });
  open.disabled = component.disabled === true || component.type === Kind.roleSelect || customId === '';
  return open;
}

/** Carries out one deed of an entry at a time, showing that it is under way and then what came of it. */
async function once(
  control: HTMLElement,
  label: string,
  deed: () => Promise<string | undefined>,
): Promise<void> {
  const entry = control.closest<HTMLElement>('.entry');
  if (entry === null || entry.hasAttribute('data-busy')) return;
  entry.querySelector('.problem')?.remove();
  entry.toggleAttribute('data-busy', true);
  control.setAttribute('aria-busy', 'true');
  announce(`${label}: sent.`);
  const problem = await deed();
  control.removeAttribute('aria-busy');
  entry.toggleAttribute('data-busy', false);
  if (problem !== undefined)
    entry.append(make('p', { class: 'problem', role: 'alert', dir: 'auto' }, problem));
}
