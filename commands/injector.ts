import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { enginePower, fuelUseOptions } from '../src/bot/engine-power.ts';
import {
  absolutePressure,
  type FuelFlow,
  fuelFlow,
  gaugePressure,
  pulseTime,
  quantity,
  turningSpeed,
} from '../src/bot/quantity-option.ts';
import { sumAnswer } from '../src/bot/sum-answer.ts';
import { changeAnswer } from '../src/calc/fuel/change-answer.ts';
import { deadTimeAt } from '../src/calc/fuel/dead-time.ts';
import { deadTimeAnswer } from '../src/calc/fuel/dead-time-answer.ts';
import { type DutyPoint, dutyAnswer } from '../src/calc/fuel/duty-answer.ts';
import { flowAnswer } from '../src/calc/fuel/flow-answer.ts';
import type { Aspiration } from '../src/calc/fuel/fuel-use.ts';
import { idleAnswer } from '../src/calc/fuel/idle-answer.ts';
import type { KnownFuel } from '../src/calc/fuel/known-fuel.ts';
import { matchAnswer } from '../src/calc/fuel/match-answer.ts';
import { powerAnswer, sizeAnswer } from '../src/calc/fuel/size-answer.ts';
import { ratedFlow, typedFuelUse, typedLiquid } from '../src/calc/fuel/typed-fuel.ts';
import { together } from '../src/calc/together.ts';
import type { Calculation } from '../src/core/calculation.ts';
import { UserError } from '../src/core/user-error.ts';
import { FUEL_EXAMPLES, readFuelName } from '../src/phrases/fuel-name.ts';
import { readFuelUse } from '../src/phrases/fuel-use.ts';
import { readDeadTime, readPulseLog } from '../src/phrases/injector-sheet.ts';
import { readFigures } from '../src/phrases/pairs.ts';
import { fuelNames, fuelRows } from '../src/tables/fuels.ts';
import { readingLimit } from '../src/tables/reading-limits.ts';

const SUBJECT = 'Injectors';
const text = (description: string) => z.string().min(1).max(200).describe(description);
const options = {
  fuel: text('petrol, E85, M15, 70% ethanol, petrol 2.7% oxygen').default('petrol'),
  ...fuelUseOptions,
  duty: quantity('duty', 'percent', 'Largest duty; 80 to 90 % is usual').prefault('85 %'),
  rated: quantity('rated', 'pressure', 'Pressure the flow was measured at').prefault('3 bar'),
  pressure: quantity('pressure', 'pressure', 'Across the injector, when it is not as rated').optional(),
  shots: z
    .enum(['sequential', 'each-turn'])
    .default('sequential')
    .describe('One shot in two turns, or one each turn'),
  dead: text('Dead time: 0.9 ms, or a table 8V 2.1ms, 12V 1.1ms, 14V 0.9ms'),
  volts: quantity('volts', 'voltage', 'Battery voltage, for a table of dead times').prefault('14 V'),
} as const;

/** The fuel meant by an option, liquid, with the density said instead of the table's. */
function fuelOf(field: string, typed: string, densityKgM3?: number): Calculation<KnownFuel> {
  return typedLiquid(readFuelName(typed, fuelNames), fuelRows, {
    field,
    accepted: FUEL_EXAMPLES,
    densityKgM3,
  });
}

/** An injector's flow as it is rated, whichever way it was typed. */
const ratedOf = (flow: FuelFlow, fuel: KnownFuel) => ratedFlow(flow, fuel, PETROL_KG_M3);
const PETROL_KG_M3 = fuelOf('fuel', 'petrol').value.densityKgM3;

const useOf = (typed: string | undefined, aspiration: Aspiration, fuel: KnownFuel) =>
  typedFuelUse(typed === undefined ? undefined : readFuelUse(typed), aspiration, fuel);

/** One dead time, or the place of the battery's voltage in a table of them. */
function deadTimeOf(
  field: string,
  typed: string,
  voltageV: number,
): Calculation<{ readonly deadTimeS: number }> {
  const read = readDeadTime(typed);
  switch (read.verdict) {
    case 'one':
      return { value: { deadTimeS: read.deadTimeS }, assumptions: [], sources: [], caveats: [] };
    case 'table':
      return deadTimeAt(read.pairs, voltageV);
    case 'refuse':
      throw new UserError('bad-input', `${field}: ${read.why}`);
  }
}

