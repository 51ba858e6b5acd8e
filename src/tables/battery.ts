import { z } from 'zod';
import batteryTable from '../../data/electrics/battery.json' with { type: 'json' };
import { readTable } from './read-table.ts';

const source = z.array(z.string().min(2)).min(1);
const volts = z.number().min(8).max(16);

const Battery = z
  .object({
    rest: z
      .array(
        z
          .strictObject({ charge_ratio: z.number().min(0).max(1), voltage_v: volts, source })
          .transform((row) => ({
            chargeRatio: row.charge_ratio,
            voltageV: row.voltage_v,
          })),
      )
      .min(2),
    limits: z
      .strictObject({
        rest_most_v: volts,
        cranking_least_v: volts,
        cranking_good_v: volts,
        charging_dead_v: volts,
        charging_least_v: volts,
        charging_most_v: volts,
        charging_stop_v: volts,
        source,
      })
      .transform((row) => ({
        restMostV: row.rest_most_v,
        crankingLeastV: row.cranking_least_v,
        crankingGoodV: row.cranking_good_v,
        chargingDeadV: row.charging_dead_v,
        chargingLeastV: row.charging_least_v,
        chargingMostV: row.charging_most_v,
        chargingStopV: row.charging_stop_v,
      })),
  })
  .refine(
    ({ rest }) =>
      rest.every((row, index) => {
        const next = rest[index + 1];
        return next === undefined || (next.voltageV > row.voltageV && next.chargeRatio > row.chargeRatio);
      }),
    'voltage and charge must rise together',
  );

/** Common readings of a 12 V lead-acid battery. */
export const battery = readTable('electrics/battery.json', Battery, batteryTable);
