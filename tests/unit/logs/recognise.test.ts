import { describe, expect, it } from 'vitest';
import { layoutOf } from '../../../src/logs/layout.ts';
import { fingerprintOf, recognise } from '../../../src/logs/recognise.ts';
import type { Role } from '../../../src/logs/words.ts';

/** A log of these columns, with three rows of readings under them. */
async function columnsOf(
  names: readonly string[],
  rows: readonly (readonly string[])[] = [],
  delimiter = ',',
  assigned: Partial<Record<Role, string>> = {},
) {
  const made =
    rows.length > 0 ? rows : [1, 2, 3].map((row) => names.map((_, column) => String(column * 7 + row)));
  const text = [names, ...made].map((cells) => cells.join(delimiter)).join('\n');
  const layout = await layoutOf(`${text}\n`);
  const { columns, open } = recognise(layout, assigned, 14.7);
  return {
    layout,
    open,
    columns,
    by: Object.fromEntries(columns.map(({ role, name }) => [role, name])),
    read: (role: Role, cell: string) => columns.find((column) => column.role === role)?.reader.read(cell),
  };
}

describe('a column', () => {
  const needed = ['Time (s)', 'RPM', 'MAP (kPa)', 'Lambda'];

  it.each<[string, Role]>([
    ['Engine speed', 'speedRpm'],
    ['Accel pedal (%)', 'throttleRatio'],
    ['Gaspedal (%)', 'throttleRatio'],
    ['Boost/Vacuum (psi)', 'loadKPa'],
    ['Gewenste lambda', 'targetLambda'],
    ['Lambda zadana', 'targetLambda'],
    ['Ciśnienie w kolektorze (kPa)', 'loadKPa'],
    ['Temp. płynu (°C)', 'coolantC'],
    ['Temperatura do motor (°C)', 'coolantC'],
    ['Température moteur', 'coolantC'],
    ['Insugstryck (kPa)', 'loadKPa'],
    ['Rotação', 'speedRpm'],
    ['Speed (rpm)', 'speedRpm'],
    ['Crank [1/min]', 'speedRpm'],
    ['n_engine', 'speedRpm'],
    ['p_man', 'loadKPa'],
    ['P_intake (kPa)', 'loadKPa'],
    ['Manifold Abs Press (bar)', 'loadKPa'],
    ['MAP [kPa]', 'loadKPa'],
    ['lambda_actual', 'lambda'],
    ['Lambda measured', 'lambda'],
    ['Sensor 1 (lambda)', 'lambda'],
    ['Lambda bank 1', 'lambda'],
    ['AFR1', 'lambda'],
    ['Tgt AFR', 'targetLambda'],
    ['lambda_target', 'targetLambda'],
    ['Coolant', 'coolantC'],
    ['T_water', 'coolantC'],
    ['ECT °C', 'coolantC'],
    ['T_oil', 'oilC'],
    ['P_oil (bar)', 'oilKPa'],
    ['OilPressure', 'oilKPa'],
    ['P_fuel', 'fuelKPa'],
    ['Duty (%)', 'dutyRatio'],
    ['EGO cor (%)', 'trimRatio'],
    ['Lambda control (%)', 'trimRatio'],
    ['DFCO', 'fuelCut'],
    ['Knock retard (deg)', 'knock'],
    ['WB status', 'sensorFault'],
    ['O2 sensor fault', 'sensorFault'],
    ['engine_rpm', 'speedRpm'],
    ['Drehzahl [U/min]', 'speedRpm'],
    ['Motordrehzahl', 'speedRpm'],
    ['Régime moteur (tr/min)', 'speedRpm'],
    ['Giri motore', 'speedRpm'],
    ['Varvtal', 'speedRpm'],
    ['n (1/min)', 'speedRpm'],
    ['rpm/min', 'speedRpm'],
    ['Manifold absolute pressure', 'loadKPa'],
    ['Saugrohrdruck (mbar)', 'loadKPa'],
    ['Pression collecteur (bar)', 'loadKPa'],
    ['Presión colector', 'loadKPa'],
    ['Ladedruck (bar)', 'loadKPa'],
    ['Boost (psi)', 'loadKPa'],
    ['AFR [gasoline]', 'lambda'],
    ['A/F ratio', 'lambda'],
    ['λ', 'lambda'],
    ['Air fuel ratio', 'lambda'],
    ['Wideband O2', 'lambda'],
    ['Lambda 1', 'lambda'],
    ['Lambda Ist', 'lambda'],
    ['Target AFR', 'targetLambda'],
    ['Lambda desired', 'targetLambda'],
    ['λ Soll', 'targetLambda'],
    ['Lambda consigne', 'targetLambda'],
    ['Lambda setpoint', 'targetLambda'],
    ['commanded afr', 'targetLambda'],
    ['Coolant temperature (°C)', 'coolantC'],
    ['CLT', 'coolantC'],
    ['Water temp (F)', 'coolantC'],
    ['Kühlwassertemperatur', 'coolantC'],
    ['Température eau', 'coolantC'],
    ['Temperatura acqua', 'coolantC'],
    ['Oil P (bar)', 'oilKPa'],
    ['Oil pressure', 'oilKPa'],
    ['Öldruck', 'oilKPa'],
    ['Pression huile', 'oilKPa'],
    ['Oil T', 'oilC'],
    ['Öltemperatur (°C)', 'oilC'],
    ['Fuel pressure (psi)', 'fuelKPa'],
    ['Kraftstoffdruck', 'fuelKPa'],
    ['Pression essence', 'fuelKPa'],
    ['Intake air temp', 'chargeC'],
    ['IAT', 'chargeC'],
    ['Ladelufttemperatur', 'chargeC'],
    ['Charge temp (C)', 'chargeC'],
    ['Injector pulse width (ms)', 'pulseMs'],
    ['PW', 'pulseMs'],
    ['Einspritzzeit (ms)', 'pulseMs'],
    ['Injector duty (%)', 'dutyRatio'],
    ['Inj duty cycle', 'dutyRatio'],
    ['Battery voltage', 'batteryV'],
    ['Bordspannung', 'batteryV'],
    ['Closed loop correction', 'trimRatio'],
    ['Short term fuel trim (%)', 'trimRatio'],
    ['Lambda correction', 'trimRatio'],
    ['Lambdaregler', 'trimRatio'],
    ['Correction lambda (%)', 'trimRatio'],
    ['Knock count', 'knock'],
    ['Klopfzähler', 'knock'],
    ['Cliquetis', 'knock'],
    ['Vehicle speed (km/h)', 'vehicleKmH'],
    ['Speed (mph)', 'vehicleKmH'],
    ['Geschwindigkeit', 'vehicleKmH'],
    ['Gear', 'gear'],
    ['Fuel cut', 'fuelCut'],
    ['Schubabschaltung', 'fuelCut'],
    ['Overrun', 'fuelCut'],
    ['Coupure injection', 'fuelCut'],
    ['Lambda sensor temperature', 'sensorC'],
    ['Sondentemperatur', 'sensorC'],
    ['Lambda sensor status', 'sensorFault'],
    ['Wideband fault', 'sensorFault'],
    ['Acceleration enrichment', 'transientFuel'],
    ['Beschleunigungsanreicherung (%)', 'transientFuel'],
    ['Warm-up enrichment (%)', 'enrichmentRatio'],
    ['Throttle position (%)', 'throttleRatio'],
    ['TPS', 'throttleRatio'],
    ['Drosselklappe (%)', 'throttleRatio'],
    ['Papillon', 'throttleRatio'],
  ])('called "%s" is taken for %s', async (name, role) => {
    const others = needed.filter((_, place) => ['timeS', 'speedRpm', 'loadKPa', 'lambda'][place] !== role);
    expect((await columnsOf([...others, name])).by[role]).toBe(name);
  });

  it.each([
    'Lambda sensor voltage (V)',
    'Lambda error',
    'Lambda deviation',
    'Pedal (%)',
    'Engine load (%)',
    'Lambda (mV)',
    'Wideband heater duty',
    'Ignition angle (deg)',
    'Idle valve duty (%)',
    'Wastegate duty (%)',
    'Boost target (kPa)',
    'Turbo speed (rpm)',
    'RPM limit',
    'Dwell time (ms)',
    'Injector dead time (ms)',
    'Latitude',
  ])('called "%s" is taken for none of the readings needed', async (name) => {
    const { by } = await columnsOf([...needed, name]);
    expect([by['timeS'], by['speedRpm'], by['loadKPa'], by['lambda']]).toEqual(needed);
  });

  it.each<[string, string, Role, string, number]>([
    ['MAP (kPa)', '95', 'loadKPa', 'kPa', 95],
    ['MAP (bar)', '0.95', 'loadKPa', 'bar', 95],
    ['Manifold (inHg)', '20', 'loadKPa', 'inHg', 67.73],
    ['AFR', '14.7', 'lambda', 'AFR', 1],
    ['Lambda', '0.85', 'lambda', 'λ', 0.85],
    ['Phi', '1.25', 'lambda', 'equivalence', 0.8],
    ['CLT (F)', '212', 'coolantC', '°F', 100],
    ['CLT (K)', '373.15', 'coolantC', 'K', 100],
    ['TPS (%)', '50', 'throttleRatio', '%', 0.5],
    ['RPM x1000 (krpm)', '3.5', 'speedRpm', 'thousands', 3500],
    ['Pulse width (us)', '2500', 'pulseMs', 'µs', 2.5],
    ['Fuel trim (%)', '-4', 'trimRatio', '% added', 0.96],
    ['Battery (mV)', '13800', 'batteryV', 'mV', 13.8],
    ['Speed (mph)', '60', 'vehicleKmH', 'mph', 96.56],
  ])('in "%s" reads %s as the unit has it', async (name, cell, role, as, value) => {
    const others = ['Time (s)', 'RPM', 'MAP (kPa)', 'Lambda'].filter(
      (_, place) => ['timeS', 'speedRpm', 'loadKPa', 'lambda'][place] !== role,
    );
    const rows = ['1', '2', '3'].map((time) => [...others.map(() => time), cell]);
    const found = await columnsOf([...others, name], rows);
    expect(found.columns.find((column) => column.role === role)?.reader.as).toContain(as);
    expect(found.read(role, cell)).toBeCloseTo(value, 1);
  });

  it.each([
    ['1.03', 1.03],
    ['103', 1.03],
    ['+3', 1.03],
    ['0.03', 1.03],
  ])('of a trim without unit reads %s as the same', async (cell, value) => {
    const rows = ['1', '2', '3'].map((time) => [time, '2000', '60', '1', cell]);
    const { read } = await columnsOf([...needed, 'Fuel trim'], rows);
    expect(read('trimRatio', cell)).toBeCloseTo(value, 6);
  });

  it('that falls below nothing is a pressure above the air outside', async () => {
    const rows = ['-0.6', '0.1', '0.8'].map((bar, time) => [String(time), '2000', bar, '1']);
    const { read } = await columnsOf(['Time (s)', 'RPM', 'Manifold pressure (bar)', 'Lambda'], rows);
    expect(read('loadKPa', '0.8')).toBeCloseTo(181.3, 1);
  });

  it('called boost is above the air outside, unless it reads as no engine idles', async () => {
    const of = async (...cells: readonly string[]) => {
      const rows = cells.map((cell, time) => [String(time), '900', cell, '1']);
      return columnsOf(['Time (s)', 'RPM', 'Boost (psi)', 'Lambda'], rows);
    };
    expect((await of('-9', '-8', '0')).read('loadKPa', '10')).toBeCloseTo(101.3 + 68.95, 1);
    expect((await of('0', '0', '0')).read('loadKPa', '10')).toBeCloseTo(101.3 + 68.95, 1);
    expect((await of('5.1', '5.2', '6')).read('loadKPa', '10')).toBeCloseTo(68.95, 1);
  });

  it.each<[string, readonly string[], string, number]>([
    ['kPa of an idle', ['28', '29', '29'], '100', 100],
    ['kPa of the air outside', ['101', '101', '101'], '50', 50],
    ['psi of the air outside', ['14.7', '14.7', '14.7'], '5', 34.5],
    ['psi of an idle', ['4.9', '5.1', '6'], '5', 34.5],
    ['bar of an idle', ['0.3', '0.31', '0.33'], '0.5', 50],
    ['bar of the air outside', ['1.01', '1.01', '1.01'], '0.5', 50],
    ['psi that fall below nothing', ['-10', '-9', '0'], '7', 101.3 + 48.3],
  ])('of manifold pressure without a unit is known by its looks: %s', async (_, cells, cell, value) => {
    const rows = cells.map((each, time) => [String(time), '900', each, '1']);
    const { read } = await columnsOf(['Time (s)', 'RPM', 'Manifold pressure', 'Lambda'], rows);
    expect(read('loadKPa', cell)).toBeCloseTo(value, 0);
  });

  it('twice there, as λ and as AFR of the same sensor, is read once', async () => {
    const rows = ['1.00', '0.90', '0.95'].map((lambda, time) => [
      String(time),
      '2000',
      '60',
      (Number(lambda) * 14.7).toFixed(2),
      lambda,
    ]);
    const { by, open } = await columnsOf(['Time (s)', 'RPM', 'MAP (kPa)', 'AFR', 'Lambda'], rows);
    expect(open).toEqual([]);
    expect(by['lambda']).toBe('Lambda');
  });
});