const size = subcommand({
  description: 'Injector size for a power',
  example: '/injector size power:400hp cylinders:4 fuel:E85',
  assumes: ['fuel', 'intake', 'bsfc', 'duty', 'at'],
  input: z.object({
    power: enginePower('power', 'Power wanted, e.g. 400 hp, 300 kW, 380 whp'),
    cylinders: z.int().min(1).max(32).describe('Injectors in all, one each cylinder'),
    fuel: options.fuel,
    intake: options.intake,
    bsfc: options.bsfc,
    duty: options.duty,
    at: options.at,
    loss: options.loss,
    density: options.density,
    pressure: options.pressure,
    rated: options.rated,
  }),
  run(asked, { say }) {
    const tank = fuelOf('fuel', asked.fuel, asked.density);
    const answer = sizeAnswer(
      {
        powerKw: asked.power.powerKw,
        injectors: asked.cylinders,
        fuel: tank.value,
        use: useOf(asked.bsfc, asked.intake, tank.value),
        dutyRatio: asked.duty,
        drivelineLossRatio: (asked.at ?? asked.power.at) === 'wheels' ? asked.loss : 0,
        ratedKpa: asked.rated,
        acrossKpa: asked.pressure ?? asked.rated,
      },
      say,
    );
    return sumAnswer({ subject: SUBJECT, ...answer, calculation: together(answer.calculation, tank) });
  },
});

const power = subcommand({
  description: 'What power a set of injectors supports',
  example: '/injector power flow:440cc count:6 fuel:E85',
  assumes: ['fuel', 'intake', 'bsfc', 'duty', 'rated'],
  input: z.object({
    flow: fuelFlow('flow', 'Flow of one: 440 cc, 42 lb/h'),
    count: z.int().min(1).max(32).describe('How many'),
    fuel: options.fuel,
    intake: options.intake,
    bsfc: options.bsfc,
    duty: options.duty,
    pressure: options.pressure,
    rated: options.rated,
    loss: options.loss,
    density: options.density,
  }),
  run(asked, { say }) {
    const tank = fuelOf('fuel', asked.fuel, asked.density);
    const rated = ratedOf(asked.flow, tank.value);
    const answer = powerAnswer(
      {
        ratedCcMin: rated.value.flowCcMin,
        injectors: asked.count,
        fuel: tank.value,
        use: useOf(asked.bsfc, asked.intake, tank.value),
        dutyRatio: asked.duty,
        drivelineLossRatio: asked.loss,
        ratedKpa: asked.rated,
        acrossKpa: asked.pressure ?? asked.rated,
      },
      say,
    );
    return sumAnswer({ subject: SUBJECT, ...answer, calculation: together(answer.calculation, rated, tank) });
  },
});

const duty = subcommand({
  description: 'Duty from pulse and speed, or the longest pulse at a duty; also over a few lines of a log',
  example: '/injector duty speed:7000rpm pulse:12.5ms',
  assumes: ['limit', 'shots'],
  input: z.object({
    speed: turningSpeed('speed', 'Engine speed').optional(),
    pulse: pulseTime('pulse', 'Pulse width, e.g. 12.5 ms; left out: the longest is worked out').optional(),
    log: text('Or speed and pulse pairs from a log: 5000 9.1, 6000 10.4, 7000 11.2').optional(),
    limit: quantity('limit', 'percent', 'Largest duty; 80 to 90 % is usual').prefault('85 %'),
    shots: options.shots,
  }),
  run({ speed, pulse, log, limit, shots }) {
    const points = loggedPoints(speed, pulse, log);
    const speedRpm = speed ?? points[0]?.speedRpm;
    if (speedRpm === undefined)
      throw new UserError('bad-input', 'Give speed, with or without pulse, or a log.');
    return sumAnswer({
      subject: SUBJECT,
      ...dutyAnswer({ speedRpm, points, limitRatio: limit, injection: shots }),
    });
  },
});

function loggedPoints(
  speed: number | undefined,
  pulse: number | undefined,
  log: string | undefined,
): readonly DutyPoint[] {
  if (log === undefined)
    return speed === undefined || pulse === undefined ? [] : [{ speedRpm: speed, pulseS: pulse }];
  const read = readPulseLog(log);
  if (read.verdict === 'read') return read.points;
  throw new UserError('bad-input', `log: ${read.why}`);
}

