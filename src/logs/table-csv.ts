import type { Axes } from '../calc/fuelling/axes.ts';
import type { Cell } from '../calc/fuelling/cells.ts';

const bytes = (lines: readonly string[]): Uint8Array => new TextEncoder().encode(`${lines.join('\r\n')}\r\n`);

/** The multipliers with the table's own axes: speeds along the top, loads down the side, 1 where a cell is left alone. */
export function tableCsv(cells: readonly (readonly Cell[])[], axes: Axes): Uint8Array {
  const head = ['load kPa / speed rpm', ...axes.speedRpm.map(String)].join(',');
  const rows = axes.loadKPa.map((load, i) =>
    [String(load), ...(cells[i] ?? []).map(({ multiplierRatio }) => multiplierRatio.toFixed(4))].join(','),
  );
  return bytes([head, ...rows]);
}

/** Cell by cell: what it is multiplied by, what would bring it there in one go, how sure, and on how much it rests. */
export function detailCsv(cells: readonly (readonly Cell[])[], axes: Axes): Uint8Array {
  const head = 'load kPa,speed rpm,multiplier,whole way,uncertainty ±,seconds,left alone';
  const rows = cells.flatMap((row, i) =>
    row.map((cell, j) =>
      [
        axes.loadKPa[i],
        axes.speedRpm[j],
        cell.multiplierRatio.toFixed(4),
        cell.fullMultiplierRatio?.toFixed(4) ?? '',
        cell.uncertaintyRatio?.toFixed(4) ?? '',
        cell.seconds.toFixed(1),
        cell.leftAlone ?? '',
      ].join(','),
    ),
  );
  return bytes([head, ...rows]);
}
