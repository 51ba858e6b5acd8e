import type { Button } from '../../core/reply.ts';
import type { Finding, Lead } from './finding.ts';

/** A phone's width of button. */
const LONGEST = 34;
const MOST = 3;

/** What can be pressed under a thing that is open. */
export function leadButtons({ leads, conditionId }: Finding): readonly Button[] {
  return leads.slice(0, MOST).flatMap((lead) => buttonOf(lead, conditionId) ?? []);
}

function buttonOf(lead: Lead, conditionId: number | null): Button | undefined {
  const condition = conditionId ?? 0;
  switch (lead.to) {
    case 'job':
      return press('Done', 'job', 'done', { job: lead.job.id });
    case 'undo':
      return press('Undone', 'temporary', 'undone', { measure: lead.measure.id });
    case 'put':
      return lead.again === null
        ? press('Put in place', 'temporary', 'required', { condition })
        : press('Put in place again', 'temporary', 'again', { measure: lead.again.id });
    case 'answers':
      return press(`Yes: ${lead.measure.what}`, 'temporary', 'answers', {
        measure: lead.measure.id,
        condition,
      });
    case 'part': {
      if (lead.standing === null) return press('Order it', 'stage', 'order', { condition });
      const order = lead.standing.coming[0] ?? lead.standing.out[0];
      return order === undefined
        ? press('Order it', 'part', 'order', { part: `#${lead.standing.part.id}` })
        : press('Arrived', 'order', 'arrived', { order: order.orderId });
    }
    case 'pour':
      return press('Poured in', 'fluid', 'pour', { case: lead.fluidCase.id });
    case 'case':
      return press('What it takes', 'fluid', 'case', { name: lead.name.slice(0, 40) });
    case 'reading':
      return press('Log the reading', 'stage', 'read', { condition });
    case 'said':
      return press('Yes, I say so', 'stage', 'said', { condition });
    case 'stage':
      return press(`${lead.stage.name}?`, 'ready', 'show', { stage: lead.stage.key });
    case 'edit':
      return press('Its conditions', 'stage', 'conditions', { condition });
  }
}

function press(label: string, command: string, action: string, args: Button['does']['args']): Button {
  const short = label.length > LONGEST ? `${label.slice(0, LONGEST - 1)}…` : label;
  return { label: short, does: { command, action, args } };
}
