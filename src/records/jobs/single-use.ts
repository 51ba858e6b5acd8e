import { type Joint, joints } from '../../tables/jobs.ts';
import type { PartStanding } from '../parts/part.ts';
import { plain } from '../suppliers/supplier.ts';
import type { JobNeed } from './job.ts';

/** Something that is renewed whenever a joint is opened, and what there is of it. */
export interface Renewal {
  readonly part: string;
  readonly quantity: number;
  readonly kind: Joint['renew'][number]['kind'];
  /** What seals it besides. */
  readonly sealant: string | undefined;
  /** The part as the record knows it; undefined when nobody has named one yet. */
  readonly standing: PartStanding | undefined;
}

/** What the trade uses once whatever joint it is in; common practice, no source. */
const ONCE =
  /\b(?:gasket|crush washer|copper washer|sealing washer|o-?ring|stretch bolt|split pin)(?: set)?s?$/;

/** Whether a part of this name is renewed each time its joint is opened. */
export function isUsedOnce(name: string): boolean {
  const wanted = plain(name);
  return ONCE.test(wanted) || joints.some(({ renew }) => renew.some(({ part }) => plain(part) === wanted));
}

/** The joints a job's words name; of one inside another ("sump plug" in "sump") the more exact alone. */
export function jointsNamed(words: string): readonly Joint[] {
  const said = ` ${plain(words).replaceAll('-', ' ')} `;
  const hits = joints.flatMap((joint) => {
    const hit = joint.words
      .map((word) => plain(word).replaceAll('-', ' '))
      .filter((word) => new RegExp(`\\b${word.replace(/[.*+?^$()|[\]\\{}]/g, '\\$&')}s?\\b`).test(said))
      .toSorted((a, b) => b.length - a.length)[0];
    return hit === undefined ? [] : [{ joint, hit }];
  });
  return hits
    .filter(({ hit }) => !hits.some((other) => other.hit !== hit && other.hit.includes(hit)))
    .map(({ joint }) => joint);
}

/** What is renewed when this job opens its joints, less what it needs already. */
export function renewalsFor(
  words: string,
  needs: readonly JobNeed[],
  parts: ReadonlyMap<number, PartStanding>,
): readonly Renewal[] {
  const all = [...parts.values()];
  const seen = new Set<string>();
  return jointsNamed(words).flatMap(({ renew, sealant }) =>
    renew.flatMap(({ part, quantity, kind }) => {
      const standing = partCalled(all, part);
      const needed = needs.some((need) => need.kind === 'part' && need.partId === standing?.part.id);
      if (seen.has(part) || needed) return [];
      seen.add(part);
      return [{ part, quantity, kind, sealant, standing }];
    }),
  );
}

/** The part of this name, or the only one whose name holds it. */
function partCalled(all: readonly PartStanding[], name: string): PartStanding | undefined {
  const names = ({ part }: PartStanding): readonly string[] => [part.name, ...part.alsoCalled].map(plain);
  const same = all.find((one) => names(one).includes(plain(name)));
  if (same !== undefined) return same;
  const [only, ...more] = all.filter((one) => names(one).some((known) => known.includes(plain(name))));
  return more.length === 0 ? only : undefined;
}

/** "4 × copper washer", under the name the crew has for it. */
export function sayCount({ part, quantity, standing }: Renewal): string {
  const name = standing?.part.name ?? part;
  return quantity === 1 ? name : `${quantity} × ${name}`;
}

/** "None in hand, 1 on order". */
export function sayStock({ standing }: Renewal): string {
  const inHand = standing?.inHand ?? 0;
  const coming = (standing?.coming ?? []).reduce((sum, one) => sum + one.quantity, 0);
  return `${inHand === 0 ? 'None' : inHand} in hand, ${coming === 0 ? 'none' : coming} on order`;
}
