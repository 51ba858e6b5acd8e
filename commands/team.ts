import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import { isCountry } from '../src/calendar/holidays.ts';
import type { Answer, Button } from '../src/core/reply.ts';
import { isZone } from '../src/core/time.ts';
import { UserError } from '../src/core/user-error.ts';
import type { TeamSettings } from '../src/records/team/team.ts';

export default defineCommand({
  description: 'Your time zone, holidays and morning time; shows them, or sets what you give',
  example: '/team country:GB/ENG zone:Europe/London morning:08:30',
  input: z.object({
    zone: z.string().trim().max(60).optional().describe('Time zone, e.g. Europe/London'),
    country: z
      .string()
      .trim()
      .max(20)
      .optional()
      .describe('Country for public holidays, e.g. GB/ENG, US, DE/BY'),
    morning: z.string().trim().max(5).optional().describe('Time of the morning message, e.g. 08:30'),
  }),
  suggest: {
    zone: (typed) =>
      Intl.supportedValuesOf('timeZone')
        .filter((zone) => zone.toLowerCase().includes(typed.toLowerCase()))
        .map((zone) => ({ label: zone, value: zone })),
  },
  run(given, hand): Answer {
    const before = hand.record.settings.read();
    const wanted = checked({
      zone: given.zone ?? before.zone,
      country: given.country ?? before.country,
      morning: given.morning ?? before.morning,
    });
    if (same(before, wanted)) return settingsAnswer(before, hand, []);
    const changed = hand.change(({ settings }) => {
      settings.change(wanted);
      return {
        value: wanted,
        said: `team set to ${wanted.zone}, ${wanted.country}, mornings at ${wanted.morning}`,
      };
    });
    return settingsAnswer(wanted, hand, [undoButton(changed)]);
  },
});

/** A message at night would be the last one anybody reads. */
const EARLIEST = '05:00';
const LATEST = '12:00';

function checked(wanted: TeamSettings): TeamSettings {
  const morning = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/.exec(wanted.morning);
  if (!isZone(wanted.zone)) {
    throw new UserError(
      'bad-input',
      `There is no time zone "${wanted.zone}". Type one like Europe/London. Nothing was changed.`,
    );
  }
  if (!isCountry(wanted.country)) {
    throw new UserError(
      'bad-input',
      `There is no holiday list for "${wanted.country}". Type one like GB/ENG, US or DE/BY. Nothing was changed.`,
    );
  }
  const time = morning && `${(morning[1] ?? '').padStart(2, '0')}:${morning[2] ?? ''}`;
  if (!time || time < EARLIEST || time > LATEST) {
    throw new UserError(
      'bad-input',
      `"${wanted.morning}" is no time for a morning message. Type one from ${EARLIEST} to ${LATEST}, like 08:30. Nothing was changed.`,
    );
  }
  return { ...wanted, morning: time };
}

const same = (a: TeamSettings, b: TeamSettings): boolean =>
  a.zone === b.zone && a.country === b.country && a.morning === b.morning;

function settingsAnswer(settings: TeamSettings, hand: Hand, buttons: readonly Button[]): Answer {
  const { today } = crewOf(hand);
  const undelivered = hand.undelivered();
  return {
    kind: 'answer',
    subject: 'Team',
    result: `Mornings at ${settings.morning}, ${settings.zone}`,
    facts: [
      ['Holidays of', settings.country],
      ['Today', today],
    ],
    items: undelivered.map(({ key, trouble }) => ({
      text: `Could not be posted: ${key}`,
      note: `${trouble}. Check that the bot may see that channel and write in it.`,
      tone: 'late',
    })),
    smallPrint: ['The morning message comes on working days, once, and never in the evening or at night.'],
    buttons,
    audience: 'crew',
    data: { ...settings, today, undelivered: undelivered.map(({ key }) => key) },
  };
}
