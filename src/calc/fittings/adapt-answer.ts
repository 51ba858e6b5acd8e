import type { Answer, Fact, Item } from '../../core/reply.ts';
import { type Adapter, adapterName } from './adapters.ts';
import { endCaution } from './cautions.ts';
import type { Chain } from './chain.ts';
import type { End } from './end.ts';
import { endData, endLabel } from './end-data.ts';
import { mate } from './mate.ts';
import { matingData } from './mate-answer.ts';
import { NEW_EACH_TIME, needOf, needsOf, orderNeed, sayNeed } from './needs.ts';

/** The chain between two ends, in words and as data; each adapter can be ordered from where it stands. */
export function adaptAnswer(from: End, to: End, chain: Chain | undefined, unused: readonly string[]): Answer {
  const caution = endCaution([from, to]);
  const base = {
    kind: 'answer',
    subject: 'Adapter',
    certainty: `From ${endLabel(from)} to ${endLabel(to)}.`,
    ...(caution === '' ? {} : { caution }),
    audience: 'crew',
  } as const;
  const said = unused.length === 0 ? [] : [`Not used: ${unused.join(' ')}`];
  if (chain === undefined) {
    return {
      ...base,
      result: 'No chain of usual adapters seals between them',
      tone: 'late',
      smallPrint: [
        'Have a hose made up with the right ends, or a port cut to one of the usual forms by a machine shop.',
        ...said,
      ],
      data: { from: endData(from), to: endData(to), found: false, adapters: [], joints: [], orderLines: [] },
    };
  }
  const { links, joints } = chain;
  return {
    ...base,
    result: resultLine(links),
    tone: 'done',
    items: links.map((link) => linkItem(link, joints)),
    facts: joints.map(([a, b], index): Fact => [`Joint ${index + 1}`, jointLine(a, b)]),
    smallPrint: [
      NEW_EACH_TIME,
      ...(links.length > 0
        ? ['Which adapters are made is common practice, no source: ask the supplier before counting on one.']
        : []),
      ...(links.length > 1
        ? ['Every joint more is one more to leak: one made-up hose end may do it all.']
        : []),
      ...said,
    ],
    data: {
      from: endData(from),
      to: endData(to),
      found: true,
      adapters: links.map((link) => ({
        adapter: link.id,
        shape: link.shape,
        name: adapterName(link),
        a: endData(link.a),
        b: endData(link.b),
      })),
      joints: joints.map(([a, b]) => matingData({ a, b, mating: mate(a, b) })),
      orderLines: links.map((link) => orderLine(link)),
    },
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function resultLine(links: readonly Adapter[]): string {
  const [first, ...more] = links;
  if (first === undefined) return 'They go together as they are, and seal';
  return more.length === 0 ? capital(adapterName(first)) : `${links.length} adapters in a row`;
}

function linkItem(link: Adapter, joints: Chain['joints']): Item {
  const near = joints.find(([, b]) => b === link.a);
  const far = joints.find(([a]) => a === link.b);
  const needs = [near, far].flatMap((joint) => (joint === undefined ? [] : needsOf(...joint))).map(sayNeed);
  return {
    text: adapterName(link),
    ...(needs.length === 0 ? {} : { note: `needs ${[...new Set(needs)].join('; ')}` }),
    buttons: [
      {
        label: 'Order it',
        weight: 'main',
        does: { command: 'fitting', action: 'order', args: { adapter: link.id } },
      },
    ],
  };
}

function jointLine(a: End, b: End): string {
  const needs = needsOf(a, b).map(sayNeed);
  return [`${a.id} on ${b.id}: ${mate(a, b).why[1] ?? ''}`, ...needs].join('; ');
}

/** What to write on the order: the adapter and the seals of its own two ends. */
export function orderLine(link: Adapter): string {
  const seals = [link.a, link.b].flatMap((end) => ownSeal(end) ?? []);
  return `${adapterName(link)}${seals.length === 0 ? '' : `, with ${seals.join(' and ')}`}`;
}

/** The male end brings the seal of its joint. */
export function ownSeal(end: End): string | undefined {
  const need = end.gender === 'male' ? needOf(end) : undefined;
  return need && orderNeed(need);
}
