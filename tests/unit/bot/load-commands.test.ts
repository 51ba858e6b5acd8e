import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { loadCommands } from '../../../src/bot/load-commands.ts';
import { scratchFolder } from '../../support/scratch-folder.ts';

const COMMAND = `export default {
  description: 'A test',
  does: { description: 'A test', input: {}, suggest: {}, run() {} },
  actions: {},
};`;

function folderWith(files: Readonly<Record<string, string>>): URL {
  const folder = scratchFolder();
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return pathToFileURL(`${folder}/`);
}

describe('the folder of commands', () => {
  it('holds one command for each file, under its name', async () => {
    const commands = await loadCommands(
      folderWith({ 'bolt.ts': COMMAND, 'arp.ts': COMMAND, 'notes.md': 'x' }),
    );
    expect([...commands.keys()]).toEqual(['arp', 'bolt']);
  });

  it.each([
    ['exports nothing', 'export {};'],
    ['exports something else', 'export default { name: "bolt" };'],
    ['has no description', COMMAND.replace("'A test'", "''")],
    ['describes itself at too great a length', COMMAND.replace("'A test'", `'${'x'.repeat(101)}'`)],
    ['exports a function', 'export default () => {};'],
  ])('stops the start at a file that %s, naming it', async (_name, text) => {
    const folder = folderWith({ 'bolt.ts': text });
    await expect(loadCommands(folder)).rejects.toThrow('commands/bolt.ts does not export a command');
  });

  it('stops the start at a file that fails while it loads', async () => {
    await expect(loadCommands(folderWith({ 'bolt.ts': 'throw new Error("broken file");' }))).rejects.toThrow(
      'broken file',
    );
  });

  it('stops the start when there is none', async () => {
    await expect(loadCommands(folderWith({}))).rejects.toThrow('no commands in');
  });
});
