/**
 * The numbers of the documented bot API v10 under their documented names.
 *
 * Source: developer documentation of the platform, "Gateway opcodes", "Gateway intents", "Interactions", "Message
 * object", "Component reference", "Permissions"; published API description (OpenAPI), MIT licensed.
 */
export const Op = {
  dispatch: 0,
  heartbeat: 1,
  identify: 2,
  presence: 3,
  voiceState: 4,
  resume: 6,
  reconnect: 7,
  requestMembers: 8,
  invalidSession: 9,
  hello: 10,
  heartbeatAck: 11,
} as const;

export const Close = {
  unknown: 4000,
  unknownOpcode: 4001,
  decode: 4002,
  notAuthenticated: 4003,
  authenticationFailed: 4004,
  alreadyAuthenticated: 4005,
  invalidSequence: 4007,
  rateLimited: 4008,
  invalidShard: 4010,
  invalidVersion: 4012,
  invalidIntents: 4013,
  disallowedIntents: 4014,
} as const;

export const Intent = {
  guilds: 1 << 0,
  members: 1 << 1,
  presences: 1 << 8,
  guildMessages: 1 << 9,
  guildReactions: 1 << 10,
  guildTyping: 1 << 11,
  directMessages: 1 << 12,
  directReactions: 1 << 13,
  directTyping: 1 << 14,
  messageContent: 1 << 15,
  scheduledEvents: 1 << 16,
} as const;

/** Every bit that is documented: 0–16, 20, 21, 24, 25. */
export const ALL_INTENTS = 0x1_ffff | (1 << 20) | (1 << 21) | (1 << 24) | (1 << 25);

/** Who added an app: a server, or a person to the own account. */
export const Install = { server: 0, person: 1 } as const;

export const Kind = { command: 2, component: 3, autocomplete: 4, modal: 5 } as const;

export const Callback = {
  message: 4,
  deferred: 5,
  deferredUpdate: 6,
  update: 7,
  choices: 8,
  modal: 9,
} as const;

export const Flag = {
  crossposted: 1 << 0,
  suppressEmbeds: 1 << 2,
  hasThread: 1 << 5,
  ephemeral: 1 << 6,
  loading: 1 << 7,
  suppressNotifications: 1 << 12,
  voiceMessage: 1 << 13,
  componentsV2: 1 << 15,
} as const;

export const Part = {
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

export const SELECTS: readonly number[] = [
  Part.stringSelect,
  Part.userSelect,
  Part.roleSelect,
  Part.mentionableSelect,
  Part.channelSelect,
];

export const ButtonStyle = { primary: 1, secondary: 2, success: 3, danger: 4, link: 5, premium: 6 } as const;

export const Opt = {
  subcommand: 1,
  group: 2,
  string: 3,
  integer: 4,
  boolean: 5,
  user: 6,
  channel: 7,
  role: 8,
  mentionable: 9,
  number: 10,
  attachment: 11,
} as const;

export const CommandKind = { slash: 1, user: 2, message: 3 } as const;

export const ChannelKind = { text: 0, direct: 1, publicThread: 11, privateThread: 12 } as const;

export const MessageKind = {
  plain: 0,
  pinned: 6,
  threadCreated: 18,
  reply: 19,
  command: 20,
  threadStart: 21,
} as const;

export const Permission = {
  administrator: 1n << 3n,
  addReactions: 1n << 6n,
  viewChannel: 1n << 10n,
  sendMessages: 1n << 11n,
  manageMessages: 1n << 13n,
  embedLinks: 1n << 14n,
  attachFiles: 1n << 15n,
  readHistory: 1n << 16n,
  mentionEveryone: 1n << 17n,
  useCommands: 1n << 31n,
  manageThreads: 1n << 34n,
  createThreads: 1n << 35n,
  sendInThreads: 1n << 38n,
  sendPolls: 1n << 49n,
  pinMessages: 1n << 51n,
} as const;

/** What everybody in the channel may do: talk, attach, react, open threads, pin, use commands. */
export const EVERYONE_MAY =
  Permission.addReactions |
  Permission.viewChannel |
  Permission.sendMessages |
  Permission.embedLinks |
  Permission.attachFiles |
  Permission.readHistory |
  Permission.useCommands |
  Permission.createThreads |
  Permission.sendInThreads |
  Permission.pinMessages;

/** All documented bits, 0 to 52. */
export const OWNER_MAY = (1n << 53n) - 1n;
