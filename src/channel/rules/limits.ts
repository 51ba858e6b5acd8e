/**
 * Every limit of the platform that the local channel holds a bot to, named once.
 *
 * Sources: developer documentation of the platform (application commands; receiving and responding; message object;
 * component reference; modals; gateway; rate limits; threads; scheduled events) and its published API description.
 * Lengths are in UTF-16 code units, as the client counts them.
 */
export const LIMITS = {
  message: {
    content: 2000,
    nonce: 25,
    attachments: 10,
    altText: 1024,
    requestBytes: 25 * 1024 * 1024,
    reactionKinds: 20,
    pinsPerChannel: 250,
    historyPage: 100,
    mentionedIds: 100,
    bulkDelete: { min: 2, max: 100, days: 14 },
    /** "the past few minutes" in the documentation; three here. */
    nonceMemoryMs: 3 * 60_000,
  },
  embed: {
    count: 10,
    title: 256,
    description: 4096,
    fields: 25,
    fieldName: 256,
    fieldValue: 1024,
    footer: 2048,
    author: 256,
    /** Title, descriptions, field names and values, footers and authors of all embeds of a message. */
    sum: 6000,
  },
  component: {
    customId: 100,
    legacyRows: 5,
    rowButtons: 5,
    buttonLabel: 80,
    buttonUrl: 512,
    selectOptions: 25,
    selectText: 100,
    selectPlaceholder: 150,
    /** Nested ones counted. */
    inMessage: 40,
    text: 4000,
    /** All Text Displays of a message together. */
    textSum: 4000,
    sectionTexts: 3,
    galleryItems: 10,
    accentColor: 0xff_ff_ff,
  },
  modal: {
    title: 45,
    components: 5,
    label: 45,
    labelDescription: 100,
    inputValue: 4000,
    inputPlaceholder: 100,
    files: 10,
    radioOptions: { min: 2, max: 10 },
    checkboxOptions: { min: 1, max: 10 },
  },
  command: {
    slash: 100,
    contextMenu: 15,
    name: 32,
    description: 100,
    options: 25,
    choices: 25,
    choiceName: 100,
    choiceText: 100,
    optionText: 6000,
    /** Names, descriptions and choice values of one command, all nested ones included. */
    budget: 8000,
    integer: Number.MAX_SAFE_INTEGER,
    number: 2 ** 53,
  },
  interaction: {
    firstAnswerMs: 3_000,
    tokenMs: 15 * 60_000,
    choices: 25,
  },
  gateway: {
    payloadBytes: 4096,
    sendsPerMinute: 120,
    heartbeatMs: 41_250,
    /** Events kept for a client that comes back; our own choice, the documentation gives none. */
    replay: 5_000,
  },
  thread: { name: 100, archiveMinutes: [60, 1440, 4320, 10080] },
  channel: { name: 100, topic: 1024 },
  event: { name: 100, description: 1000, location: 100, open: 100 },
} as const;
