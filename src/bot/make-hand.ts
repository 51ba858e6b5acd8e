import type { Clock } from '../core/clock.ts';
import { UserError } from '../core/user-error.ts';
import type { Desk, Desks } from '../records/desks.ts';
import { crewSayer } from '../records/team/crew-sayer.ts';
import type { Catalogue } from './catalogue.ts';
import { type FileSource, fileGone } from './file-source.ts';
import type { Hand, Place } from './hand.ts';
import { withReopening } from './reopen-after.ts';
import type { Request } from './request.ts';
import { typedUnits } from './typed-units.ts';

export interface HandParts {
  readonly catalogue: Catalogue;
  readonly desks: Desks;
  readonly clock: Clock;
  readonly files: FileSource;
}

/** What is particular to one request. */
export interface Errand {
  readonly pressedInPlace: boolean;
  readonly onSaved: () => void;
  readonly onProgress: (said: string) => void;
}

type Asked = Pick<Request, 'id' | 'who' | 'place' | 'people' | 'files' | 'asks'>;

export function makeHand(
  { catalogue, clock, desks, files: shelf }: HandParts,
  { id, who, place, people, files = [], asks }: Asked,
  { pressedInPlace, onSaved, onProgress }: Errand,
): Hand {
  const here = (): Place => {
    if (place !== null) return place;
    throw new UserError(
      'not-now',
      'The record belongs to a crew: ask in a channel of its server. Sums work here too.',
    );
  };
  const desk = (): Desk => desks.at(here().teamId);
  const by = () => ({
    interactionId: id,
    personId: who.id,
    personName: who.name,
    atMs: clock.nowMs(),
  });
  return {
    clock,
    who,
    catalogue,
    pressedInPlace,
    nameOf: (personId) => people[personId] ?? personId,
    file(fileId) {
      const found = files.find((file) => file.id === fileId) ?? shelf.find(fileId);
      if (found === undefined) throw fileGone();
      return found;
    },
    open: (file, limits) => shelf.open(file, limits),
    progress: onProgress,
    get say() {
      return crewSayer(place === null ? null : desk().record.settings, typedUnits(asks, catalogue));
    },
    notice: (noticeId) => desk().notices.find(noticeId),
    undelivered: () => desk().notices.undelivered(),
    get place() {
      return here();
    },
    get proposals() {
      return desk().proposals;
    },
    get whole() {
      return desk().whole;
    },
    get record() {
      return desk().record;
    },
    change(work) {
      const changed = desk().ledger.change(by(), () =>
        withReopening(desk().record, here(), clock.nowMs(), work(desk().record)),
      );
      onSaved();
      return changed;
    },
    undo(changeId) {
      const { ledger } = desk();
      const last = changeId ?? ledger.lastBy(who.id)?.id;
      if (last === undefined) throw new UserError('not-found', 'There is nothing of yours left to undo.');
      const undone = ledger.undo(by(), last);
      onSaved();
      return undone;
    },
  };
}
