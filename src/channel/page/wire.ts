/** Reading components and embeds: they come from any bot, so nothing in them is taken for granted. */
import type { WireComponent, WireMessage } from '../contract.ts';

/** Component types of the bot API that this page draws. */
export const Kind = {
  row: 1,
  button: 2,
  stringSelect: 3,
  textInput: 4,
  userSelect: 5,
  roleSelect: 6,
  mentionableSelect: 7,
  channelSelect: 8,
  section: 9,
  text: 10,
  thumbnail: 11,
  gallery: 12,
  file: 13,
  separator: 14,
  container: 17,
  label: 18,
  fileUpload: 19,
  radioGroup: 21,
  checkboxGroup: 22,
  checkbox: 23,
} as const;

/** Message flag: the message is made of components alone. */
const COMPONENTS_V2 = 32_768;

export function isMadeOfComponents(message: WireMessage): boolean {
  return (message.flags & COMPONENTS_V2) !== 0;
}

type Fields = Readonly<Record<string, unknown>>;

export function fieldsOf(value: unknown): Fields {
  // An object without an index signature may be read by any key; what is found there is still unknown.
  return typeof value === 'object' && value !== null ? (value as Fields) : {};
}

export function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

export function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}

export function numberOf(value: unknown): number | undefined {
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

export interface Option {
  readonly label: string;
  readonly value: string;
  readonly note: string;
  readonly chosen: boolean;
}

export function optionsOf(component: WireComponent): readonly Option[] {
  return listOf(component['options']).map((raw) => {
    const option = fieldsOf(raw);
    return {
      label: textOf(option['label']),
      value: textOf(option['value']),
      note: textOf(option['description']),
      chosen: option['default'] === true,
    };
  });
}

/** Address of a picture or file inside a component: `{ media: { url } }` or `{ file: { url } }`. */
/** How large a component's picture is, so that its place can be kept while it loads. */
export function mediaSize(value: unknown): { width: number; height: number } | undefined {
  const { width: across, height: down } = fieldsOf(fieldsOf(value)['media']);
  const [width, height] = [numberOf(across), numberOf(down)];
  return width === undefined || height === undefined ? undefined : { width, height };
}

export function mediaUrl(holder: unknown): string {
  const fields = fieldsOf(holder);
  return textOf(fieldsOf(fields['media'] ?? fields['file'])['url']);
}
