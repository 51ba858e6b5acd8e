import { readdirSync } from 'node:fs';
import type { SumSheet } from '../../src/core/calculation.ts';

const CALC = new URL('../../src/calc/', import.meta.url);

/** Every sheet that a sum carries, by the topic it stands in; found by being there, so that none can be forgotten. */
export async function sheetsByTopic(): Promise<ReadonlyMap<string, readonly SumSheet[]>> {
  const files = readdirSync(CALC, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('.ts') && file.includes('/'))
    .sort();
  const topics = new Map<string, SumSheet[]>();
  for (const file of files) {
    const module: unknown = await import(new URL(file, CALC).href);
    const topic = file.slice(0, file.indexOf('/'));
    for (const [name, value] of Object.entries(module ?? {})) {
      // a name ending in Sheet is what the type checker has seen declared as one
      if (name.endsWith('Sheet')) topics.set(topic, [...(topics.get(topic) ?? []), value as SumSheet]);
    }
  }
  for (const sheets of topics.values()) sheets.sort((a, b) => (a.title < b.title ? -1 : 1));
  return topics;
}

/** docs/sums.md: each sum with its formula, symbols, range and sources, from the code's own sheets. */
export async function sumsPage(): Promise<string> {
  const parts = [
    '# The sums',
    '',
    'Made from the code by `npm run sums`; a test fails when it is not up to date. Sources are the keys of',
    '[sources.md](sources.md).',
  ];
  for (const [topic, sheets] of await sheetsByTopic()) {
    parts.push('', `## ${topic[0]?.toUpperCase() ?? ''}${topic.slice(1)}`);
    for (const sheet of sheets) parts.push('', ...section(sheet));
  }
  return `${parts.join('\n')}\n`;
}

function section({ title, formula, symbols, range, sources }: SumSheet): string[] {
  const meanings = Object.entries(symbols).map(([symbol, meaning]) => `- \`${symbol}\` ${meaning}`);
  return [
    `### ${title}`,
    '',
    `\`${formula}\``,
    '',
    ...(meanings.length === 0 ? [] : [...meanings, '']),
    `Holds: ${range}.`.replace('..', '.'),
    '',
    `Sources: ${sources.join(', ')}`,
  ];
}
