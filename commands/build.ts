import { z } from 'zod';
import { defineCommand } from '../src/bot/command.ts';
import { buildHere, openBuildHere } from '../src/bot/crew.ts';
import { undoButton } from '../src/bot/undo-button.ts';
import type { Answer, Button } from '../src/core/reply.ts';
import { standing } from '../src/records/orders/order.ts';

export default defineCommand({
  description: 'The build this channel is about; give it a name',
  example: '/build name:"Hill-climb coupe"',
  input: z.object({
    name: z.string().trim().min(1).max(80).optional().describe('What the crew calls the car'),
  }),
  run({ name }, hand): Answer {
    const build = buildHere(hand);
    if (name === undefined || name === build?.name) return buildAnswer(build?.name, openOrders(), []);
    const changed = hand.change((record) => {
      const opened = openBuildHere(record, hand);
      record.builds.rename(opened.id, name);
      return { value: name, said: `the build here is called ${name}` };
    });
    return buildAnswer(changed.value, openOrders(), [undoButton(changed)]);

    function openOrders(): number {
      const here = buildHere(hand);
      const orders = here ? hand.record.orders.ofBuild(here.id) : [];
      return orders.filter((order) => standing(order).state === 'open').length;
    }
  },
});

function buildAnswer(name: string | undefined, open: number, buttons: readonly Button[]): Answer {
  return {
    kind: 'answer',
    subject: 'Build',
    result: name ?? 'Nothing is recorded in this channel yet',
    ...(name === undefined ? { certainty: 'The first order placed here opens its build.' } : {}),
    facts: [['Orders open', String(open)]],
    buttons,
    audience: 'crew',
    data: { name: name ?? null, openOrders: open },
  };
}