describe('manifold vacuum', () => {
  // idle first, then boost: the sign that vacuum has there tells the two ways of writing it apart
  it.each([
    ['18', '-20'],
    ['-18', '20'],
  ])('of %s inHg at idle is below the air outside, and %s is boost', async (idle, boost) => {
    const rows = ['0', '1', '2', '3'].map((time) => [time, '900', time === '3' ? boost : idle, '0.9']);
    const { read } = await columnsOf(['Time (s)', 'RPM', 'Vacuum (inHg)', 'Lambda'], rows);
    // 1 inHg is 3.386 kPa
    expect(read('vacuumKPa', idle)).toBeCloseTo(18 * 3.386, 1);
    expect(read('vacuumKPa', boost)).toBeCloseTo(-20 * 3.386, 1);
  });
});

describe('what is in doubt', () => {
  it('is left open: two sensors that say different things', async () => {
    const rows = [0, 1, 2].map((time) => [String(time), '2000', '60', `0.9${time}`, `1.0${2 - time}`]);
    const { open, by } = await columnsOf(['Time (s)', 'RPM', 'MAP (kPa)', 'Lambda 1', 'Lambda 2'], rows);
    expect(by['lambda']).toBeUndefined();
    expect(open).toEqual([{ role: 'lambda', candidates: ['Lambda 1', 'Lambda 2'] }]);
  });

  it('is no doubt when the second says nothing', async () => {
    const rows = [0, 1, 2].map((time) => [String(time), '2000', '60', `0.9${time}`, '0']);
    const { open, by } = await columnsOf(['Time (s)', 'RPM', 'MAP (kPa)', 'Lambda 1', 'Lambda 2'], rows);
    expect(open).toEqual([]);
    expect(by['lambda']).toBe('Lambda 1');
  });

  it('is asked about with the columns whose unit allows it', async () => {
    const { open } = await columnsOf(['Time (s)', 'RPM', 'Channel 5 (kPa)', 'Channel 6', 'CLT (C)']);
    expect(open).toEqual([
      { role: 'loadKPa', candidates: ['Channel 5 (kPa)', 'Channel 6'] },
      { role: 'lambda', candidates: ['Channel 6'] },
    ]);
  });

  it('is asked about with what rises, where the time is not named', async () => {
    const rows = [0, 1, 2].map((row) => [String(row / 10), '2000', '60', '0.9', String(5 - row)]);
    const { open } = await columnsOf(['Channel 1', 'RPM', 'MAP (kPa)', 'Lambda', 'Channel 5'], rows);
    expect(open).toEqual([{ role: 'timeS', candidates: ['Channel 1'] }]);
  });

  it('is settled by what the crew said', async () => {
    const names = ['Time (s)', 'RPM', 'Channel 5 (kPa)', 'Channel 6', 'CLT (C)'];
    const said = { loadKPa: 'Channel 5 (kPa)', lambda: 'Channel 6' };
    const { open, by } = await columnsOf(names, [], ',', said);
    expect(open).toEqual([]);
    expect(by).toMatchObject({ ...said, timeS: 'Time (s)' });
  });
});

describe('the mark of a header', () => {
  it('is the same for the same columns, and another for others', async () => {
    const [a, b, c] = await Promise.all([
      columnsOf(['Time (s)', 'RPM', 'MAP (kPa)', 'Lambda']),
      columnsOf(['time (S)', 'rpm ', 'MAP (kPa)', 'lambda']),
      columnsOf(['Time (s)', 'RPM', 'MAP (bar)', 'Lambda']),
    ]);
    expect(fingerprintOf(a.layout)).toBe(fingerprintOf(b.layout));
    expect(fingerprintOf(a.layout)).not.toBe(fingerprintOf(c.layout));
    expect(fingerprintOf(a.layout)).toMatch(/^[0-9a-f]{16}$/);
  });
});
