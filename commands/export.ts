import { z } from 'zod';
import { defineCommand, subcommand } from '../src/bot/command.ts';
import { buildHere, crewOf } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import type { Answer, AnswerFile } from '../src/core/reply.ts';
import { UserError } from '../src/core/user-error.ts';
import { writeCsv } from '../src/exchange/csv.ts';
import { countsIn, packRecordFile, writeRecordFile } from '../src/exchange/record-file.ts';
import { sheetsOf } from '../src/exchange/sheets/all-sheets.ts';
import { buildPaper } from '../src/handover/build-paper.ts';
import { htmlOf } from '../src/handover/html.ts';
import { painted } from '../src/handover/painted.ts';
import { pdfOf } from '../src/handover/pdf.ts';
import { type WholeBuild, wholeBuild } from '../src/records/builds/whole-build.ts';

const nothing = z.object({});

export default defineCommand({
  description: 'Take the record away: to hand over, to calculate with, to keep',
  subcommands: {
    papers: subcommand({
      description: 'The record of this build as one PDF and one HTML file, to hand over',
      example: '/export papers',
      input: nothing,
      run: (_input, hand) => papers(hand),
    }),
    csv: subcommand({
      description: 'This build as tables for a spreadsheet, one file for each kind of thing',
      example: '/export csv',
      input: nothing,
      run: (_input, hand) => tables(hand),
    }),
    json: subcommand({
      description: 'The crew’s whole record as one file that /import record brings back',
      example: '/export json',
      input: nothing,
      run: (_input, hand) => wholeRecord(hand),
    }),
  },
});

async function papers(hand: Hand): Promise<Answer> {
  const source = sourceHere(hand);
  const paper = await painted(buildPaper(source));
  const name = fileName(source.build.name);
  const files = [
    { name: `${name}.pdf`, bytes: await pdfOf(paper) },
    { name: `${name}.html`, bytes: encoded(htmlOf(paper)) },
  ];
  return exported(`The record of ${source.build.name}, to hand over`, files, [
    'It holds names and prices as they were written down: look it through before it leaves the crew.',
  ]);
}

function tables(hand: Hand): Answer {
  const source = sourceHere(hand);
  const name = fileName(source.build.name);
  const sheets = sheetsOf(source);
  if (sheets.length === 0) {
    throw new UserError(
      'not-found',
      `Nothing but its name is recorded of ${source.build.name}, so there are no tables to take away yet.`,
    );
  }
  const files = sheets.map((sheet) => ({
    name: `${name}-${sheet.name}.csv`,
    bytes: encoded(writeCsv(sheet)),
  }));
  const lines = sheets.map(
    ({ name: what, rows }) => `${what}: ${rows.length} ${rows.length === 1 ? 'line' : 'lines'}`,
  );
  return exported(
    `${source.build.name} in ${files.length} ${files.length === 1 ? 'table' : 'tables'}`,
    files,
    lines,
  );
}

function wholeRecord(hand: Hand): Answer {
  const { today } = crewOf(hand);
  const whole = hand.whole.read();
  const text = writeRecordFile(whole, { on: today, team: hand.place.channelName });
  return exported(
    'The whole record in one file',
    [packRecordFile(`record-${today}`, text)],
    [`It holds ${countsIn(whole.tables)}, without the history of changes. /import record brings it back.`],
  );
}

function exported(result: string, files: readonly AnswerFile[], working: readonly string[]): Answer {
  return {
    kind: 'answer',
    subject: 'Export',
    result,
    working,
    files,
    audience: 'crew',
    data: { files: files.map(({ name, bytes }) => ({ name, bytes: bytes.length })) },
  };
}

/** @throws UserError 'not-found' in a channel that has no build. */
function sourceHere(hand: Hand): WholeBuild {
  const build = buildHere(hand);
  const { today, settings } = crewOf(hand);
  if (build) return wholeBuild(hand.record, build, today, settings.zone);
  throw new UserError(
    'not-found',
    'Nothing is recorded in this channel yet, so there is nothing to take away. Ask in the channel of a build.',
  );
}

const encoded = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A build's name as a file can have it on any machine. */
function fileName(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain.slice(0, 60) || 'build';
}
