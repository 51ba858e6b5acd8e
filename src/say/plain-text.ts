import type { OpenForm, WireComponent, WireMessage } from '../channel/contract.ts';

/** A message as a person would read it, without its styling and with names for ids: what the terminal prints. */
export function plainText({ content, components, attachments }: WireMessage, nameOf: NameOf): string {
  const parts = [
    unstyled(content, nameOf),
    ...components.map((component) => componentText(component, nameOf)),
    ...attachments.map(({ filename }) => `[${filename.endsWith('.png') ? 'picture' : 'file'} ${filename}]`),
  ];
  return parts.filter(Boolean).join('\n');
}

type NameOf = (personId: string) => string | undefined;

/** A form as its questions, each with what stands in it. */
export function formText({ title, components }: OpenForm): string {
  const fields = components.map(({ label = '', component }) => {
    const value = typeof component?.['value'] === 'string' ? component['value'] : '';
    return `  ${component?.custom_id ?? ''}: ${label}${value === '' ? '' : ` [${value}]`}`;
  });
  return [`Form: ${title}`, ...fields].join('\n');
}

/** Every component with a custom_id in a message, however nested, in reading order. */
export function pressable(components: readonly WireComponent[]): readonly WireComponent[] {
  return components.flatMap((component) => [
    ...(component.custom_id === undefined ? [] : [component]),
    ...pressable(component.components ?? []),
    ...pressable(component.accessory ? [component.accessory] : []),
  ]);
}

/** A menu with what can be chosen from it. */
export interface Menu {
  readonly customId: string;
  readonly options: readonly { readonly label: string; readonly value: string }[];
}

export function menus(components: readonly WireComponent[]): readonly Menu[] {
  return pressable(components).flatMap((component) =>
    component.custom_id === undefined || !isMenu(component)
      ? []
      : [{ customId: component.custom_id, options: optionsOf(component) }],
  );
}

function componentText(component: WireComponent, nameOf: NameOf): string {
  const { content, label, components = [], accessory } = component;
  if (content !== undefined) return unstyled(content, nameOf);
  if (label !== undefined) return `[${label}]`;
  if (isMenu(component))
    return `[menu: ${optionsOf(component)
      .map(({ label: choice }) => choice)
      .join(' | ')}]`;
  const inside = [...components, ...(accessory ? [accessory] : [])]
    .map((one) => componentText(one, nameOf))
    .filter(Boolean);
  return inside.join(components.every((one) => one.label !== undefined) ? ' ' : '\n');
}

const isMenu = (component: WireComponent): boolean => Array.isArray(component['options']);

function optionsOf(component: WireComponent): Menu['options'] {
  const options: unknown = component['options'];
  if (!Array.isArray(options)) return [];
  return options.flatMap((option: unknown) =>
    typeof option === 'object' && option !== null && 'label' in option && 'value' in option
      ? [{ label: String(option.label), value: String(option.value) }]
      : [],
  );
}

/** Takes the markup off that our own cards use, then the backslashes that kept everything else literal. */
function unstyled(text: string, nameOf: NameOf): string {
  return text
    .split(/^```$/m)
    .map((part, index) => (index % 2 === 1 ? part : plainMarkup(part, nameOf)).trim())
    .join('\n')
    .trim();
}

const plainMarkup = (text: string, nameOf: NameOf): string =>
  text
    .replace(/^(#{1,3} |-# |> )/gm, '')
    .replace(/(?<!\\)\*\*/g, '')
    .replace(/(?<!\\)<@(\d+)>/g, (mention, id: string) => {
      const name = nameOf(id);
      return name === undefined ? mention : `@${name}`;
    })
    .replace(/\\([^\w\s]|_)/g, '$1')
    .replaceAll('\u200b', '');
