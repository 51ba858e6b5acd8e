import { isObject, type JsonObject, objectsIn } from '../wire/json.ts';
import { ButtonStyle, Part, SELECTS } from '../wire/numbers.ts';
import { checkBoolean, checkChoice, checkDistinct, checkList, checkNumber, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import type { Path, Problems } from './problems.ts';
import { checkSelect } from './selects.ts';

const { component: MAX } = LIMITS;

const TOP_V2: readonly number[] = [
  Part.row,
  Part.section,
  Part.text,
  Part.gallery,
  Part.file,
  Part.separator,
  Part.container,
];
const IN_CONTAINER = TOP_V2.filter((type) => type !== Part.container);

/** One component and where it stands, parents before children. */
export interface Placed {
  readonly part: JsonObject;
  readonly path: Path;
}

/** A component with everything inside it, in the order in which the platform numbers them. */
export function flatten(parts: readonly JsonObject[], path: Path): readonly Placed[] {
  return parts.flatMap((part, index) => {
    const at = [...path, index];
    const { accessory, component } = part;
    return [
      { part, path: at },
      ...flatten(objectsIn(part['components']), [...at, 'components']),
      ...(isObject(accessory) ? [{ part: accessory, path: [...at, 'accessory'] }] : []),
      ...(isObject(component) ? [{ part: component, path: [...at, 'component'] }] : []),
    ];
  });
}

/**
 * Components of a message: what may stand where, how many, how long, ids given once.
 * @param files names that `attachment://` may point at.
 */
export function checkMessageComponents(
  problems: Problems,
  value: unknown,
  v2: boolean,
  files: readonly string[],
): void {
  const path = ['components'];
  const parts = checkList(problems, path, value, { max: v2 ? MAX.inMessage : MAX.legacyRows });
  parts.forEach((part, index) => {
    checkPart(problems, [...path, index], part, v2 ? TOP_V2 : [Part.row], files);
  });
  const all = flatten(parts, path);
  if (v2 && all.length > MAX.inMessage) {
    problems.add(
      path,
      'COMPONENT_MAX_TOTAL_COMPONENTS_EXCEEDED',
      `A message may have at most ${MAX.inMessage} components.`,
    );
  }
  const textSum = all.reduce((sum, { part }) => sum + shownText(part).length, 0);
  if (textSum > MAX.textSum) {
    problems.add(
      path,
      'COMPONENT_DISPLAYABLE_TEXT_SIZE_EXCEEDED',
      `Total displayable text is limited to ${MAX.textSum}.`,
    );
  }
  checkIds(problems, all);
}

export const shownText = (part: JsonObject): string =>
  part['type'] === Part.text && typeof part['content'] === 'string' ? part['content'] : '';

/** No custom_id and no numeric id twice. */
export function checkIds(problems: Problems, all: readonly Placed[]): void {
  const keyed = (key: string) =>
    all
      .filter(({ part }) => part[key] !== undefined && part[key] !== null && part[key] !== 0)
      .map(({ part, path }) => ({ path: [...path, key], value: String(part[key]) }));
  checkDistinct(
    problems,
    keyed('custom_id'),
    'COMPONENT_CUSTOM_ID_DUPLICATED',
    'Component custom id cannot be duplicated',
  );
  checkDistinct(problems, keyed('id'), 'COMPONENT_ID_DUPLICATED', 'Component id cannot be duplicated');
}

function checkPart(
  problems: Problems,
  path: Path,
  part: JsonObject,
  allowed: readonly number[],
  files: readonly string[],
): void {
  const { type } = part;
  checkChoice(problems, [...path, 'type'], type, allowed, { required: true });
  if (typeof type !== 'number' || !allowed.includes(type)) return;
  checkNumber(problems, [...path, 'id'], part['id'], { min: 0, max: 2 ** 31 - 1, whole: true });
  const children = (bounds: { min: number; max: number }, kinds: readonly number[]) => {
    const at = [...path, 'components'];
    checkList(problems, at, part['components'], { ...bounds, required: true }).forEach((child, index) => {
      checkPart(problems, [...at, index], child, kinds, files);
    });
  };
  switch (type) {
    case Part.row:
      checkRow(problems, path, part, files);
      break;
    case Part.button:
      checkButton(problems, path, part);
      break;
    case Part.section: {
      children({ min: 1, max: MAX.sectionTexts }, [Part.text]);
      const { accessory } = part;
      if (!isObject(accessory))
        problems.add([...path, 'accessory'], 'BASE_TYPE_REQUIRED', 'This field is required');
      else checkPart(problems, [...path, 'accessory'], accessory, [Part.button, Part.thumbnail], files);
      break;
    }
    case Part.text:
      checkText(problems, [...path, 'content'], part['content'], { min: 1, max: MAX.text, required: true });
      break;
    case Part.thumbnail:
      checkMedia(problems, [...path, 'media'], part['media'], files);
      checkText(problems, [...path, 'description'], part['description'], { max: LIMITS.message.altText });
      break;
    case Part.gallery:
      checkList(problems, [...path, 'items'], part['items'], {
        min: 1,
        max: MAX.galleryItems,
        required: true,
      }).forEach((item, index) => {
        const at = [...path, 'items', index];
        checkMedia(problems, [...at, 'media'], item['media'], files);
        checkText(problems, [...at, 'description'], item['description'], { max: LIMITS.message.altText });
      });
      break;
    case Part.file:
      checkMedia(problems, [...path, 'file'], part['file'], files, true);
      break;
    case Part.separator:
      checkBoolean(problems, [...path, 'divider'], part['divider']);
      checkChoice(problems, [...path, 'spacing'], part['spacing'], [1, 2]);
      break;
    case Part.container:
      checkNumber(problems, [...path, 'accent_color'], part['accent_color'], {
        min: 0,
        max: MAX.accentColor,
        whole: true,
      });
      checkBoolean(problems, [...path, 'spoiler'], part['spoiler']);
      children({ min: 1, max: MAX.inMessage }, IN_CONTAINER);
      break;
    default:
      checkSelect(problems, path, part, false);
  }
}

/** Up to five buttons, or one select alone. */
function checkRow(problems: Problems, path: Path, row: JsonObject, files: readonly string[]): void {
  const at = [...path, 'components'];
  const parts = checkList(problems, at, row['components'], { min: 1, max: MAX.rowButtons, required: true });
  parts.forEach((part, index) => {
    checkPart(problems, [...at, index], part, [Part.button, ...SELECTS], files);
  });
  const selects = parts.filter((part) => SELECTS.includes(Number(part['type'])));
  if (selects.length > 0 && parts.length > 1) {
    problems.add(at, 'COMPONENT_LAYOUT_WIDTH_EXCEEDED', 'The specified component exceeds the maximum width');
  }
}

function checkButton(problems: Problems, path: Path, button: JsonObject): void {
  const { style, label, emoji, url } = button;
  checkChoice(problems, [...path, 'style'], style, Object.values(ButtonStyle), { required: true });
  checkText(problems, [...path, 'label'], label, { max: MAX.buttonLabel });
  checkBoolean(problems, [...path, 'disabled'], button['disabled']);
  const customId = button['custom_id'] ?? undefined;
  if (style === ButtonStyle.link) {
    checkText(problems, [...path, 'url'], url, { min: 1, max: MAX.buttonUrl, required: true });
    if (customId !== undefined) {
      problems.add(
        path,
        'BUTTON_COMPONENT_CUSTOM_ID_URL_MUTUALLY_EXCLUSIVE',
        'A custom id and url cannot both be specified',
      );
    }
  } else if (style !== ButtonStyle.premium) {
    checkText(problems, [...path, 'custom_id'], customId, { min: 1, max: MAX.customId, required: true });
    if (url !== undefined && url !== null) {
      problems.add(
        path,
        'BUTTON_COMPONENT_CUSTOM_ID_URL_MUTUALLY_EXCLUSIVE',
        'A custom id and url cannot both be specified',
      );
    }
  }
  if (style !== ButtonStyle.premium && (label === undefined || label === '') && !isObject(emoji)) {
    problems.add(path, 'BUTTON_COMPONENT_MISSING_LABEL_OR_EMOJI', 'A label or emoji must be provided');
  }
}

function checkMedia(
  problems: Problems,
  path: Path,
  media: unknown,
  files: readonly string[],
  own = false,
): void {
  const at = [...path, 'url'];
  const url = isObject(media)
    ? checkText(problems, at, media['url'], { min: 1, max: 2048, required: true })
    : undefined;
  if (!isObject(media)) problems.add(path, 'BASE_TYPE_REQUIRED', 'This field is required');
  if (url === undefined) return;
  const name = /^attachment:\/\/(.+)$/.exec(url)?.[1];
  if (name !== undefined && !files.includes(name)) {
    problems.add(
      at,
      'UNFURLED_MEDIA_ITEM_REFERENCED_ATTACHMENT_NOT_FOUND',
      `The referenced attachment "${name}" was not found`,
    );
  }
  if (name === undefined && (own || !/^https?:\/\/\S+$/.test(url))) {
    problems.add(
      at,
      'URL_TYPE_INVALID_SCHEME',
      `Scheme must be one of ${own ? "('attachment',)" : "('http', 'https', 'attachment')"}.`,
    );
  }
}
