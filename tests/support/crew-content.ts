import { type CrewBot, TEAM } from './bot.ts';

/** Everything about parts and suppliers that a team's record holds, as plain data, to be compared before and after. */
export function contentsOf({ teams }: CrewBot): unknown {
  const { record } = teams.at(TEAM);
  const builds = record.builds.all();
  return {
    builds,
    suppliers: record.suppliers.all(),
    rates: record.rates.all(),
    ofBuilds: builds.map(({ id }) => ({
      parts: record.parts.ofBuild(id),
      moves: record.parts.movesOfBuild(id),
      orders: record.orders.allOfBuild(id),
      purchases: record.purchases.ofBuild(id),
    })),
  };
}
