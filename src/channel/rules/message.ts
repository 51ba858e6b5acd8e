import { refuse } from '../wire/api-error.ts';
import { isArray, type JsonObject, objectsIn } from '../wire/json.ts';
import { Flag } from '../wire/numbers.ts';
import { checkMessageComponents } from './components.ts';
import { checkEmbeds } from './embeds.ts';
import { checkList, checkText } from './fields.ts';
import { LIMITS } from './limits.ts';
import { checkAllowedMentions } from './mentions.ts';
import { Problems } from './problems.ts';

const { message: MAX } = LIMITS;

/** What a sender of messages may set of the flags. */
const SETTABLE = {
  message: Flag.suppressEmbeds | Flag.suppressNotifications | Flag.voiceMessage | Flag.componentsV2,
  interaction:
    Flag.suppressEmbeds | Flag.ephemeral | Flag.suppressNotifications | Flag.voiceMessage | Flag.componentsV2,
} as const;

/** The message as it stood before an edit. */
export interface Before {
  readonly flags: number;
  readonly content: string;
  readonly embeds: number;
  readonly components: number;
  readonly files: readonly string[];
}

export interface MessageContext {
  readonly by: keyof typeof SETTABLE;
  /** Names of the files that come with the request or stay from before. */
  readonly files: readonly string[];
  readonly before?: Before | undefined;
}

/**
 * The body of a message that is created or edited.
 * @throws ApiError 50035 with every problem, or 50006 when nothing would be shown.
 */
export function checkMessage(body: JsonObject, { by, files, before }: MessageContext): void {
  const problems = new Problems();
  const flags = typeof body['flags'] === 'number' ? body['flags'] : 0;
  const wasV2 = ((before?.flags ?? 0) & Flag.componentsV2) !== 0;
  const v2 = wasV2 || (flags & Flag.componentsV2) !== 0;
  checkFlags(problems, flags, by, before !== undefined);
  checkText(problems, ['content'], body['content'], { max: MAX.content });
  checkEmbeds(problems, body['embeds']);
  checkMessageComponents(problems, body['components'], v2, files);
  checkAllowedMentions(problems, body['allowed_mentions']);
  checkAttachments(problems, body['attachments']);
  const nonce = body['nonce'];
  if (typeof nonce !== 'number') checkText(problems, ['nonce'], nonce, { max: MAX.nonce });
  if (files.length > MAX.attachments) {
    problems.add(['attachments'], 'BASE_TYPE_MAX_LENGTH', `Must be ${MAX.attachments} or fewer in length.`);
  }
  if (v2) checkNoOldFields(problems, body, wasV2 ? undefined : before);
  problems.settle();
  if (isEmpty(body, files, before)) throw refuse.emptyMessage();
}

function checkFlags(problems: Problems, flags: number, by: keyof typeof SETTABLE, edit: boolean): void {
  // An edit may send back the flags a message has; those that nobody sets are passed over, as the platform does.
  if (!edit && (flags & ~SETTABLE[by]) !== 0) {
    problems.add(['flags'], 'MESSAGE_FLAGS_INVALID', `Only these flags may be set: ${SETTABLE[by]}.`);
  }
}

/** Components V2 stand alone: no content, embeds, stickers or poll beside them, nor left over from before. */
function checkNoOldFields(problems: Problems, body: JsonObject, before: Before | undefined): void {
  const code = 'MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2';
  const message = 'The field cannot be used when using MessageFlags.IS_COMPONENTS_V2';
  const filled = (value: unknown) =>
    isArray(value) ? value.length > 0 : value !== undefined && value !== null && value !== '';
  for (const key of ['content', 'embeds', 'sticker_ids', 'poll']) {
    if (filled(body[key])) problems.add([key], code, message);
  }
  if (before === undefined) return;
  if (before.content !== '' && body['content'] === undefined) problems.add(['content'], code, message);
  if (before.embeds > 0 && body['embeds'] === undefined) problems.add(['embeds'], code, message);
}

function checkAttachments(problems: Problems, value: unknown): void {
  checkList(problems, ['attachments'], value, { max: MAX.attachments }).forEach((file, index) => {
    checkText(problems, ['attachments', index, 'description'], file['description'], { max: MAX.altText });
  });
}

function isEmpty(body: JsonObject, files: readonly string[], before: Before | undefined): boolean {
  const content =
    typeof body['content'] === 'string' ? body['content'] : body['content'] === null ? '' : before?.content;
  const count = (key: 'embeds' | 'components') =>
    body[key] === undefined ? (before?.[key] ?? 0) : objectsIn(body[key]).length;
  return (
    (content ?? '').trim() === '' &&
    count('embeds') === 0 &&
    count('components') === 0 &&
    files.length === 0 &&
    !isArray(body['sticker_ids']) &&
    body['poll'] === undefined
  );
}
