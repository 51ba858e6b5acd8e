import type { Fact } from '../../core/reply.ts';
import { INCH_MM } from '../units/definitions.ts';
import type { Thread } from './thread.ts';

/** A tube end, port or hollow bolt that uses the thread, and what seals it. */
export interface FittingFacts {
  readonly id: string;
  readonly kind: string;
  readonly kindName: string;
  readonly standard: string;
  readonly tubeOdIn: number | undefined;
  readonly oRing: string | undefined;
  readonly washers: readonly { boreMm: number; outsideMm: number; thicknessMm: number }[];
  readonly spannerMm: number | undefined;
  /** Where the thread of this fitting is from. */
  readonly source: readonly string[];
  readonly torques: readonly {
    readonly part: string;
    readonly min_nm: number;
    readonly max_nm: number;
    readonly condition: string;
    readonly source: readonly string[];
  }[];
}

/** What practice and the handbooks say about a thread. */
export interface PracticeFacts {
  readonly foundOn: string | undefined;
  readonly spanner: string | undefined;
  readonly drill:
    | {
        readonly drill: string;
        readonly drill_mm: number;
        readonly source: readonly string[];
        readonly differs?: string | undefined;
        readonly note?: string | undefined;
      }
    | undefined;
  readonly fittings: readonly FittingFacts[];
}

const mm = (value: number): string => value.toFixed(3).replace(/0$/u, '');

/** What to know about a thread before its mate is ordered, as labelled lines; each says where it is from. */
export function threadFacts(thread: Thread, practice: PracticeFacts): readonly Fact[] {
  return [
    ...dimensions(thread),
    ...drillFact(practice.drill),
    ...(practice.spanner === undefined || practice.fittings.length > 0
      ? []
      : [['Spanner', `${practice.spanner} on a standard hexagon (from memory)`] as const]),
    ...(practice.foundOn === undefined
      ? []
      : [['Found on', `${practice.foundOn} (common practice)`] as const]),
    ...practice.fittings.map((fitting): Fact => [fitting.id, fittingLine(fitting)]),
    ...sealing(thread, practice.fittings),
    ...(thread.tapered ? [] : [engagement(thread)]),
    ...torqueFacts(practice.fittings),
    ...(thread.sameAs.length === 0 ? [] : [['Same as', thread.sameAs.join(', ')] as const]),
  ];
}

function dimensions(thread: Thread): readonly Fact[] {
  const { basic, limits, classes, tapered, pitchMm, tpi, formAngleDeg } = thread;
  const pitch = tpi === undefined ? `pitch ${pitchMm} mm` : `${tpi} tpi (${pitchMm.toFixed(3)} mm)`;
  const at = tapered ? ' at the gauge plane, taper 1:16' : '';
  return [
    [
      'Basic sizes',
      `major ${mm(basic.majorMm)}, effective ${mm(basic.pitchDiameterMm)}, minor ${mm(basic.minorMm)} mm${at}; ${pitch}, ${formAngleDeg}°`,
    ],
    ['Outside', `${mm(limits.major.minMm)} to ${mm(limits.major.maxMm)} mm (${classes.male})`],
    ['Across the bore', `${mm(limits.minor.minMm)} to ${mm(limits.minor.maxMm)} mm (${classes.female})`],
  ];
}

function drillFact(drill: PracticeFacts['drill']): readonly Fact[] {
  if (drill === undefined) return [];
  const inMm = drill.drill.endsWith('mm') ? '' : ` (${drill.drill_mm.toFixed(2)} mm)`;
  const differs = drill.differs === undefined ? '' : `; ${drill.differs}`;
  const note = drill.note === undefined ? '' : `; ${drill.note}`;
  return [['Tap drill', `${drill.drill}${inMm} (${drill.source.join(', ')}${differs}${note})`]];
}

function fittingLine({ kindName, standard, tubeOdIn, spannerMm, source }: FittingFacts): string {
  const tube = tubeOdIn === undefined ? '' : `, tube ${mm(tubeOdIn * INCH_MM)} mm (${tubeOdIn} in)`;
  const spanner = spannerMm === undefined ? '' : `, spanner ${spannerMm} mm`;
  return `${kindName}, ${standard}${tube}${spanner}; thread ${sourceWords(source)}`;
}

/** Source keys to be read: what nobody looked up says so in plain words. */
export function sourceWords(keys: readonly string[]): string {
  const read = keys.filter((key) => key !== 'MEM');
  if (read.length === keys.length) return `from ${read.join(', ')}`;
  return read.length === 0 ? 'from memory' : `partly from memory, else ${read.join(', ')}`;
}

function sealing(thread: Thread, fittings: readonly FittingFacts[]): readonly Fact[] {
  if (thread.family === 'bsp-taper' || thread.family === 'npt') {
    return [['Seals', 'on the taper, with sealant']];
  }
  if (thread.family === 'bsp-parallel') {
    return [['Seals', 'not on the thread: bonded seal, copper washer or O-ring on the face, new each time']];
  }
  const ways = new Map(fittings.map((fitting) => [sealOf(fitting), fitting.id]));
  return [...ways].map(([seal, id]) => [`Seals (${id})`, seal] as const);
}

function sealOf({ kind, oRing, washers }: FittingFacts): string {
  switch (kind) {
    case 'jic37':
    case 'an37':
      return 'metal to metal on the 37° cone; nothing on the thread';
    case 'sae45':
      return 'metal to metal on the 45° cone; nothing on the thread';
    case 'orb':
      return `O-ring ${oRing} (number from memory) in the mouth of the port, new each time`;
    case 'iso6149':
      return 'O-ring in the mouth of the port, new each time';
    case 'orfs':
      return 'O-ring in the flat face, new each time';
    default:
      return `two washers ${washers
        .map(({ boreMm, outsideMm, thicknessMm }) => `${boreMm} × ${outsideMm} × ${thicknessMm}`)
        .join(' or ')} mm, one each side of the eye, new each time (sizes from memory)`;
  }
}

function engagement({ basic }: Thread): Fact {
  const turns = (times: number): string => (basic.majorMm * times).toFixed(0);
  return [
    'Engagement',
    `at least ${turns(1)} mm in steel, ${turns(1.25)} in cast iron, ${turns(1.5)} to ${turns(2)} in aluminium (common practice)`,
  ];
}

function torqueFacts(fittings: readonly FittingFacts[]): readonly Fact[] {
  return fittings.flatMap(({ id, torques }) => {
    if (torques.length === 0) return [];
    const lines = torques.map(({ part, min_nm, max_nm, condition, source }) => {
      const range = min_nm === max_nm ? `${min_nm}` : `${min_nm} to ${max_nm}`;
      return `${part} ${range} N·m, ${condition} (${source.join(', ')})`;
    });
    return [[`Torque ${id}`, `${lines.join('; ')}. The maker's figure outranks this.`] as const];
  });
}
