import type { JsonObject } from './json.ts';

/**
 * A refusal in the platform's own form: HTTP status, JSON error code, sentence, and where in the request.
 *
 * Source: developer documentation, "Opcodes and status codes: JSON error codes"; the statuses beside codes that the
 * documentation does not pair are `common practice, no source`.
 */
export class ApiError extends Error {
  readonly status: 400 | 401 | 403 | 404 | 405 | 413;
  readonly code: number;
  readonly errors: JsonObject | undefined;

  constructor(status: ApiError['status'], code: number, message: string, errors?: JsonObject) {
    super(message);
    this.name = 'ApiError';
    this.status = status;
    this.code = code;
    this.errors = errors;
  }

  body(): JsonObject {
    return this.errors === undefined
      ? { message: this.message, code: this.code }
      : { message: this.message, code: this.code, errors: this.errors };
  }
}

export const refuse = {
  unauthorized: () => new ApiError(401, 0, '401: Unauthorized'),
  notFound: () => new ApiError(404, 0, '404: Not Found'),
  unknownChannel: () => new ApiError(404, 10003, 'Unknown Channel'),
  unknownGuild: () => new ApiError(404, 10004, 'Unknown Guild'),
  unknownMember: () => new ApiError(404, 10007, 'Unknown Member'),
  unknownMessage: () => new ApiError(404, 10008, 'Unknown Message'),
  unknownRole: () => new ApiError(404, 10011, 'Unknown Role'),
  unknownUser: () => new ApiError(404, 10013, 'Unknown User'),
  unknownEmoji: () => new ApiError(404, 10014, 'Unknown Emoji'),
  unknownWebhook: () => new ApiError(404, 10015, 'Unknown Webhook'),
  unknownInteraction: () => new ApiError(404, 10062, 'Unknown interaction'),
  unknownCommand: () => new ApiError(404, 10063, 'Unknown application command'),
  unknownEvent: () => new ApiError(404, 10070, 'Unknown Guild Scheduled Event'),
  tooManyPins: () => new ApiError(400, 30003, 'Maximum number of pins reached for the channel (250)'),
  tooManyReactions: () => new ApiError(400, 30010, 'Maximum number of reactions reached (20)'),
  tooManyCommands: (max: number) =>
    new ApiError(400, 30032, `Maximum number of application commands reached (${max})`),
  requestTooLarge: () => new ApiError(413, 40005, 'Request entity too large'),
  alreadyAcknowledged: () => new ApiError(400, 40060, 'Interaction has already been acknowledged.'),
  missingAccess: () => new ApiError(403, 50001, 'Missing Access'),
  notYours: () => new ApiError(403, 50005, 'Cannot edit a message authored by another user'),
  emptyMessage: () => new ApiError(400, 50006, 'Cannot send an empty message'),
  notToThisUser: () => new ApiError(403, 50007, 'Cannot send messages to this user'),
  expiredToken: () => new ApiError(401, 50027, 'Invalid Webhook Token'),
  notJson: () => new ApiError(400, 50109, 'The request body contains invalid JSON.'),
  fileTooLarge: () => new ApiError(400, 50045, 'File uploaded exceeds the maximum size'),
  threadExists: () => new ApiError(400, 160004, 'A thread has already been created for this message'),
  threadArchived: () => new ApiError(400, 50083, 'Thread is archived'),
  form: (errors: JsonObject) => new ApiError(400, 50035, 'Invalid Form Body', errors),
} as const;
