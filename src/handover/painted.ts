import { renderPng } from '../pictures/render.ts';
import type { PaintedPaper, Paper } from './paper.ts';

/** Paints a paper's figures. */
export async function painted(paper: Paper): Promise<PaintedPaper> {
  const sections = await Promise.all(
    paper.sections.map(async ({ heading, blocks }) => ({
      heading,
      blocks: await Promise.all(
        blocks.map(async (block) => {
          if (block.kind !== 'figure') return block;
          const { alt, width, height } = block.drawing;
          return { kind: 'figure' as const, png: await renderPng(block.drawing), alt, width, height };
        }),
      ),
    })),
  );
  return { ...paper, sections };
}
