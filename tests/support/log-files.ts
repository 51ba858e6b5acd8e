import type { FileSource } from '../../src/bot/file-source.ts';
import { type Model, modelOf, runModel } from './model-engine/engine.ts';
import { logStyles } from './model-engine/log-styles.ts';
import { bytesOf, logText } from './model-engine/log-text.ts';

/** The log of a model engine's drive, in one of the styles. */
export function logOf(model: Partial<Model> = {}, style = 'plain English, seconds', seed = 7): string {
  const written = logStyles[style];
  if (written === undefined) throw new Error(`there is no style "${style}"`);
  const drive = modelOf(seed, {
    kind: 'road',
    seconds: 240,
    rowsPerS: 20,
    coldStart: false,
    closedLoop: true,
    ...model,
  });
  return [...logText(runModel(drive), written)].join('');
}

/** Files somebody has handed over, by their ids; a name is its id. */
export function filesOf(texts: Readonly<Record<string, string>>): FileSource {
  const fileOf = (id: string) => ({ id, name: id, bytes: (texts[id] ?? '').length, mime: 'text/csv' });
  return {
    find: (id) => (Object.hasOwn(texts, id) ? fileOf(id) : undefined),
    open: ({ id }) => bytesOf([texts[id] ?? '']),
  };
}

/** A log whose columns have to be asked about. */
export const strangeLog = (): string => logOf().replace('Lambda,', 'Channel 7,');
