import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import type { OwnUnits } from '../src/calc/units/own-units.ts';
import { isCountry } from '../src/calendar/holidays.ts';
import type { Answer, Button } from '../src/core/reply.ts';
import { isZone } from '../src/core/time.ts';
import { UserError } from '../src/core/user-error.ts';
import type { TeamSettings } from '../src/records/team/team.ts';
import { MIXTURES, sayUnits, signsFor, withSigns } from '../src/records/team/units.ts';

export default defineCommand({
  description: 'Your zone, holidays, morning time and units; shows them, or sets what you give',
  example: '/team country:GB/ENG zone:Europe/London morning:08:30 pressure:psi',
  input: z.object({
    zone: z.string().trim().max(60).optional().describe('Time zone, e.g. Europe/London'),
    country: z
      .string()
      .trim()
      .max(20)
      .optional()
      .describe('Country for public holidays, e.g. GB/ENG, US, DE/BY'),
    morning: z.string().trim().max(5).optional().describe('Time of the morning message, e.g. 08:30'),
    units: z
      .enum(['metric', 'British', 'US'])
      .optional()
      .describe('What answers are given in, all at once; each can be set for itself too'),
    pressure: oneOf('pressure', 'Pressures in answers'),
    torque: oneOf('torque', 'Torques, and forces with them'),
    temperature: oneOf('temperature', 'Temperatures'),
    length: oneOf('length', 'Lengths; areas, engine volumes and flow speeds with them'),
    volume: oneOf('volume', 'Oil, coolant and fuel'),
    flow: oneOf('flow', 'Injectors; air with them'),
    power: oneOf('power', 'Engine power'),
    distance: oneOf('distance', 'Distances; road speeds and heights with them'),
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
    const counted = hand.record.settings.units();
    const units = withSigns(given.units === undefined ? counted : MIXTURES[given.units], given);
    const others = sayUnits(units) !== sayUnits(counted);
    if (same(before, wanted) && !others) return settingsAnswer(before, hand, []);
    const changed = hand.change(({ settings }) => {
      if (!same(before, wanted)) settings.change(wanted);
      settings.changeUnits(units);
      const unitsSaid = others ? [`answers in ${sayUnits(units)}`] : [];
      const said = same(before, wanted)
        ? []
        : [`${wanted.zone}, ${wanted.country}, mornings at ${wanted.morning}`];
      return { value: wanted, said: `team set to ${[...said, ...unitsSaid].join('; ')}` };
    });
    return settingsAnswer(wanted, hand, [undoButton(changed)]);
  },
});

/** A choice of units, as they are printed. */
function oneOf(what: keyof OwnUnits, description: string) {
  return z.enum(signsFor(what)).optional().describe(description);
}

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
      ['Answers in', sayUnits(hand.record.settings.units())],
      ['Today', today],
    ],
    items: undelivered.map(({ key, trouble }) => ({
      text: `Could not be posted: ${key}`,
      note: `${trouble}. Check that the bot may see that channel and write in it.`,
      tone: 'late',
    })),
    smallPrint: [
      'The morning message comes on working days, once, and never in the evening or at night.',
      'An answer is given in the units its question is typed in, and in yours where it types none.',
    ],
    buttons,
    audience: 'crew',
    data: {
      ...settings,
      units: { ...hand.record.settings.units() },
      today,
      undelivered: undelivered.map(({ key }) => key),
    },
  };
}
