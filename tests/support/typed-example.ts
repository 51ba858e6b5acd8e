import type { Catalogue } from '../../src/bot/catalogue.ts';
import { isRunnable } from '../../src/bot/command.ts';
import type { JsonObject } from '../../src/core/json.ts';

/** An example as /help shows it, taken apart the way the platform would hand it over. */
export interface TypedExample {
  readonly line: string;
  readonly options: JsonObject;
}

/** @throws when the line is none a person could type: an unknown command or option, or words that belong to none. */
export function typedExample(catalogue: Catalogue, example: string): TypedExample {
  const [, name = '', rest = ''] = /^\/([\w-]+)\s*(.*)$/.exec(example) ?? [];
  const entry = catalogue.find(name);
  if (!entry) throw new Error(`no command in "${example}"`);
  const sub = entry.subcommands.find((one) => rest.split(' ')[0] === one.name);
  if (!sub && entry.subcommands.length > 0) throw new Error(`no subcommand in "${example}"`);
  const specs = sub?.options ?? entry.options;
  const given = sub ? rest.slice(sub.name.length) : rest;
  const pair = /([\w-]+):(?:"([^"]*)"|(\S+))/g;
  if (given.replace(pair, '').trim() !== '') throw new Error(`stray words in "${example}"`);
  const options = Object.fromEntries(
    [...given.matchAll(pair)].map(([, option = '', quoted, bare]) => {
      const spec = specs.find((one) => one.name === option);
      if (!spec) throw new Error(`no option ${option} in "${example}"`);
      const typed = quoted ?? bare ?? '';
      return [option, spec.kind === 'integer' || spec.kind === 'number' ? Number(typed) : typed];
    }),
  );
  return { line: sub ? `${name} ${sub.name}` : name, options };
}

/** Every example there is, those of one command in the order of its subcommands. */
export function examplesOf({ entries }: Catalogue): readonly string[] {
  return entries.flatMap(({ command: { does } }) => {
    const runnables = isRunnable(does) ? [does] : Object.values(does);
    return runnables.flatMap(({ example }) => example ?? []);
  });
}
