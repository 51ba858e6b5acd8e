import type { AmountPiece, Line } from './line.ts';
import { ask, type QuickCandidate, type QuickContext, type QuickReading } from './reading.ts';

/** How many readings are offered: the two likeliest, and a third where it is as likely. */
const MOST = 3;

/** A number and nothing else is never guessed at: what it is likeliest to be is offered. */
export function readBareLine(line: Line, { boltClasses }: QuickContext): QuickReading | undefined {
  const amounts = line.amounts.filter(({ figures, after }) => !(figures === '1' && after === ':'));
  const [only, ...more] = amounts;
  if (
    only === undefined ||
    more.length > 0 ||
    only.unit !== '' ||
    line.words.length > 0 ||
    only.after === '-' ||
    only.after === '#'
  )
    return undefined;
  if (line.amounts.length > 1 && !/^[\d.,]+ ?: ?1$/u.test(line.text.replace(/[ ?]+$/u, ''))) return undefined;
  const candidates = readingsOf(only, line.amounts.length > 1, boltClasses).slice(0, MOST);
  const [first] = candidates;
  if (first === undefined) return undefined;
  return { ...ask(first.kind, `${only.figures} of what?`, []), candidates };
}

/** The readings a figure can have, the likeliest first: by its size, and by whether it is a class of bolts. */
function readingsOf(
  { figures, value }: AmountPiece,
  toOne: boolean,
  classes: readonly string[],
): readonly QuickCandidate[] {
  const afr: QuickCandidate = { kind: 'afr-lambda', label: `${figures} AFR`, text: `afr ${figures}` };
  const lambda: QuickCandidate = { kind: 'afr-lambda', label: `λ ${figures}`, text: `lambda ${figures}` };
  const ratio: QuickCandidate = {
    kind: 'compression',
    label: `Compression ratio ${figures}`,
    text: 'cr … cc swept … cc chamber',
    open: true,
  };
  const size: QuickCandidate = {
    kind: 'torque',
    label: `Bolt of class ${figures}`,
    text: `m… ${figures}`,
    open: true,
  };
  const psi: QuickCandidate = { kind: 'pressure', label: `${figures} psi`, text: `${figures} psi` };
  const bar: QuickCandidate = { kind: 'pressure', label: `${figures} bar`, text: `${figures} bar` };
  const thread: QuickCandidate = {
    kind: 'thread',
    label: `A thread ${figures} across`,
    text: `${figures} x …`,
    open: true,
  };
  const mm: QuickCandidate = {
    kind: 'convert',
    label: `${figures} mm in inches`,
    text: `${figures} mm in inches`,
  };
  const hose: QuickCandidate = {
    kind: 'hose',
    label: `${figures} hose: its dash size`,
    text: `what dash is ${figures} hose`,
  };
  if (figures.includes('/')) return [thread, hose];
  if (toOne && (value < 5 || value > 25)) return [];
  if (toOne) return value < 9 ? [ratio, afr] : value > 13 ? [afr, ratio] : [afr, ratio];
  if (value > 0.5 && value < 1.5 && /[.,]/u.test(figures)) return [lambda, mm];
  if (classes.includes(figures.replace(',', '.'))) return value >= 8 ? [size, { ...ratio }, afr] : [size];
  if (value >= 9 && value <= 20 && /[.,]/u.test(figures)) return [afr, ratio, mm];
  if (value >= 20 && value <= 400) return [psi, thread];
  if (value >= 3 && value < 20) return [/[.,]/u.test(figures) ? mm : bar, thread];
  return [];
}
