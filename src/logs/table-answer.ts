import type { Answer, Button } from '../core/reply.ts';
import { roleWords } from './log-answer.ts';

interface KnownTable {
  readonly loadAxisKPa: readonly number[] | null;
  readonly speedAxisRpm: readonly number[] | null;
  readonly target: string | null;
  readonly capRatio: number | null;
  readonly fuel: string | null;
  readonly scale: 'petrol' | 'fuel' | null;
}

/** The build's fuel table as far as it is known. */
export function tableAnswer(
  table: KnownTable,
  done?: { readonly said: string; readonly button: Button; readonly change: number },
): Answer {
  const { loadAxisKPa, speedAxisRpm, target, capRatio, fuel, scale } = table;
  const size =
    loadAxisKPa && speedAxisRpm ? `${loadAxisKPa.length} loads by ${speedAxisRpm.length} speeds` : undefined;
  return {
    kind: 'answer',
    subject: 'Fuel table',
    result: size === undefined ? 'Its breakpoints are not known yet' : `${size}, kept for the next log`,
    certainty:
      size === undefined
        ? 'Without them a log is answered on usual breakpoints. Type load: and speed: as they stand in the table.'
        : 'Attach a log with /log fuel, and it is answered on these.',
    facts: [
      ['Load', loadAxisKPa ? `${loadAxisKPa.join(' ')} kPa` : 'not said'],
      ['Speed', speedAxisRpm ? `${speedAxisRpm.join(' ')} rpm` : 'not said'],
      ['λ wanted', target ?? 'as the log’s own column says, else safe figures by common practice'],
      ['Largest change', `${Math.round((capRatio ?? 0.1) * 100)} % in one pass`],
      ['AFR', `counted in ${scale === 'fuel' ? (fuel ?? 'petrol') : 'petrol, 14.7 : 1'}`],
    ],
    ...(done === undefined ? {} : { buttons: [done.button] }),
    audience: 'crew',
    data: {
      kind: 'fuel-table',
      loadAxisKPa: loadAxisKPa && [...loadAxisKPa],
      speedAxisRpm: speedAxisRpm && [...speedAxisRpm],
      target,
      capRatio,
      fuel,
      scale,
      ...(done === undefined ? {} : { said: done.said, change: done.change }),
    },
  };
}

interface KnownHeader {
  readonly id: number;
  readonly roles: Readonly<Record<string, string>>;
  readonly toldBy: string;
  readonly toldOn: string;
}

/** The most that one card lists; the rest are told by number. */
const MOST = 8;

/** The loggers whose columns the crew has named. */
export function knownAnswer(headers: readonly KnownHeader[]): Answer {
  const many = headers.length;
  return {
    kind: 'answer',
    subject: 'Columns of logs',
    result:
      many === 0
        ? 'No logger’s columns had to be named yet'
        : `${many} ${many === 1 ? 'logger is' : 'loggers are'} known by name`,
    certainty:
      many > MOST
        ? `The newest ${MOST} are shown; forget one and the next comes up.`
        : 'A log whose columns say themselves what they are needs no naming.',
    items: headers.slice(0, MOST).map(({ id, roles, toldBy, toldOn }) => ({
      text: Object.entries(roles)
        .map(([role, name]) => `${roleWords[role] ?? role}: ${name}`)
        .join(', '),
      note: `Named by ${toldBy}, ${toldOn}`,
      buttons: [
        {
          label: 'Forget',
          weight: 'grave',
          does: { command: 'log', action: 'forget', args: { header: id } },
        },
      ],
    })),
    audience: 'crew',
    data: {
      kind: 'log-columns',
      headers: headers.map(({ id, roles }) => ({ header: id, roles: { ...roles } })),
    },
  };
}
