import type { GivenFile } from '../core/given-file.ts';
import type { RunCommand } from './request.ts';

const NAME = /\.(csv|tsv|log|txt|dat)(\.gz)?$|\.gz$/i;
const MIME = /^(text\/(csv|tab-separated-values)|application\/(gzip|x-gzip|csv))$/;
/** Words that say the file is something else. */
const OTHER = /\b(order|orders|bestell\w*|import|list|parts?|record|backup|invoice|quote)\b/i;

const looksLikeLog = ({ name, mime }: GivenFile): boolean => NAME.test(name) || MIME.test(mime);

/**
 * What a message asks that brings a logger's file and no command: the fuelling from it. Of two files the first is the drive before the
 * last change. Undefined where no file looks like a log, or the words are about something else.
 */
export function logAsked(files: readonly GivenFile[], words: string): RunCommand | undefined {
  const logs = files.filter(looksLikeLog);
  if (logs.length === 0 || OTHER.test(words)) return undefined;
  const [first, second] = logs.map(({ id }) => id);
  if (first === undefined) return undefined;
  const options = second === undefined ? { file: first } : { file: second, before: first };
  return { kind: 'run', command: 'log', subcommand: 'fuel', options };
}
