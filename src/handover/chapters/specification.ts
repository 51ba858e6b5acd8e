import type { WholeBuild } from '../../records/builds/whole-build.ts';
import type { Section } from '../paper.ts';

/** What the crew has written down of the car and its engine. */
export function specification({ record, build }: WholeBuild): Section {
  const facts = record.builds.facts(build.id).map(({ name, value }) => [name, value] as const);
  return {
    heading: 'Specification',
    blocks:
      facts.length === 0
        ? [{ kind: 'words', text: 'Nothing is written down. /build spec writes it.' }]
        : [{ kind: 'facts', facts }],
  };
}
