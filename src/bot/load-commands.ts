import { readdir } from 'node:fs/promises';
import { z } from 'zod';
import type { Command } from './command.ts';

const Loaded = z.object({
  default: z.object({
    description: z.string().min(1).max(100),
    does: z.record(z.string(), z.unknown()),
    actions: z.record(z.string(), z.unknown()),
  }),
});

/**
 * Loads every command of a folder: a command exists by being there, named after its file.
 *
 * @throws Error naming the file that does not export a command, so that none can go missing in silence.
 */
export async function loadCommands(folder: URL): Promise<ReadonlyMap<string, Command>> {
  const files = (await readdir(folder)).filter((file) => file.endsWith('.ts')).sort();
  const commands = new Map<string, Command>();
  for (const file of files) {
    const loaded: unknown = await import(new URL(file, folder).href);
    const checked = Loaded.safeParse(loaded);
    if (!checked.success) {
      throw new Error(`commands/${file} does not export a command made by defineCommand`);
    }
    // zod has seen the shape; what the functions inside take and give is defineCommand's promise
    commands.set(file.slice(0, -'.ts'.length), (loaded as { default: Command }).default);
  }
  if (commands.size === 0) throw new Error(`no commands in ${folder.href}`);
  return commands;
}
