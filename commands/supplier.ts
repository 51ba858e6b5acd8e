import { z } from 'zod';
import { action, defineCommand, subcommand } from '../src/bot/command.ts';
import { crewOf, readDay, suggestDays } from '../src/bot/crew.ts';
import type { Hand } from '../src/bot/hand.ts';
import { line, pageNumber } from '../src/bot/typed.ts';
import type { Answer } from '../src/core/reply.ts';
import { openAgain, setSupplier, shutSupplier } from '../src/records/suppliers/edit-supplier.ts';
import { knownSupplier, suggestSuppliers, supplierOrNew } from '../src/records/suppliers/find-supplier.ts';
import type { Supplier } from '../src/records/suppliers/supplier.ts';
import type { TeamRecord } from '../src/records/team-record.ts';
import {
  countryTyped,
  listSuppliers,
  moveSupplier,
  supplierCard,
} from '../src/tasks/suppliers/supplier-here.ts';

const supplier = line(80).describe('Its name');
const bySupplier = (typed: string, { record }: Hand) => suggestSuppliers(record, typed);

export default defineCommand({
  description: 'Suppliers: where they are, how long they take, when they are shut, how late they come',
  subcommands: {
    list: subcommand({
      description: 'All suppliers, the latest first, and on how many orders that rests',
      example: '/supplier list',
      input: z.object({}),
      run: (_, hand) => listSuppliers(hand, 1),
    }),
    show: subcommand({
      description: 'One supplier',
      example: '/supplier show supplier:"Norvale Gaskets"',
      input: z.object({ supplier }),
      suggest: { supplier: bySupplier },
      run: (input, hand) => supplierCard(hand, knownSupplier(hand.record, input.supplier)),
    }),
    set: subcommand({
      description: 'Say where it is, how long it takes, or its name; a new name is a new supplier',
      example: '/supplier set supplier:"Norvale Gaskets" country:DE lead:5',
      input: z.object({
        supplier,
        country: line(20).optional().describe('Whose public holidays it keeps: DE, GB/ENG, US, DE/BY'),
        lead: z.int().min(0).max(250).optional().describe('Working days from order to door'),
        note: line(200).optional().describe('Anything worth remembering about it'),
        name: line(80).optional().describe('What it is called from now on'),
      }),
      suggest: { supplier: bySupplier },
      run: set,
    }),
    shut: subcommand({
      description: 'Say when it is shut: its working days skip that',
      example: '/supplier shut supplier:"Norvale Gaskets" from:"21 Dec" to:"3 Jan" reason:"stocktaking"',
      input: z.object({
        supplier,
        from: line(60).describe('The first day it is shut'),
        to: line(60).describe('The last day it is shut'),
        reason: line(80).default('shutdown').describe('Why'),
      }),
      suggest: { supplier: bySupplier, from: suggestDays, to: suggestDays },
      run: shut,
    }),
  },
  actions: {
    list: action({
      input: z.object({ page: pageNumber }),
      run: (input, hand) => listSuppliers(hand, input.page),
    }),
    show: action({
      input: z.object({ supplier }),
      run: (input, hand) => supplierCard(hand, knownSupplier(hand.record, input.supplier)),
    }),
    open: action({
      input: z.object({ shutdown: z.coerce.number().int().positive() }),
      run: (input, hand) =>
        moveSupplier(hand, (record) => openAgain(record, input.shutdown, crewOf(hand).today)),
    }),
  },
});

interface SetGiven {
  readonly supplier: string;
  readonly country?: string | undefined;
  readonly lead?: number | undefined;
  readonly note?: string | undefined;
  readonly name?: string | undefined;
}

function set({ supplier: typed, country, lead, note, name }: SetGiven, hand: Hand): Answer {
  const read = country === undefined ? undefined : countryTyped(country);
  return moveSupplier(hand, (record) =>
    setSupplier(record, openSupplier(record, typed), { country: read, leadDays: lead, note, name }),
  );
}

/** The supplier of this name, written down if nobody has ordered there yet. */
function openSupplier(record: TeamRecord, typed: string): Supplier {
  const { name, known } = supplierOrNew(record, typed);
  return known ?? record.suppliers.add(name);
}

interface ShutGiven {
  readonly supplier: string;
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}

function shut({ supplier: typed, from, to, reason }: ShutGiven, hand: Hand): Answer {
  const first = readDay(hand, 'from', from);
  const last = readDay(hand, 'to', to);
  return moveSupplier(
    hand,
    (record) =>
      shutSupplier(
        record,
        openSupplier(record, typed),
        { from: first.day, to: last.day, reason },
        crewOf(hand).today,
      ),
    `${first.readAs} ${last.readAs}`,
  );
}
