import { z } from 'zod';
import { UserError } from './core/user-error.ts';

/** Where the bot connects to, and where its records are. */
export interface Config {
  /** Absent: the local channel. */
  readonly platform?: {
    readonly token: string;
    readonly api?: string;
    /** Everybody's lines are to be listened to, not those to the bot alone. */
    readonly hears?: 'everything';
  };
  readonly page: { readonly host: string; readonly port: number };
  /** Folder of the teams' files. */
  readonly dataFolder: string;
}

const WHERE_TOKEN =
  'Copy it from the Bot page of your application in the platform’s developer portal, or remove the line to use the local channel.';

/** Three parts of letters, digits, - and _, with dots between: anything else was cut or pasted wrongly. */
const TOKEN = /^[\w-]{20,}\.[\w-]{6,}\.[\w-]{20,}$/;

/** 0, which takes any free one, to 65535. */
const PORT = /^(?:\d{1,4}|[1-5]\d{4}|6[0-4]\d{3}|65[0-4]\d{2}|655[0-2]\d|6553[0-5])$/;
const NOT_A_PORT = 'CHARGEHAND_PORT is not a port from 0 to 65535. Mend it, or leave it out for 4747.';

const Environment = z.object({
  DISCORD_TOKEN: z
    .string()
    .trim()
    .regex(TOKEN, `DISCORD_TOKEN is not a bot token. ${WHERE_TOKEN}`)
    .optional(),
  CHARGEHAND_API: z
    .url('CHARGEHAND_API is not an address. Leave it out; it is only for tests against another server.')
    .optional(),
  CHARGEHAND_DATA: z
    .string()
    .min(1, 'CHARGEHAND_DATA is empty. Give a folder, or leave it out for data/var.')
    .default('data/var'),
  CHARGEHAND_HOST: z
    .string()
    .min(1, 'CHARGEHAND_HOST is empty. Give an address, or leave it out for this machine only.')
    .default('127.0.0.1'),
  CHARGEHAND_HEARS: z
    .enum(
      ['mentions', 'everything'],
      'CHARGEHAND_HEARS is mentions or everything. Leave it out for mentions.',
    )
    .default('mentions'),
  CHARGEHAND_PORT: z.string().trim().regex(PORT, NOT_A_PORT).transform(Number).default(4747),
});

/**
 * Reads the settings from the environment.
 *
 * @throws UserError with one sentence that says which variable is wrong and where to get it; never its value.
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const parsed = Environment.safeParse(environment);
  if (!parsed.success)
    throw new UserError('bad-input', parsed.error.issues[0]?.message ?? 'The settings are wrong.');
  const {
    DISCORD_TOKEN: token,
    CHARGEHAND_API: api,
    CHARGEHAND_DATA: dataFolder,
    CHARGEHAND_HEARS: hears,
  } = parsed.data;
  return {
    ...(token === undefined
      ? {}
      : {
          platform: {
            token,
            ...(api === undefined ? {} : { api }),
            ...(hears === 'everything' ? { hears } : {}),
          },
        }),
    page: { host: parsed.data.CHARGEHAND_HOST, port: parsed.data.CHARGEHAND_PORT },
    dataFolder,
  };
}

/** What to say when the platform itself will not have the token. */
export const TOKEN_REFUSED = `The platform does not take DISCORD_TOKEN. ${WHERE_TOKEN}`;
