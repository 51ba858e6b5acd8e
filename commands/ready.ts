import { z } from 'zod';
import { action, defineCommand } from '../src/bot/command.ts';
import { turned, turnedPage } from '../src/bot/turned.ts';
import { line } from '../src/bot/typed.ts';
import { PAGE_ARG } from '../src/core/pages.ts';
import { suggestStages } from '../src/records/stages/find-stage.ts';
import { stagesHere } from '../src/tasks/stages/stage-names.ts';
import { askReady } from '../src/tasks/stages/stages.ts';

export default defineCommand({
  description: 'Are we ready? What is missing before a stage, or what to mind when nothing is',
  example: '/ready stage:"first start"',
  input: z.object({
    stage: line(60).optional().describe('The stage: first start, mapping; the next one if left out'),
  }),
  suggest: { stage: (typed, hand) => suggestStages(stagesHere(hand), typed) },
  run: (input, hand) => askReady(hand, input.stage, 1),
  actions: {
    show: action({
      input: z.object({ stage: line(60), [PAGE_ARG]: turnedPage }),
      run: (input, hand) => turned(hand, input[PAGE_ARG], (page) => askReady(hand, input.stage, page)),
    }),
  },
});
