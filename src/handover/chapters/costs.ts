import type { WholeBuild } from '../../records/builds/whole-build.ts';
import { costsOf, type Sums, sumsOf } from '../../records/costs/costs.ts';
import { sayMoney } from '../../records/orders/say-order.ts';
import type { Section } from '../paper.ts';

/** What was spent, is ordered and is still to come, each currency by itself. */
export function costs({ record, build, standings }: WholeBuild): Section {
  const all = costsOf({
    orders: record.orders.allOfBuild(build.id),
    purchases: record.purchases.ofBuild(build.id),
    standings,
  });
  const bySupplier = [...Map.groupBy(all, ({ supplier }) => supplier ?? 'not ordered yet')];
  const rows = bySupplier
    .toSorted(([a], [b]) => a.localeCompare(b))
    .flatMap(([supplier, own]) => sumsOf(own).map((sums) => [supplier, ...amounts(sums)]));
  const together = sumsOf(all).map((sums) => [`Together, ${sums.currency}`, ...amounts(sums)]);
  return {
    heading: 'Costs',
    blocks:
      rows.length === 0
        ? [{ kind: 'words', text: 'No price is written down.' }]
        : [
            {
              kind: 'table',
              head: ['Supplier', 'Spent', 'On order', 'To come', 'Given back'],
              shares: [4, 2, 2, 2, 2],
              rows: [...rows, ...together],
            },
          ],
  };
}

function amounts({ currency, ...sums }: Sums): readonly string[] {
  const say = (minor: number): string => (minor === 0 ? '' : sayMoney({ minor, currency }));
  return [say(sums.spent), say(sums.committed), say(sums['to come']), say(sums.refunded)];
}
