import { sayIn } from '../../calc/units/say.ts';
import { crewSayer } from '../team/crew-sayer.ts';
import type { TeamRecord } from '../team-record.ts';

/** Says a volume, handed over in litres. */
export type SayLitres = (litres: number) => string;

/** As this crew counts: "5.6 L", "5.92 US qt"; below a tenth of a litre "80 cc". */
export function litresOf({ settings }: Pick<TeamRecord, 'settings'>): SayLitres {
  const sayer = crewSayer(settings, []);
  return (litres) =>
    litres > 0 && litres < 0.1 && sayer.unitOf('volume', litres) === 'L'
      ? sayIn(litres, 'cc', 2)
      : sayer.one('volume', litres, 3);
}