const flow = subcommand({
  description: 'Flow at another pressure, the pressure for a flow, or the flow in other units',
  example: '/injector flow flow:550cc from:3bar to:3.5bar',
  assumes: ['from', 'manifold', 'regulator', 'fuel', 'bench'],
  input: z.object({
    flow: fuelFlow('flow', 'Flow as rated: 550 cc, 42 lb/h'),
    to: quantity('to', 'pressure', 'Pressure at the rail, or across the injector without boost').optional(),
    wanted: fuelFlow('wanted', 'Or the flow wanted: says the pressure it takes').optional(),
    from: quantity('from', 'pressure', 'Pressure it was rated at').prefault('3 bar'),
    manifold: gaugePressure('manifold', 'Boost in the manifold, gauge; vacuum is negative').prefault('0 bar'),
    regulator: z
      .enum(['follows', 'fixed'])
      .default('follows')
      .describe('Whether the regulator follows the manifold 1:1'),
    fuel: options.fuel,
    density: options.density,
    bench: text('What it was measured with, when it was not the fuel: n-heptane').optional(),
  }),
  run({ flow: typed, to, wanted, from, manifold, regulator, fuel, density, bench }, { say }) {
    const tank = fuelOf('fuel', fuel, density);
    const answer = flowAnswer(
      {
        flow: typed,
        fuel: tank.value,
        petrolKgM3: PETROL_KG_M3,
        bench: bench === undefined ? undefined : fuelOf('bench', bench).value,
        ratedKpa: from,
        manifoldKpa: manifold,
        referenced: regulator === 'follows',
        baseKpa: to,
        wanted,
      },
      say,
    );
    return sumAnswer({ subject: SUBJECT, ...answer, calculation: together(answer.calculation, tank) });
  },
});

const change = subcommand({
  description: 'Other injectors or another fuel: what the table and the first-start settings are rescaled by',
  example: '/injector change old:440cc new:1000cc newfuel:E85 pulse:2.5ms olddead:0.9ms dead:1.1ms',
  assumes: ['fuel', 'volts'],
  input: z.object({
    old: fuelFlow('old', 'Flow of the old ones: 440 cc, 42 lb/h'),
    new: fuelFlow('new', 'Flow of the new ones, at the same pressure'),
    fuel: options.fuel,
    newfuel: text('Fuel after the change, when it is another').optional(),
    pulse: pulseTime('pulse', 'A pulse that is right now, e.g. 2.5 ms at idle').optional(),
    olddead: text('Dead time of the old ones: 0.9 ms, or a table').optional(),
    dead: text('Dead time of the new ones: 1.1 ms, or 8V 2.1ms, 12V 1.3ms, 14V 1.1ms').optional(),
    volts: options.volts,
    duty: quantity('duty', 'percent', 'Highest duty now, to see what it becomes').optional(),
  }),
  run(asked, { say }) {
    const before = fuelOf('fuel', asked.fuel);
    const after = fuelOf('newfuel', asked.newfuel ?? asked.fuel);
    const now = asked.dead === undefined ? undefined : deadTimeOf('dead', asked.dead, asked.volts);
    const old = asked.olddead === undefined ? now : deadTimeOf('olddead', asked.olddead, asked.volts);
    const [oldFlow, newFlow] = [ratedOf(asked.old, before.value), ratedOf(asked.new, after.value)];
    const answer = changeAnswer(
      {
        oldCcMin: oldFlow.value.flowCcMin,
        newCcMin: newFlow.value.flowCcMin,
        oldFuel: before.value,
        newFuel: after.value,
        pulseS: asked.pulse,
        dutyRatio: asked.duty,
        voltageV: asked.volts,
        deadTimes:
          now === undefined || old === undefined
            ? undefined
            : { oldS: old.value.deadTimeS, newS: now.value.deadTimeS },
      },
      say,
    );
    return sumAnswer({
      subject: SUBJECT,
      ...answer,
      calculation: together(answer.calculation, oldFlow, newFlow, before, after, now ?? {}, old ?? {}),
    });
  },
});

