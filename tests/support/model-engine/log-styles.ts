import type { LogStyle } from './log-text.ts';

const clock = (seconds: number): string => {
  const of = (value: number, width: number) => String(value).padStart(width, '0');
  const ms = Math.round(seconds * 1000);
  return `${of(Math.floor(ms / 3_600_000), 2)}:${of(Math.floor(ms / 60_000) % 60, 2)}:${of(Math.floor(ms / 1000) % 60, 2)}.${of(ms % 1000, 3)}`;
};

/** Ways in which a log of the same drive can be written; no product's, only the trade's own words. */
export const logStyles: Readonly<Record<string, LogStyle>> = {
  'plain English, seconds': {
    delimiter: ',',
    columns: [
      ['Time (s)', (row) => row.timeS],
      ['Engine speed (rpm)', (row) => row.speedRpm],
      ['Manifold pressure (kPa)', (row) => row.loadKPa],
      ['Throttle (%)', (row) => row.throttleRatio * 100],
      ['Lambda', (row) => row.lambda],
      ['Target lambda', (row) => row.targetLambda],
      ['Lambda correction (%)', (row) => (row.trimRatio - 1) * 100],
      ['Coolant temp (°C)', (row) => row.coolantC],
      ['Oil P (bar)', (row) => row.oilKPa / 100],
      ['Oil T (°C)', (row) => row.oilC],
      ['Fuel P (bar)', (row) => row.fuelKPa / 100],
      ['Injector duty (%)', (row) => row.dutyRatio * 100],
      ['Knock count', (row) => row.knockCount],
      ['Battery (V)', (row) => row.batteryV],
      ['Fuel cut', (row) => row.fuelCut],
    ],
  },
  'German, semicolons, decimal commas, a row of units': {
    delimiter: ';',
    decimalComma: true,
    unitsRow: true,
    lineEnd: '\r\n',
    before: ['Fahrt 3;Hillclimb', 'Datum;12.05.2026', ''],
    columns: [
      ['Zeit', (row) => row.timeS * 1000, 'ms'],
      ['Drehzahl', (row) => row.speedRpm, 'U/min'],
      ['Saugrohrdruck', (row) => row.loadKPa / 100, 'bar'],
      ['Drosselklappe', (row) => row.throttleRatio * 100, '%'],
      ['Lambda', (row) => row.lambda, ''],
      ['Lambda Soll', (row) => row.targetLambda, ''],
      ['Lambdaregler', (row) => row.trimRatio, ''],
      ['Kühlmitteltemperatur', (row) => row.coolantC, '°C'],
      ['Öldruck', (row) => row.oilKPa / 100, 'bar'],
      ['Schubabschaltung', (row) => row.fuelCut, ''],
    ],
  },
  'AFR on petrol’s scale, psi gauge, °F, tabs, time of day': {
    delimiter: '\t',
    missing: 'NaN',
    columns: [
      ['Time of day', (row) => clock(36_000 + row.timeS)],
      ['AFR [petrol]', (row) => row.lambda * 14.7],
      ['RPM', (row) => row.speedRpm],
      ['Boost (psi)', (row) => (row.loadKPa - 101.3) / 6.894757],
      ['TPS (%)', (row) => row.throttleRatio * 100],
      ['AFR target', (row) => row.targetLambda * 14.7],
      ['Short term trim (%)', (row) => row.trimRatio * 100],
      ['Water temp (°F)', (row) => row.coolantC * 1.8 + 32],
      ['Sensor temp (°C)', (row) => row.sensorC],
    ],
  },
  'French, quoted, pipes, header again and again': {
    delimiter: '|',
    quoted: true,
    headerEvery: 700,
    columns: [
      ['Temps (s)', (row) => row.timeS],
      ['Régime moteur (tr/min)', (row) => row.speedRpm],
      ['Pression admission (mbar)', (row) => row.loadKPa * 10],
      ['Papillon (%)', (row) => row.throttleRatio * 100],
      ['Richesse', (row) => 1 / row.lambda],
      ['Lambda consigne', (row) => row.targetLambda],
      ['Correction lambda (%)', (row) => (row.trimRatio - 1) * 100],
      ['Température eau (°C)', (row) => row.coolantC],
      ['Coupure injection', (row) => row.fuelCut],
    ],
  },
  'an epoch, comments above, other columns between': {
    delimiter: ',',
    before: ['# drive on the hill', '# sensor, wideband', 'Driver,Cleo', 'Vehicle,Coupe'],
    columns: [
      ['Timestamp', (row) => 1_778_000_000_000 + Math.round(row.timeS * 1000)],
      ['Latitude', () => 51.5],
      ['Engine RPM', (row) => row.speedRpm],
      ['Ignition angle (deg)', () => 22],
      ['MAP (kPa abs)', (row) => row.loadKPa],
      ['Wideband', (row) => row.lambda],
      ['Lambda desired', (row) => row.targetLambda],
      ['Closed loop correction', (row) => row.trimRatio],
      ['CLT (C)', (row) => row.coolantC],
      ['Pulse width (ms)', (row) => row.pulseMs],
      ['Wheel speed (km/h)', (row) => row.speedRpm / 50],
    ],
  },
};
