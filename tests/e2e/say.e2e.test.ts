import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { runProgram, startProgram } from '../support/program.ts';
import { scratchFolder } from '../support/scratch-folder.ts';
import { integrityOf } from '../support/table-state.ts';

const Spoken = z.strictObject({
  input: z.string(),
  ok: z.boolean(),
  text: z.string(),
  data: z.record(z.string(), z.json()).nullable(),
  error: z.string().nullable(),
});

const GASKET = '/order place what:"head gasket" supplier:"Norvale Gaskets" due:"9 Dec"';

/** Says these lines with `--json`; the answers in order, and the exit code. */
async function say(args: readonly string[], lines: readonly string[], folder = scratchFolder()) {
  const { code, stdout, stderr } = await runProgram('say', { args: ['--json', ...args], folder }, lines);
  const spoken = stdout
    .split('\n')
    .filter(Boolean)
    .map((line) => Spoken.parse(JSON.parse(line)));
  return { code, spoken, stderr };
}

describe('npm run say', () => {
  it('answers a line given as an argument in plain text, and leaves nothing behind', async () => {
    const folder = scratchFolder();
    const ended = await runProgram('say', { args: ['/thread size:"21.9 x 1.5"'], folder });
    expect(ended).toMatchObject({ code: 0, stderr: '' });
    expect(ended.stdout).toContain('M22 × 1.5');
    expect(ended.stdout).not.toMatch(/\*\*|^#|-# |\\|\{/m);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('answers each line on standard input with one JSON object, in order, in one record', async () => {
    const { code, spoken, stderr } = await say(
      ['--at', '2026-12-07T09:00'],
      [GASKET, '', '/order list', '/order arrived order:1', '/undo'],
    );
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(spoken.map(({ input }) => input)).toEqual([
      GASKET,
      '/order list',
      '/order arrived order:1',
      '/undo',
    ]);
    expect(spoken.every(({ ok, error }) => ok && error === null)).toBe(true);
    expect(spoken[0]?.data).toMatchObject({
      order: 1,
      dueOn: '2026-12-09',
      orderedOn: '2026-12-07',
      state: 'open',
    });
    expect(spoken[1]?.data).toMatchObject({ open: 1, late: 0 });
    expect(spoken[2]?.data).toMatchObject({ state: 'arrived', outstanding: 0 });
    expect(spoken[3]?.text).toContain('Undone: #1 head gasket arrived');
  });

  it('says what was refused, goes on with the next line, and ends with 1', async () => {
    const { code, spoken } = await say(
      ['--at', '2026-12-07T09:00'],
      [
        '/order arrived order:7',
        '/order place what:"belt"',
        '/nonsense',
        '@nonsense',
        '@constructor',
        '@press Arrived',
        '@fill due="9 Dec"',
        '@at yesterday',
        GASKET,
      ],
    );
    expect(code).toBe(1);
    expect(spoken).toHaveLength(9);
    expect(spoken.map(({ ok }) => ok)).toEqual([...spoken.slice(0, -1).map(() => false), true]);
    for (const { error } of spoken.slice(0, -1)) expect(error).toMatch(/\w.*[.!?]$/s);
  });

  it('lets the reminders look, presses, fills forms and changes hands', async () => {
    const { code, spoken } = await say(
      ['--at', '2026-12-07T09:00', '--as', 'Bram'],
      [
        GASKET,
        '@tick',
        '@at 2026-12-14T08:30',
        '@tick',
        '@as Cleo',
        '@press New date',
        '@fill due="18 Dec"',
        '@at 2026-12-21T08:30',
        '@tick',
        '@press Arrived #1',
        '@tick',
      ],
    );
    expect(code, JSON.stringify(spoken)).toBe(0);
    expect(spoken[0]?.data).toMatchObject({ chaser: 'Bram' });
    expect(spoken[1]).toMatchObject({ text: 'Nothing was due.', data: { posted: [] } });
    expect(spoken[3]?.text).toContain('late by 3 working days, promised Wed 9 Dec. Bram’s chase');
    expect(spoken[3]?.data).toMatchObject({ posted: [{ day: '2026-12-14', late: [1] }] });
    expect(spoken[5]?.text).toContain('Form: New date for #1');
    expect(spoken[6]?.data).toMatchObject({ dueOn: '2026-12-18' });
    expect(spoken[8]?.data).toMatchObject({ posted: [{ day: '2026-12-21' }] });
    expect(spoken[9]?.text).toContain('Logged by Cleo');
    expect(spoken[10]).toMatchObject({ text: 'Nothing was due.' });
  });

  it('keeps the record in the file named by --db, its messages beside it', async () => {
    const folder = scratchFolder();
    const db = join(folder, 'crew.sqlite');
    await say(['--db', db, '--at', '2026-12-07T09:00'], [GASKET], folder);
    const { spoken } = await say(['--db', db, '--at', '2026-12-14T08:30'], ['/order list', '@tick'], folder);
    expect(spoken[0]?.data).toMatchObject({ open: 1, late: 1 });
    expect(spoken[1]?.data).toMatchObject({ posted: [{ late: [1] }] });
    const again = await say(['--db', db, '--at', '2026-12-14T12:00'], ['@tick'], folder);
    expect(again.spoken[0]).toMatchObject({ text: 'Nothing was due.' });
    expect(integrityOf(db)).toBe('ok');
  });

  it('refuses a second one on the same file, saying who holds it', async () => {
    const folder = scratchFolder();
    const db = join(folder, 'crew.sqlite');
    const first = startProgram('say', { args: ['--db', db], folder });
    first.type('/team');
    await first.nextLine();
    const second = await runProgram('say', { args: ['--db', db, '/team'], folder });
    expect(second.code).toBe(1);
    expect(second.stdout).toBe('');
    expect(second.stderr).toMatch(/^The records are in use by Chargehand \(process \d+ on .*\n$/);
    first.endInput();
    expect((await first.ended()).code).toBe(0);
    expect((await runProgram('say', { args: ['--db', db, '/team'], folder })).code).toBe(0);
  });

  it('says in words what is wrong with how it was called', async () => {
    const folder = scratchFolder();
    const calls = [
      {
        args: ['--at', 'tomorrow', '/team'],
        problem: '"tomorrow" is no time. Type it like 2026-12-21T08:31.',
      },
      { args: ['--loud', '/team'], problem: 'npm run say -- [--json]' },
      { args: ['@at 2026-12-21T08:31'], problem: '@at needs a clock that can be set: start with --at.' },
    ];
    const ends = await Promise.all(calls.map(({ args }) => runProgram('say', { args, folder })));
    for (const [at, { code, stdout, stderr }] of ends.entries()) {
      expect(code).toBe(1);
      expect(stderr + stdout).toContain(calls[at]?.problem);
      expect(stderr).not.toContain('    at ');
    }
  });

  it('says in words that the file named is no record, and leaves it as it is', async () => {
    const folder = scratchFolder();
    const db = join(folder, 'notes.txt');
    writeFileSync(db, 'torque the head in three steps\n'.repeat(40));
    const ended = await runProgram('say', { args: ['--db', db, '/team'], folder });
    expect(ended.code).toBe(1);
    expect(ended.stderr).toMatch(/^[A-Z][^{}]*\.\n$/);
    expect(ended.stderr).toContain('Nothing was written to it.');
    expect(readFileSync(db, 'utf8')).toContain('torque the head in three steps');
  });

  it('attaches a file to the next line, chooses from a menu, and keeps the files of answers', async () => {
    const folder = scratchFolder();
    const list = join(folder, 'list.csv');
    writeFileSync(list, 'what,supplier,due\nbelt,Tarn,2026-12-16\n');
    const out = join(folder, 'out');
    const { code, spoken } = await say(
      ['--at', '2026-12-07T09:00', '--files', out],
      [
        `@attach ${list}`,
        '/import orders',
        '@press Write 1 down',
        '/order list',
        '@choose #1',
        '/export csv',
        '/export papers',
      ],
      folder,
    );
    expect(code).toBe(0);
    expect(spoken[4]?.data).toMatchObject({ order: 1, dueOn: '2026-12-16' });
    expect(readdirSync(out).filter((name) => /orders\.csv$|\.pdf$|\.html$/.test(name))).toHaveLength(3);
    expect(readFileSync(join(out, 'hillclimb-seven-orders.csv'), 'utf8')).toContain('1,belt,Tarn');
  });

  it('says what could not be attached, chosen or made a folder', async () => {
    const { code, spoken } = await say([], ['@attach /nowhere/at/all.csv', '@choose anything']);
    expect(code).toBe(1);
    expect(spoken.map(({ error }) => error)).toEqual([
      '"/nowhere/at/all.csv" cannot be read (ENOENT). Nothing was attached.',
      'There is no "anything" to choose on the last message.',
    ]);
  });
});
