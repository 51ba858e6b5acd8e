import type { Answer, Drawing, Picture, Reply } from '../core/reply.ts';
import { renderPng } from '../pictures/render.ts';

/** What is said in the place of a picture that could not be painted. */
const MISSING = 'The picture could not be painted; the words hold all that it shows.';

/**
 * Paints what an answer has drawn. A picture only repeats what the words say, so one that cannot be painted never
 * keeps the answer back: it is left out, which is said, and the fault goes to `report`.
 */
export async function painted(reply: Reply, report: (fault: unknown) => void): Promise<Reply> {
  if (reply.kind !== 'answer' || reply.drawings === undefined) return reply;
  const { drawings, ...answer } = reply;
  const pictures: Picture[] = [];
  let missing = false;
  for (const drawing of drawings) {
    try {
      pictures.push(await paint(drawing));
    } catch (fault) {
      missing = true;
      report(fault);
    }
  }
  return withPictures(answer, pictures, missing);
}

async function paint({ name, alt, ...drawing }: Drawing): Promise<Picture> {
  return { name, alt, png: await renderPng(drawing) };
}

function withPictures(answer: Answer, pictures: readonly Picture[], missing: boolean): Answer {
  return {
    ...answer,
    ...(pictures.length === 0 ? {} : { pictures: [...(answer.pictures ?? []), ...pictures] }),
    ...(missing ? { smallPrint: [...(answer.smallPrint ?? []), MISSING] } : {}),
  };
}
