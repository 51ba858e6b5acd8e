/** A span's unit. `workday` is Monday to Friday; a German `werktag` may count Saturdays. */
export type Unit =
  | 'minute'
  | 'hour'
  | 'day'
  | 'workday'
  | 'werktag'
  | 'weekday'
  | 'week'
  | 'fortnight'
  | 'month'
  | 'quarter'
  | 'year';

export type PartOfDay = 'morning' | 'noonish' | 'afternoon' | 'evening' | 'night';

/** Words that only steer how their neighbours are read. Named in English whatever language they came from. */
export type Steer =
  | 'about'
  | 'after'
  | 'ago'
  | 'and'
  | 'asap'
  | 'at'
  | 'before'
  | 'beginning'
  | 'between'
  | 'business'
  | 'by'
  | 'close'
  | 'coming'
  | 'couple'
  | 'daybefore'
  | 'dash'
  | 'early'
  | 'earliest'
  | 'end'
  | 'endofday'
  | 'ending'
  | 'every'
  | 'few'
  | 'first-thing'
  | 'following'
  | 'for'
  | 'from'
  | 'half'
  | 'halb'
  | 'holiday'
  | 'in'
  | 'just'
  | 'last'
  | 'late'
  | 'later'
  | 'latest'
  | 'mid'
  | 'midnight'
  | 'monthend'
  | 'never'
  | 'next'
  | 'nextbutone'
  | 'no'
  | 'noon'
  | 'not'
  | 'now'
  | 'oclock'
  | 'of'
  | 'on'
  | 'one'
  | 'or'
  | 'other'
  | 'past'
  | 'play'
  | 'plus'
  | 'quarter'
  | 'sharp'
  | 'slash'
  | 'soon'
  | 'sometime'
  | 'start'
  | 'starting'
  | 'than'
  | 'the'
  | 'thing'
  | 'this'
  | 'till'
  | 'time'
  | 'to'
  | 'uhr'
  | 'until'
  | 'viertel'
  | 'weekend'
  | 'weekending'
  | 'weekof'
  | 'weekno'
  | 'within'
  | 'working'
  | 'yearend';

/** What one token can mean. A token may have several meanings (`second`, `am`, `morgen`); the grammar picks. */
export type Meaning =
  | { readonly is: 'number'; readonly n: number; readonly digits: string }
  | { readonly is: 'ordinal'; readonly n: number }
  | { readonly is: 'weekday'; readonly n: number }
  | { readonly is: 'month'; readonly n: number }
  | { readonly is: 'unit'; readonly unit: Unit }
  | { readonly is: 'dayword'; readonly offset: number }
  | { readonly is: 'part'; readonly part: PartOfDay }
  | { readonly is: 'meridiem'; readonly half: 'am' | 'pm' }
  | { readonly is: 'ymd'; readonly year: number; readonly month: number; readonly day: number }
  | {
      readonly is: 'triple';
      readonly a: number;
      readonly b: number;
      readonly year: number;
      readonly mark: string;
    }
  | {
      readonly is: 'pair';
      readonly a: number;
      readonly b: number;
      readonly mark: '/' | '.' | '..';
      readonly text: string;
    }
  | { readonly is: 'clock'; readonly hour: number; readonly minute: number; readonly padded: boolean }
  | {
      readonly is: 'isoweek';
      readonly year: number | undefined;
      readonly week: number;
      readonly weekday: number | undefined;
    }
  | { readonly is: 'steer'; readonly word: Steer }
  | { readonly is: 'name'; readonly text: string };
