import { DatabaseSync, type SQLInputValue } from 'node:sqlite';
import type { Channel, Command, Message, Person, ScheduledEvent, StoredFile } from './things.ts';

const SCHEMA = `
CREATE TABLE IF NOT EXISTS setting (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS thing (
  kind TEXT NOT NULL, id INTEGER NOT NULL, body TEXT NOT NULL, PRIMARY KEY (kind, id)) STRICT;
CREATE TABLE IF NOT EXISTS message (
  id INTEGER PRIMARY KEY, channel_id INTEGER NOT NULL, pinned_ms INTEGER, body TEXT NOT NULL) STRICT;
CREATE INDEX IF NOT EXISTS message_by_channel ON message (channel_id, id);
CREATE INDEX IF NOT EXISTS message_unasked ON message (channel_id, json_extract(body, '$.authorId'), id)
  WHERE json_extract(body, '$.asked') IS NULL AND json_extract(body, '$.reference') IS NULL;
CREATE TABLE IF NOT EXISTS nonce (
  author_id INTEGER NOT NULL, nonce TEXT NOT NULL, message_id INTEGER NOT NULL, at_ms INTEGER NOT NULL,
  PRIMARY KEY (author_id, nonce)) STRICT;
CREATE TABLE IF NOT EXISTS file (
  id INTEGER PRIMARY KEY, name TEXT NOT NULL, type TEXT NOT NULL, bytes BLOB NOT NULL) STRICT;
`;

interface Things {
  person: Person;
  channel: Channel;
  command: Command;
  event: ScheduledEvent;
}

export interface Page {
  readonly before?: string | undefined;
  readonly after?: string | undefined;
  readonly limit: number;
}

export type Storage = ReturnType<typeof openStorage>;

/**
 * The channel's memory: SQLite in `file`, or in the process when none is given. Each write is on the disk before the
 * caller goes on (WAL, synchronous FULL), so what a person was shown survives a power cut.
 */
