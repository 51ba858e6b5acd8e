import { takeCylinders } from './cylinders.ts';
import { takeFuel } from './fuel-word.ts';
import { type AmountPiece, type Line, readAs, saidOf, withUnit } from './line.ts';
import { answer, ask, type QuickContext, type QuickReading } from './reading.ts';
import { covers, has, vocabulary } from './vocabulary.ts';

const INJECTOR = vocabulary(
  'injector injectors inj düse düsen einspritzdüsen injecteur injecteurs inyector inyectores',
);
const SIZE = vocabulary(
  'size sizes sized need needed power hp wheel crank engine make makes making flow cc to i in',
);
const SAYS_POWER = vocabulary(
  'power hp bhp kw ps support supports good make makes leistung puissance potencia',
);
const POWER = vocabulary(
  'power from of hp support supports good make makes get can will they leistung puissance potencia max',
);
const TIMES = vocabulary('x by off');
const PULSE = vocabulary(
  'max maximum longest many ms pulse pulsewidth pw width duty available open opening on time duration injector injection at cycle rpm injectors for to in percent',
);
const SAYS_PULSE = vocabulary('ms pulse pulsewidth pw');
const TIME = vocabulary('time duration');
const INJECTION = vocabulary('injector injectors injection inj open opening');
const SAYS_DUTY = vocabulary('duty');
const PRESSURE = vocabulary(
  'rated at base fuel pressure rail flow flows would be to from in then injector injectors',
);

/** Injectors are rated at this unless something else is said, kPa; common practice. */
const USUAL_KPA = 300;

/** Injectors: the size for a power, the power of a set, flow at another pressure, the longest pulse. */
export function readInjectorLine(line: Line, context: QuickContext): QuickReading | undefined {
  const { fuel, rest: fuelled } = takeFuel(line, context);
  const { count, rest } = takeCylinders(fuelled);
  const withFuel = fuel === undefined ? {} : { fuel };
  return (
    pulse(rest, count) ??
    size(rest, count, withFuel) ??
    power(fuelled, withFuel) ??
    (fuel === undefined && count === undefined ? atPressure(line) : undefined)
  );
}

function size(
  line: Line,
  count: number | undefined,
  fuel: { readonly fuel?: string },
): QuickReading | undefined {
  const [amount, ...more] = line.amounts;
  if (amount === undefined || more.length > 0 || !has(line, INJECTOR) || !covers(line, INJECTOR, SIZE))
    return undefined;
  const powerKW = withUnit(amount, 'power')?.value;
  if (powerKW === undefined) return undefined;
  const said = `${saidOf(amount)}${fuel.fuel === undefined ? '' : ` ${fuel.fuel}`}`;
  if (count === undefined)
    return ask(
      'injector',
      'How many cylinders?',
      [4, 6, 8].map((many) => ({ label: `${many} cylinders`, text: `injectors for ${said} ${many} cyl` })),
    );
  return answer(
    'injector',
    'injector-size',
    { powerKW, cylinders: count, ...fuel },
    { power: saidOf(amount), cylinders: String(count), ...fuel },
  );
}

/** `6 x 440cc`: how many, and the flow of one. */
function power(line: Line, fuel: { readonly fuel?: string }): QuickReading | undefined {
  const [many, flow, ...more] = line.amounts;
  if (many === undefined || flow === undefined || more.length > 0) return undefined;
  if (!covers(line, INJECTOR, POWER, TIMES) || !has(line, SAYS_POWER)) return undefined;
  const isCount = many.unit === '' && Number.isInteger(many.value) && many.value >= 1 && many.value <= 16;
  const rated = withUnit(flow, 'flow');
  if (!isCount || rated === undefined) return undefined;
  const typed = rated.unit === 'g/s' ? { flowGs: rated.value } : { flowCcMin: rated.value };
  return answer(
    'injector',
    'injector-power',
    { count: many.value, ...typed, ...fuel },
    { flow: saidOf(flow), count: String(many.value), ...fuel },
  );
}

function pulse(line: Line, count: number | undefined): QuickReading | undefined {
  const timed = line.amounts.find((each) => withUnit(each, 'time')?.typedUnit === 'ms');
  const says = has(line, SAYS_PULSE) || (has(line, TIME) && has(line, INJECTION));
  if (!(timed !== undefined || says) || !covers(line, PULSE) || count !== undefined) return undefined;
  const shares = line.amounts.filter((each) => /^(?:%|percent|pct)$/iu.test(each.unit));
  const speeds = line.amounts.filter((each) => each !== timed && !shares.includes(each));
  const [speed, ...more] = speeds;
  const [share, ...others] = shares;
  if (speed === undefined || more.length > 0 || others.length > 0) return undefined;
  const rpm = speed.unit === '' ? turning(speed) : rpmOf(speed);
  if (rpm === undefined) return undefined;
  const said = `${rpm} rpm`;
  if (timed !== undefined) {
    const pulseS = withUnit(timed, 'time')?.value ?? Number.NaN;
    if (share !== undefined || !(line.asks || has(line, SAYS_DUTY))) return undefined;
    return answer('injector', 'duty', { rpm, pulseMs: pulseS * 1000 }, { speed: said, pulse: saidOf(timed) });
  }
  const duty = readAs(share, 'percent')?.value;
  if (duty === undefined || share === undefined)
    return ask(
      'injector',
      'Up to which duty?',
      [85, 90].map((most) => ({ label: `${most} %`, text: `max ms at ${said} ${most}%` })),
    );
  return answer('injector', 'longest-pulse', { rpm, duty }, { speed: said, limit: `${share.figures} %` });
}

const rpmOf = (speed: AmountPiece): number | undefined => {
  const read = withUnit(speed, 'speed');
  return read?.unit === 'rpm' ? read.value : undefined;
};

/** A bare figure beside a pulse is a speed where it can be one. */
const turning = ({ value }: AmountPiece): number | undefined =>
  value >= 1000 && value <= 20_000 ? value : undefined;

function atPressure(line: Line): QuickReading | undefined {
  const [flow, from, to, ...more] = line.amounts;
  if (flow === undefined || from === undefined || more.length > 0 || !covers(line, PRESSURE))
    return undefined;
  const rated = withUnit(flow, 'flow');
  if (rated === undefined || !/^(?:cc|lb|ml|#|pound|cm3)/iu.test(flow.unit)) return undefined;
  const unit = from.unit || to?.unit || '';
  const fromKPa = withUnit({ ...from, unit }, 'pressure')?.value;
  if (fromKPa === undefined) return undefined;
  const said = saidOf({ ...from, unit });
  if (to === undefined)
    return ask('injector', 'Is that the pressure it was rated at, or the one it is to run at?', [
      ...(Math.abs(fromKPa - USUAL_KPA) < 1
        ? [{ label: 'The flow in lb/h', text: `${saidOf(flow)} injectors in lb/h` }]
        : [{ label: `Rated at 3 bar, wanted at ${said}`, text: `${saidOf(flow)} @ 3 bar, what at ${said}` }]),
      { label: `Rated at ${said}`, text: `${saidOf(flow)} @ ${said}, what at … bar`, open: true },
    ]);
  const wanted = { ...to, unit: to.unit || unit };
  const toKPa = withUnit(wanted, 'pressure')?.value;
  if (toKPa === undefined) return undefined;
  const typed = rated.unit === 'g/s' ? { flowGs: rated.value } : { flowCcMin: rated.value };
  return answer(
    'injector',
    'flow-at-pressure',
    { ...typed, fromKPa, toKPa },
    { flow: saidOf(flow), from: said, to: saidOf(wanted) },
  );
}
