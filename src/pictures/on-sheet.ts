import { INK, SHEET_WIDTH } from './sheet.ts';
import { element } from './svg.ts';

/** The whole picture: a sheet of paper of the usual width, with what is drawn on it from back to front. */
export function onSheet(height: number, ...drawn: readonly string[]): string {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: SHEET_WIDTH,
      height,
      viewBox: `0 0 ${SHEET_WIDTH} ${height}`,
    },
    element('rect', { width: SHEET_WIDTH, height, fill: INK.paper }),
    ...drawn,
  );
}
