import { readFuelName } from '../fuel-name.ts';
import type { Line, Piece } from './line.ts';
import type { QuickContext } from './reading.ts';

const LETTERED = /^(?:e|m)\d{1,3}$/u;

/** Takes the fuel out of a line, and leaves what else it says. */
export function takeFuel(
  line: Line,
  { fuels }: QuickContext,
): { readonly fuel: string | undefined; readonly rest: Line } {
  // of "pump petrol" the last says most
  const piece = line.pieces.findLast((each) => isFuel(each, fuels));
  if (piece === undefined || piece.is === 'amount') return { fuel: undefined, rest: line };
  const pieces = line.pieces.filter((each) => !isFuel(each, fuels));
  return {
    fuel: LETTERED.test(piece.text) ? piece.text.toUpperCase() : piece.text,
    rest: {
      ...line,
      pieces,
      words: pieces.flatMap((each) => (each.is === 'amount' ? [] : [each.text])),
    },
  };
}

function isFuel(piece: Piece, fuels: QuickContext['fuels']): boolean {
  if (piece.is === 'amount') return false;
  if (piece.is === 'code')
    return LETTERED.test(piece.text) && readFuelName(piece.text, fuels).verdict === 'blend';
  return piece.text.length > 2 && fuels.has(piece.text);
}
