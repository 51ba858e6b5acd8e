import type { OpenForm, Outcome } from '../contract.ts';
import type { LiveFrame, PageEntry, PageState } from '../page-api.ts';
import { announce } from './announce.ts';
import { openBook } from './book.ts';
import { openComposer } from './composer.ts';
import { place } from './dom.ts';
import { earlierEntries } from './earlier.ts';
import { followNewest } from './follow.ts';
import { openForm } from './form.ts';
import { handsOf } from './hands.ts';
import { openHead } from './head.ts';
import { compareIds, entryId } from './ids.ts';
import { openLive } from './live.ts';
import { askWhoIAm } from './me.ts';
import { remember, remembered } from './memory.ts';
import { type Notices, saySlow } from './notices.ts';
import { putAway, stillWanted } from './put-away.ts';
import { Refused, server } from './server.ts';
import { changeIn, entryOf, newestShared, outliving, Session } from './session.ts';
import { refreshTimes } from './show-place.ts';
import { summaryOf } from './summary.ts';

const MINUTE_MS = 60_000;
/** The bot API shows "typing" for ten seconds. */
const TYPING_MS = 10_000;
const AWAY = 'The channel is away. It is tried again by itself; what you have typed is kept.';

/** Puts the page together around the first state of the channel. */
export function openPage(first: PageState, notices: Notices): void {
  let session = new Session(first);
  let wasAway = false;
  let loads = 0;
  let typing: ReturnType<typeof setTimeout> | undefined;
  const formsSeen = new Set<string>();
  const [scroller, list, foot] = [place('book'), place('entries'), place('foot')];

  // A scrolled sheet has to be reachable for the keyboard.
  scroller.tabIndex = 0;

  const hands = handsOf(
    () => session,
    (outcome) => takeOutcome(outcome),
  );
  const lists = () => session.state;
  const initials = (name: string) => session.initials(name);
  const jumpTo = async (messageId: string): Promise<void> => {
    const isEarlier = () => compareIds(messageId, book.entries()[0]?.message.id ?? '0') < 0;
    while (isEarlier() && (await earlier.load()));
    const entry = book.find(messageId);
    entry?.scrollIntoView({ block: 'start' });
    entry?.focus({ preventScroll: true });
    if (entry === undefined) announce('That entry is further back than what is on the sheet.');
  };
  const book = openBook(list, {
    ...hands,
    lists,
    initials,
    nameOf: (author) => session.nameOf(author),
    jumpTo: (messageId) => void jumpTo(messageId),
    putOnLine: (line) => composer.put(line),
    putAway(messageId) {
      putAway(messageId);
      follow.during(() => book.remove(messageId));
      scroller.focus();
    },
  });
  const goTo = (channelId: string) => void load(session.me, channelId);
  const drawHead = openHead(place('head'), {
    changeMe: whoAmI,
    goTo,
    jumpTo: (messageId) => void jumpTo(messageId),
    initials,
  });
  const follow = followNewest(scroller, list, foot);
  const earlier = earlierEntries(scroller, async () => {
    const oldest = book.entries()[0]?.message.id;
    if (oldest === undefined) return false;
    const { channelId } = session.state;
    const found = await orNotice(server.messages(session.me, channelId, oldest));
    if (found === undefined || channelId !== session.state.channelId) return false;
    follow.during(() => {
      book.put(stillWanted(found.entries));
      earlier.set(found.more);
    });
    return found.entries.length > 0;
  });

  const composer = openComposer(foot, {
    async send(line, files) {
      if (session.me === '') {
        whoAmI();
        return 'Say who is writing first; the line is kept.';
      }
      follow.toEnd();
      return await saySlow(notices, hands.send(line, files));
    },
    suggest: hands.suggest,
    starters: () => session.state.starters,
    uploadLimitBytes: () => session.state.uploadLimitBytes,
  });

  const live = openLive({
    away() {
      wasAway = true;
      notices.set('away', AWAY);
    },
    frame: (frame) => takeFrame(frame),
  });

  /** Carries a request out, or says beside the line why not. */
  async function orNotice<Answer>(request: Promise<Answer>): Promise<Answer | undefined> {
    try {
      const answer = await request;
      if (live.isOpen()) notices.set('away', undefined);
      return answer;
    } catch (failure) {
      if (!(failure instanceof Refused)) throw failure;
      notices.set('away', failure.message);
      return undefined;
    }
  }

  function drawAround(): void {
    const { guildName, channels, channelId, me, notice } = session.state;
    const standing = book.entries().findLast((entry) => entry.pinned) ?? notice ?? undefined;
    drawHead({ build: guildName, me, channels, channelId, standing });
    const here = channels.find((channel) => channel.id === channelId);
    document.title = here === undefined ? guildName : `${here.name} – ${guildName}`;
    notices.set(
      'bot',
      session.state.botOnline
        ? undefined
        : `${session.hand} is not here at the moment; commands get no answer until it is back.`,
    );
  }

  /** Loads the channel as this person sees it. */
  async function load(as: string, channelId: string): Promise<void> {
    loads += 1;
    const thisLoad = loads;
    const fresh = await orNotice(server.state(as, channelId));
    // Somebody in a hurry has asked for another channel meanwhile.
    if (fresh === undefined || thisLoad !== loads) return;
    const stays = fresh.me?.id === session.state.me?.id && fresh.channelId === session.state.channelId;
    session = new Session(fresh);
    show(fresh, stays ? outliving(book.entries(), fresh.entries) : () => false);
    if (!stays) follow.toNewest();
  }

  function show(fresh: PageState, keep: (entry: PageEntry) => boolean): void {
    const hadEarlier = book.entries()[0];
    follow.during(() => {
      book.clear(keep);
      book.put(stillWanted(fresh.entries));
    });
    if (hadEarlier === undefined || book.entries()[0]?.message.id !== hadEarlier.message.id)
      earlier.set(fresh.more);
    drawAround();
    live.listen(session.me, session.state.channelId);
  }

  function put(entry: PageEntry, isNew: boolean): void {
    if (entry.message.channel_id !== session.state.channelId) return;
    // A change to something further back than the sheet reaches would leave a gap behind it.
    if (!isNew && book.find(entry.message.id) === undefined) return;
    follow.during(() => book.put([entry]));
    if (entry.pinned || !isNew) drawAround();
    if (entry.working || entry.message.author.id === session.state.me?.id) return;
    notices.set('typing', undefined);
    announce(
      `${session.nameOf(entry.message.author)}: ${summaryOf(entry)}${entry.private ? ' – only you see this' : ''}`,
    );
    const item = book.find(entry.message.id);
    if (isNew && item !== undefined) follow.came(item);
  }

  function takeForm(form: OpenForm): void {
    if (formsSeen.has(form.interactionId)) return;
    formsSeen.add(form.interactionId);
    openForm(form, { lists, submit: hands.submit });
  }

  function takeOutcome(outcome: Outcome): void {
    if (outcome.kind === 'form') takeForm(outcome.form);
    if (outcome.kind === 'answered') follow.expect(entryId(outcome.message.id));
    const entry = entryOf(outcome);
    if (entry !== undefined && !live.isOpen()) put(entry, outcome.kind !== 'changed');
  }

  function takeFrame(frame: LiveFrame): void {
    session.take(changeIn(frame));
    switch (frame.kind) {
      case 'hello': {
        notices.set('away', undefined);
        const missed = wasAway || frame.newestMessageId !== newestShared(book.entries());
        wasAway = false;
        drawAround();
        if (missed) void load(session.me, session.state.channelId);
        break;
      }
      case 'added':
        put(frame.entry, true);
        break;
      case 'changed':
        put(frame.entry, false);
        break;
      case 'removed':
        follow.during(() => book.remove(frame.messageId));
        drawAround();
        break;
      case 'form':
        takeForm(frame.form);
        break;
      case 'people':
        follow.during(() => book.redraw());
        drawAround();
        break;
      case 'bot':
      case 'notice':
      case 'channels':
        drawAround();
        break;
      case 'typing':
        clearTimeout(typing);
        notices.set('typing', `${frame.by} is writing …`);
        typing = setTimeout(() => notices.set('typing', undefined), TYPING_MS);
        break;
    }
  }

  function whoAmI(): void {
    askWhoIAm({ people: session.state.people, initials, join: beSomebody, onClose: settleFocus });
  }

  /** On a bench the line is ready to be typed on; on a phone that would open the keyboard over the sheet. */
  function settleFocus(): void {
    if (matchMedia('(pointer: fine)').matches) composer.focus();
    else scroller.focus();
  }

  async function beSomebody(name: string): Promise<void> {
    const { person } = await server.join({ name });
    remember('me', person.name);
    await load(person.name, session.state.channelId);
  }

  show(first, () => false);
  follow.toNewest();
  settleFocus();
  setInterval(() => refreshTimes(list), MINUTE_MS);
  const name = remembered('me');
  if (session.state.me === undefined && name !== '') void orNotice(beSomebody(name));
  else if (session.state.me === undefined) whoAmI();
}
