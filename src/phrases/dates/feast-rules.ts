import { steer, the, wordOf } from './atoms.ts';
import { todayOf } from './days.ts';
import { type Feast, feastsNamed, LONGEST_NAME } from './feasts.ts';
import { andThen, askOf, dayOf, doubt, type Find, merge } from './find.ts';
import { nearest, year } from './months.ts';
import type { DateContext } from './reading.ts';
import { any, map, maybe, once, type Rule, seq } from './rules.ts';
import { fold } from './words.ts';

/** The longest run of tokens that is a name; matched on their corrected text, so slips are forgiven as elsewhere. */
const feastName: Rule<readonly Feast[]> = once(({ tokens }, at) => {
  for (let length = Math.min(LONGEST_NAME, tokens.length - at); length > 0; length--) {
    const feasts = feastsNamed(
      tokens
        .slice(at, at + length)
        .map(({ text, meanings }) => {
          const corrected = meanings.find((meaning) => meaning.is === 'name');
          return corrected?.is === 'name' ? corrected.text : fold(text).replace(/\.$/, '');
        })
        .join(' '),
    );
    if (feasts.length > 0) return [{ value: feasts, next: at + length }];
  }
  return [];
});

function seasonOf({ season }: Feast): Pick<Feast, 'season'> {
  return season === undefined ? {} : { season };
}

/** One feast's day in the year that fits the field. */
function dayOfFeast(feast: Feast, context: DateContext): Find {
  const thisYear = todayOf(context).year;
  const days = [-1, 0, 1, 2].map((offset) => feast.on(thisYear + offset));
  return andThen(nearest(days, context), ({ date }) => dayOf(date, seasonOf(feast)));
}

/** Of the feasts of a name, those the country keeps; where it keeps none, each is only offered. */
function settle(feasts: readonly Feast[], find: (feast: Feast) => Find, context: DateContext): Find {
  const known = feasts.filter((feast) => feast.local !== true || isListed(feast, context));
  const found = merge((known.length > 0 ? known : feasts).map(find), 'Which one is meant?');
  return known.length > 0
    ? found
    : doubt(found, 'The holiday list of your country does not have that day. Is it this one?');
}

function isListed(feast: Feast, context: DateContext): boolean {
  const thisYear = todayOf(context).year;
  return [0, 1].every(
    (offset) => context.workingDays.holidayName(feast.on(thisYear + offset).toString()) !== undefined,
  );
}

export const feast: Rule<Find> = map(feastName, (feasts, context) =>
  settle(feasts, (one) => dayOfFeast(one, context), context),
);

/** "Easter Monday 2027": the year settles it. */
const feastOfYear: Rule<Find> = map(seq(feastName, year), ([feasts, n], context) =>
  settle(feasts, (one) => dayOf(one.on(n), { yearSaid: true, ...seasonOf(one) }), context),
);

/** "bank holiday" alone: the next one that the list knows, asked back. */
const someHoliday: Rule<Find> = map(
  seq(maybe(steer('next', 'coming')), wordOf('bank'), steer('holiday')),
  (_value, context) => {
    const today = todayOf(context);
    for (let days = 1; days < 300; days++) {
      const date = today.add({ days });
      if (context.workingDays.holidayName(date.toString()) !== undefined) {
        return askOf('Which holiday is meant?', date);
      }
    }
    return askOf('Which holiday is meant?');
  },
);

/** "next Christmas" is asked back where "this Christmas" is read. */
const steered: Rule<Find> = map(seq(steer('next', 'this', 'last', 'coming'), feast), ([word, found]) =>
  word === 'this' || word === 'coming' ? found : doubt(found, 'Which year is meant?'),
);

/** Everything said by the name of a day. */
export const feastRules: Rule<Find> = once(
  map(seq(the, any(feast, feastOfYear, steered, someHoliday)), ([, found]) => found),
);