const idle = subcommand({
  description: 'Whether big injectors can be held at idle, and the largest that could',
  example: '/injector idle flow:1000cc dead:1.1ms displacement:2L cylinders:4',
  assumes: ['speed', 'map', 've', 'lambda', 'smallest'],
  input: z.object({
    flow: fuelFlow('flow', 'Flow of one: 1000 cc, 95 lb/h'),
    dead: options.dead,
    displacement: quantity('displacement', 'volume', 'Of the engine, e.g. 2 L'),
    cylinders: z.int().min(1).max(32).describe('Cylinders'),
    fuel: options.fuel,
    speed: turningSpeed('speed', 'Idle speed').prefault('900 rpm'),
    map: absolutePressure('map', 'Manifold at idle, absolute').prefault('35 kPa'),
    ve: quantity('ve', 'percent', 'Volumetric efficiency at idle, of the air in the manifold').prefault(
      '75 %',
    ),
    lambda: z.number().min(0.6).max(1.4).default(1).describe('λ wanted at idle'),
    smallest: pulseTime(
      'smallest',
      'Smallest stable pulse, dead time included; usual: dead time + 0.5 ms',
    ).optional(),
    temp: quantity('temp', 'temperature', 'Charge').prefault('40 °C'),
    volts: options.volts,
  }),
  run(asked, { say }) {
    const tank = fuelOf('fuel', asked.fuel);
    const rated = ratedOf(asked.flow, tank.value);
    const answer = idleAnswer(
      {
        flowCcMin: rated.value.flowCcMin,
        fuel: tank.value,
        dead: deadTimeOf('dead', asked.dead, asked.volts),
        displacementL: asked.displacement,
        cylinders: asked.cylinders,
        speedRpm: asked.speed,
        manifoldKpa: asked.map,
        chargeC: asked.temp,
        veRatio: asked.ve,
        lambdaRatio: asked.lambda,
        smallestPulseS: asked.smallest,
      },
      say,
    );
    return sumAnswer({ subject: SUBJECT, ...answer, calculation: together(answer.calculation, rated, tank) });
  },
});

const dead = subcommand({
  description:
    'Dead time at a voltage from a typed table, what a pulse delivers, and the error of a wrong one',
  example: '/injector dead table:"8V 2.1ms, 12V 1.1ms, 14V 0.9ms" volts:11V pulse:2.5ms',
  input: z.object({
    table: text('Voltage and dead time from the data sheet: 8V 2.1ms, 12V 1.1ms, 14V 0.9ms'),
    volts: quantity('volts', 'voltage', 'Battery voltage'),
    pulse: pulseTime('pulse', 'Pulse, e.g. 2.5 ms: shows what is delivered').optional(),
    set: text('Dead time the controller reckons with: 0.9 ms, or a table').optional(),
    speed: turningSpeed('speed', 'Engine speed, for the mean flow').optional(),
    flow: fuelFlow('flow', 'Static flow, for the mean flow').optional(),
    shots: options.shots,
  }),
  run({ table, volts, pulse, set, speed, flow: one, shots }) {
    const answer = deadTimeAnswer({
      dead: deadTimeOf('table', table, volts),
      voltageV: volts,
      pulseS: pulse,
      set: set === undefined ? undefined : deadTimeOf('set', set, volts),
      speedRpm: speed,
      staticFlowCcMin:
        one === undefined ? undefined : ratedOf(one, fuelOf('fuel', 'petrol').value).value.flowCcMin,
      injection: shots,
    });
    return sumAnswer({ subject: SUBJECT, ...answer });
  },
});

const match = subcommand({
  description: 'Matching a set from bench flows: the spread, and which cylinder leans',
  example: '/injector match flows:"438 441 429 444"',
  assumes: ['matched', 'usable'],
  input: z.object({
    flows: text('Flow of each in order of the cylinders: 438 441 429 444'),
    matched: quantity('matched', 'percent', 'Spread up to which it is a matched set').prefault(
      `${readingLimit('injector-matched').max ?? 0} %`,
    ),
    usable: quantity('usable', 'percent', 'Spread up to which it can be used').prefault(
      `${readingLimit('injector-serviceable').max ?? 0} %`,
    ),
  }),
  run({ flows, matched: matchedRatio, usable: usableRatio }) {
    const read = readFigures(flows);
    if (read.verdict === 'refuse') {
      throw new UserError('bad-input', `flows: ${read.why} What would be read: 438 441 429 444.`);
    }
    return sumAnswer({ subject: SUBJECT, ...matchAnswer(read.figures, { matchedRatio, usableRatio }) });
  },
});

export default defineCommand({
  description: 'Injectors: size, power, duty, flow at a pressure, rescaling, idle, dead time, matching',
  subcommands: { size, power, duty, flow, change, idle, dead, match },
});
