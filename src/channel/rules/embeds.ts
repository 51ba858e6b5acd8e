import { isObject, type JsonObject } from '../wire/json.ts';
import { checkList, checkNumber, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import type { Path, Problems } from './problems.ts';

const { embed: MAX } = LIMITS;
const SHOWN_URL = /^(https?|attachment):\/\/\S+$/;

/** Embeds: each text within its length, no empty field, 6000 characters over all of them. */
export function checkEmbeds(problems: Problems, value: unknown): void {
  const embeds = checkList(problems, ['embeds'], value, { max: MAX.count });
  embeds.forEach((embed, index) => {
    checkEmbed(problems, ['embeds', index], embed);
  });
  const sum = embeds.reduce((total, embed) => total + textLength(embed), 0);
  if (sum > MAX.sum) {
    problems.add(['embeds'], 'MAX_EMBED_SIZE_EXCEEDED', `Embed size exceeds maximum size of ${MAX.sum}`);
  }
}

function checkEmbed(problems: Problems, path: Path, embed: JsonObject): void {
  checkText(problems, [...path, 'title'], embed['title'], { max: MAX.title });
  checkText(problems, [...path, 'description'], embed['description'], { max: MAX.description });
  checkNumber(problems, [...path, 'color'], embed['color'], { min: 0, max: 0xff_ff_ff, whole: true });
  const fields = checkList(problems, [...path, 'fields'], embed['fields'], { max: MAX.fields });
  fields.forEach((field, index) => {
    const at = [...path, 'fields', index];
    checkText(problems, [...at, 'name'], field['name'], { min: 1, max: MAX.fieldName, required: true });
    checkText(problems, [...at, 'value'], field['value'], { min: 1, max: MAX.fieldValue, required: true });
  });
  const { footer, author } = embed;
  if (isObject(footer)) checkText(problems, [...path, 'footer', 'text'], footer['text'], { max: MAX.footer });
  if (isObject(author)) checkText(problems, [...path, 'author', 'name'], author['name'], { max: MAX.author });
  for (const key of ['image', 'thumbnail']) {
    const picture = embed[key];
    if (isObject(picture) && !SHOWN_URL.test(String(picture['url']))) {
      problems.add([...path, key, 'url'], 'URL_TYPE_INVALID_URL', 'Not a well formed URL.');
    }
  }
}

function textLength(embed: JsonObject): number {
  const lengthOf = (value: unknown): number => (typeof value === 'string' ? value.length : 0);
  const { fields, footer, author } = embed;
  const inFields = Array.isArray(fields)
    ? fields
        .filter(isObject)
        .reduce((sum, field) => sum + lengthOf(field['name']) + lengthOf(field['value']), 0)
    : 0;
  return (
    lengthOf(embed['title']) +
    lengthOf(embed['description']) +
    inFields +
    (isObject(footer) ? lengthOf(footer['text']) : 0) +
    (isObject(author) ? lengthOf(author['name']) : 0)
  );
}
