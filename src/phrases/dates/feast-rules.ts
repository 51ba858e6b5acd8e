import { steer, the } from './atoms.ts';
import { todayOf } from './days.ts';
import { type Feast, feastsNamed, LONGEST_NAME } from './feasts.ts';
import { andThen, askOf, dayOf, doubt, type Find, merge } from './find.ts';
import { nearest } from './months.ts';
import type { DateContext } from './reading.ts';
import { any, type Match, map, maybe, once, type Rule, seq } from './rules.ts';
import { fold } from './words.ts';

/** One feast's day in the year that fits the field. */
function dayOfFeast(feast: Feast, context: DateContext): Find {
  const year = todayOf(context).year;
  const days = [-1, 0, 1, 2].map((offset) => feast.on(year + offset));
  return andThen(nearest(days, context), ({ date }) => dayOf(date, { season: feast.season === true }));
}

function findNamed(name: string, context: DateContext): Find | undefined {
  const feasts = feastsNamed(name);
  if (feasts.length === 0) return undefined;
  const known = feasts.filter((feast) => feast.local !== true || isListed(feast, context));
  const found = merge(
    (known.length > 0 ? known : feasts).map((feast) => dayOfFeast(feast, context)),
    'Which one is meant?',
  );
  return known.length > 0
    ? found
    : doubt(found, 'The holiday list of your country does not have that day. Is it this one?');
}

function isListed(feast: Feast, context: DateContext): boolean {
  const year = todayOf(context).year;
  return [0, 1].every(
    (offset) => context.workingDays.holidayName(feast.on(year + offset).toString()) !== undefined,
  );
}

/** The longest run of tokens that is a name; matched on their corrected text, so slips are forgiven as elsewhere. */
export const feast: Rule<Find> = once((phrase, at) => {
  phrase.meter.steps++;
  const matches: Match<Find>[] = [];
  for (let length = Math.min(LONGEST_NAME, phrase.tokens.length - at); length > 0; length--) {
    const name = phrase.tokens
      .slice(at, at + length)
      .map((token) => {
        const corrected = token.meanings.find((meaning) => meaning.is === 'name');
        return corrected?.is === 'name' ? corrected.text : fold(token.text).replace(/\.$/, '');
      })
      .join(' ');
    const found = findNamed(name, phrase.context);
    if (found !== undefined) {
      matches.push({ value: found, next: at + length });
      break;
    }
  }
  return matches;
});

/** "bank holiday" alone: the next Monday or so that the list knows, asked back. */
const someHoliday: Rule<Find> = map(
  seq(the, maybe(steer('next', 'coming')), bank(), steer('holiday')),
  (_value, context) => {
    const today = todayOf(context);
    for (let days = 1; days < 300; days++) {
      const date = today.add({ days });
      if (context.workingDays.holidayName(date.toString()) !== undefined)
        return askOf('Which holiday is meant?', date);
    }
    return askOf('Which holiday is meant?');
  },
);

function bank(): Rule<true> {
  return (phrase, at) => (phrase.tokens[at]?.text === 'bank' ? [{ value: true, next: at + 1 }] : []);
}

/** "next Christmas", "this Easter" are asked back where the plain name would be read. */
const steered: Rule<Find> = map(seq(steer('next', 'this', 'last', 'coming'), feast), ([word, found]) =>
  word === 'this' || word === 'coming' ? found : doubt(found, 'Which year is meant?'),
);

export const feastRules: Rule<Find> = once(
  any(
    map(seq(the, feast), ([, found]) => found),
    steered,
    someHoliday,
  ),
);
