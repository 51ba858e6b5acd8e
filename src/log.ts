import pino from 'pino';

/** Where the machine's keeper reads what went wrong. */
export interface Log {
  info(message: string): void;
  warn(message: string, details?: object): void;
  error(fault: unknown, message: string, details?: object): void;
}

/**
 * What secrets look like, wherever they turn up: bot tokens, the tokens inside interaction and webhook addresses, an
 * interaction's token by itself (base64 of `interaction:…`), and whatever is called a token.
 */
const SHAPES: readonly (readonly [RegExp, string])[] = [
  [/[\w-]{20,}\.[\w-]{6,}\.[\w-]{20,}/g, '[token]'],
  [/(\/(?:interactions|webhooks)\/\d+\/)[^/\s"'\\?]+/g, '$1[token]'],
  [/aW50ZXJhY3Rpb246[\w+/=-]+/g, '[token]'],
  [/("token\\*":\s*\\*")[^"\\]+/g, '$1[token]'],
];

/** Takes secrets out of a text: those known by heart, and anything of a secret's shape. */
export function redact(text: string, secrets: readonly string[]): string {
  const known = secrets
    .filter((secret) => secret !== '')
    .reduce((left, secret) => left.replaceAll(secret, '[token]'), text);
  return SHAPES.reduce((left, [shape, instead]) => left.replace(shape, instead), known);
}

/** JSON lines, every one of them cleaned at the last moment, so that no field list can miss a secret. */
export function openLog(write: (line: string) => void, secrets: readonly string[]): Log {
  const logger = pino({ base: null }, { write: (line: string) => write(redact(line, secrets)) });
  return {
    info: (message) => logger.info(message),
    warn: (message, details = {}) => logger.warn(details, message),
    error: (fault, message, details = {}) => logger.error({ err: fault, ...details }, message),
  };
}
