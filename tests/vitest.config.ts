import { defineConfig } from 'vitest/config';

const root = new URL('..', import.meta.url).pathname;

/** One project per kind of proof; the folder says what a test proves, the file's ending which project runs it. */
const kind = (name: string, ending: string, testTimeout = 5_000) => ({
  extends: true as const,
  test: { name, include: [`tests/${name}/**/*${ending}`], testTimeout, hookTimeout: 60_000 },
});

export default defineConfig({
  root,
  test: {
    env: { TZ: 'UTC' },
    projects: [
      kind('unit', '.test.ts'),
      kind('reference', '.reference.test.ts', 20_000),
      kind('property', '.property.test.ts', 60_000),
      kind('faults', '.faults.test.ts', 180_000),
      kind('e2e', '.e2e.test.ts', 60_000),
      kind('page', '.page.test.ts', 120_000),
    ],
    coverage: {
      provider: 'v8',
      include: ['src/**', 'commands/**'],
      exclude: ['src/channel/page/**'],
      reportsDirectory: 'coverage',
    },
  },
});