export function openStorage(file = ':memory:') {
  // Ids have more digits than a number holds, the row ids that come back from each insert among them.
  const db = new DatabaseSync(file, { readBigInts: true });
  db.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON;');
  db.exec(SCHEMA);

  const getSetting = db.prepare('SELECT value FROM setting WHERE name = ?');
  const putSetting = db.prepare('INSERT OR REPLACE INTO setting (name, value) VALUES (?, ?)');
  const allThings = db.prepare('SELECT body FROM thing WHERE kind = ? ORDER BY id');
  const putThing = db.prepare('INSERT OR REPLACE INTO thing (kind, id, body) VALUES (?, ?, ?)');
  const dropThing = db.prepare('DELETE FROM thing WHERE kind = ? AND id = ?');
  const oneMessage = db.prepare('SELECT body FROM message WHERE id = ?');
  const putMessage = db.prepare(
    'INSERT OR REPLACE INTO message (id, channel_id, pinned_ms, body) VALUES (?, ?, ?, ?)',
  );
  const dropMessage = db.prepare('DELETE FROM message WHERE id = ?');
  const newest = db.prepare(
    'SELECT body FROM message WHERE channel_id = ? AND id < ? ORDER BY id DESC LIMIT ?',
  );
  const oldest = db.prepare('SELECT body FROM message WHERE channel_id = ? AND id > ? ORDER BY id LIMIT ?');
  const pins = db.prepare(
    'SELECT body FROM message WHERE channel_id = ? AND pinned_ms IS NOT NULL ORDER BY pinned_ms DESC',
  );
  const unasked = db.prepare(
    `SELECT body FROM message WHERE channel_id = ? AND json_extract(body, '$.authorId') = ?
       AND json_extract(body, '$.asked') IS NULL AND json_extract(body, '$.reference') IS NULL
       ORDER BY id DESC LIMIT 1`,
  );
  const getNonce = db.prepare(
    'SELECT CAST(message_id AS TEXT) AS id FROM nonce WHERE author_id = ? AND nonce = ? AND at_ms >= ?',
  );
  const putNonce = db.prepare(
    'INSERT OR REPLACE INTO nonce (author_id, nonce, message_id, at_ms) VALUES (?, ?, ?, ?)',
  );
  const forgetNonces = db.prepare('DELETE FROM nonce WHERE at_ms < ?');
  const getFile = db.prepare('SELECT name, type, bytes FROM file WHERE id = ?');
  const putFile = db.prepare('INSERT INTO file (id, name, type, bytes) VALUES (?, ?, ?, ?)');
  const largest = db.prepare(
    `SELECT CAST(max(coalesce((SELECT max(id) FROM message), 0), coalesce((SELECT max(id) FROM thing), 0),
       coalesce((SELECT max(id) FROM file), 0)) AS TEXT) AS id`,
  );

  // Bodies are read back as what this very module wrote; that is what makes the casts below true.
  const message = (row: Record<string, unknown> | undefined): Message | undefined =>
    row === undefined ? undefined : (JSON.parse(String(row['body'])) as Message);
  const messages = (rows: readonly Record<string, unknown>[]): Message[] =>
    rows.map((row) => JSON.parse(String(row['body'])) as Message);
  const id = (text: string): SQLInputValue => BigInt(text);

  return {
    setting: (name: string): string | undefined => {
      const row = getSetting.get(name);
      return row === undefined ? undefined : String(row['value']);
    },
    saveSetting: (name: string, value: string): void => void putSetting.run(name, value),
    things: <K extends keyof Things>(kind: K): Things[K][] =>
      allThings.all(kind).map((row) => JSON.parse(String(row['body'])) as Things[K]),
    save: <K extends keyof Things>(kind: K, thing: Things[K]): void =>
      void putThing.run(kind, id(thing.id), JSON.stringify(thing)),
    drop: (kind: keyof Things, thingId: string): void => void dropThing.run(kind, id(thingId)),

    message: (messageId: string): Message | undefined => message(oneMessage.get(id(messageId))),
    saveMessage: (one: Message): void =>
      void putMessage.run(id(one.id), id(one.channelId), one.pinnedMs, JSON.stringify(one)),
    dropMessage: (messageId: string): void => void dropMessage.run(id(messageId)),
    /** Newest first before `before` (or the end), or, with `after`, the ones right after it; newest first too. */
    page: (channelId: string, { before, after, limit }: Page): Message[] =>
      after === undefined
        ? messages(newest.all(id(channelId), before === undefined ? 2n ** 63n - 1n : id(before), limit))
        : messages(oldest.all(id(channelId), id(after), limit)).reverse(),
    all: (channelId: string): Message[] => messages(oldest.all(id(channelId), 0n, -1)),
    pins: (channelId: string): Message[] => messages(pins.all(id(channelId))),

    /** The newest that this author wrote here as an answer to nobody. */
    newestUnasked: (channelId: string, authorId: string): Message | undefined =>
      message(unasked.get(id(channelId), authorId)),

    /** The message that this author sent with this nonce since `sinceMs`. */
    sentWith: (authorId: string, nonce: string, sinceMs: number): string | undefined => {
      const row = getNonce.get(id(authorId), nonce, sinceMs);
      return row === undefined ? undefined : String(row['id']);
    },
    rememberNonce: (authorId: string, nonce: string, messageId: string, atMs: number): void => {
      putNonce.run(id(authorId), nonce, id(messageId), atMs);
    },
    forgetNonces: (beforeMs: number): void => void forgetNonces.run(beforeMs),

    file: (fileId: string): StoredFile | undefined => {
      const row = getFile.get(id(fileId));
      if (row === undefined || !(row['bytes'] instanceof Uint8Array)) return undefined;
      return { id: fileId, name: String(row['name']), type: String(row['type']), bytes: row['bytes'] };
    },
    saveFile: (file: StoredFile): void => void putFile.run(id(file.id), file.name, file.type, file.bytes),

    newestId: (): bigint => BigInt(String(largest.get()?.['id'] ?? '0')),
    /** All or nothing. */
    together: <T>(work: () => T): T => {
      db.exec('BEGIN IMMEDIATE');
      try {
        const result = work();
        db.exec('COMMIT');
        return result;
      } catch (error) {
        db.exec('ROLLBACK');
        throw error;
      }
    },
    close: (): void => db.close(),
  };
}
