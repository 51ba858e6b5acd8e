/** The size of an end as typed; whatever was not said is left open. */
export interface TypedEndSize {
  /** As in a designation: `14`, `9/16`, `1-1/16`, `#10`. */
  readonly nominal: string | undefined;
  readonly metric: boolean | undefined;
  readonly pitchMm: number | undefined;
  readonly tpi: number | undefined;
  readonly dash: number | undefined;
}

const TPI = String.raw`\d{1,2}(?:[.,]5)?`;
const INCH_MARK = String.raw`(?: ?(?:"|in\b|inch\b))?`;
const FRACTION = String.raw`(?:(?<![\d-])(?<whole>[1-4])(?: |-))?(?<![\d.])(?<top>\d{1,2})\/(?<bottom>2|4|8|16|32|64)\b${INCH_MARK}`;

const METRIC =
  /\bm ?(?<nominal>\d+(?:[.,]\d+)?)(?:(?: ?[x*/-] ?| )(?<pitch>\d(?:[.,]\d+)?)(?![\d/]))?(?: ?mm\b)?/u;
const INCH_THREAD = new RegExp(
  String.raw`${FRACTION} ?(?:[-x]| ) ?(?<tpi>${TPI})(?![\d/.])(?: ?tpi\b)?`,
  'u',
);
const WHOLE_THREAD = new RegExp(
  String.raw`(?<![\d/.#-])(?<number>#?\d{1,2})${INCH_MARK} ?[-x] ?(?<tpi>${TPI})(?![\d/.])(?: ?tpi\b)?`,
  'u',
);
const TPI_ALONE = new RegExp(String.raw`(?<![\d/.])(?<tpi>${TPI}) ?(?:tpi\b|threads per inch\b)`, 'u');
const DASH = /(?:(?<![\d/\p{L}])-|\bdash ?-?)0?(?<dash>\d{1,2})(?![\d/.])/u;
const FRACTION_ALONE = new RegExp(FRACTION, 'u');
const WHOLE_ALONE = /(?<![\d/.,-])0?(?<number>\d{1,2})(?![\d/.,])(?:(?<inch> ?(?:"|in\b|inch\b)))?/u;

const decimal = (text: string | undefined): number | undefined =>
  text === undefined ? undefined : Number(text.replace(',', '.'));

/**
 * Takes the size out of an end whose words have been taken already.
 *
 * @param dashed a bare whole number is a dash size, as in `JIC 6`; else it is whole inches, as in `1 BSP`.
 */
export function takeEndSize(
  text: string,
  dashed: boolean,
): { readonly size: TypedEndSize; readonly rest: string } {
  let rest = text;
  const take = (pattern: RegExp): Record<string, string | undefined> | undefined => {
    const match = pattern.exec(rest);
    if (match === null) return undefined;
    rest = `${rest.slice(0, match.index)} ${rest.slice(match.index + match[0].length)}`;
    return match.groups ?? {};
  };
  const metric = take(METRIC);
  const inch = metric === undefined ? (take(INCH_THREAD) ?? take(WHOLE_THREAD)) : undefined;
  const tpiAlone = take(TPI_ALONE);
  const dash = take(DASH);
  const fraction = metric === undefined && inch === undefined ? take(FRACTION_ALONE) : undefined;
  const whole =
    metric === undefined && inch === undefined && fraction === undefined ? take(WHOLE_ALONE) : undefined;
  const wholeIsDash = whole !== undefined && dashed && whole['inch'] === undefined && dash === undefined;
  const named = inch ?? fraction ?? (wholeIsDash ? undefined : whole);
  const number = decimal(metric?.['nominal']);
  return {
    size: {
      nominal: number === undefined ? named && nominalOf(named) : String(number),
      metric: metric === undefined ? (named === undefined ? undefined : false) : true,
      pitchMm: decimal(metric?.['pitch']),
      tpi: decimal(inch?.['tpi'] ?? tpiAlone?.['tpi']),
      dash: decimal(dash?.['dash'] ?? (wholeIsDash ? whole['number'] : undefined)),
    },
    rest,
  };
}

/** `1-14` is a whole inch and its threads, `10-32` and `#10-32` a number size. */
function nominalOf(groups: Record<string, string | undefined>): string {
  const { whole, top, bottom, number = '' } = groups;
  if (top !== undefined) return `${whole === undefined ? '' : `${whole}-`}${top}/${bottom}`;
  if (number.startsWith('#') || Number(number) <= 2) return number;
  return groups['tpi'] === undefined ? number : `#${number}`;
}
