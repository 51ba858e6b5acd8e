import type { JsonObject } from '../../core/json.ts';
import type { Answer, Button, Fact, Item } from '../../core/reply.ts';
import { type Day, sayDay } from '../../core/time.ts';
import { bottlesToBuy, type GradeBudget } from './budget.ts';
import { type Bottle, type FluidCase, type FluidMove, isFull, lackingL } from './fluid.ts';
import type { SayLitres } from './say-fluid.ts';

export interface CaseView {
  readonly fluidCase: FluidCase;
  readonly today: Day;
  readonly moves: readonly FluidMove[];
  readonly say: SayLitres;
  /** What has just been done, in words. */
  readonly said?: string;
  readonly certainty?: string;
  readonly extraButtons?: readonly Button[];
}

/** The moves shown on a case's card. */
const MOST_MOVES = 5;

/** One case as a card: how full it is, and what was poured and drained. */
export function caseAnswer(view: CaseView): Answer {
  const { fluidCase, today, moves, say, said, certainty, extraButtons = [] } = view;
  const { name, grade, note, filledOn } = fluidCase;
  const facts: readonly Fact[] = [
    ...(filledOn === null ? [] : [['Filled', sayDay(filledOn, today)] as const]),
    ...(note === null ? [] : [['Note', note] as const]),
    ...moves
      .slice(-MOST_MOVES)
      .toReversed()
      .map((move): Fact => [sayDay(move.movedOn, today), sayMove(move, grade, say)]),
  ];
  return {
    kind: 'answer',
    subject: 'Fluid',
    result: `${upper(name)}: ${sayFill(fluidCase, say)}`,
    tone: isFull(fluidCase) ? 'done' : 'soon',
    ...(certainty === undefined ? {} : { certainty }),
    facts,
    buttons: [...caseButtons(fluidCase), ...extraButtons],
    audience: 'crew',
    data: { ...caseData(fluidCase), ...(said === undefined ? {} : { said }) },
  };
}

/** "5.6 L 10W-40 in it", "empty, takes 5.6 L 10W-40", "3 L of 5.6 L 10W-40". */
export function sayFill(fluidCase: FluidCase, say: SayLitres): string {
  const { inL, capacityL, grade } = fluidCase;
  if (inL === 0) return `empty, takes ${say(capacityL)} ${grade}`;
  return isFull(fluidCase) ? `${say(inL)} ${grade} in it` : `${say(inL)} of ${say(capacityL)} ${grade}`;
}

function sayMove({ kind, volumeL, grade, byName, note }: FluidMove, own: string, say: SayLitres): string {
  const what = `${say(volumeL)}${grade === own ? '' : ` ${grade}`} ${kind} by ${byName}`;
  return note === null ? what : `${what}: ${note}`;
}

function caseButtons(fluidCase: FluidCase): readonly Button[] {
  const args = { case: fluidCase.id };
  const button = (label: string, action: string): Button => ({
    label,
    does: { command: 'fluid', action, args },
  });
  return [
    ...(isFull(fluidCase) ? [] : [button('Poured in', 'pour')]),
    ...(fluidCase.inL > 0 && !isFull(fluidCase) ? [button('It is full', 'full')] : []),
    ...(fluidCase.inL > 0 ? [button('Drained', 'drained')] : []),
  ];
}

/** One case of the list. */
export function caseItem(fluidCase: FluidCase, say: SayLitres): Item {
  const full = isFull(fluidCase);
  return {
    text: `${upper(fluidCase.name)}: ${sayFill(fluidCase, say)}`,
    tone: full ? 'done' : 'soon',
    buttons: full ? [] : caseButtons(fluidCase).slice(0, 2),
  };
}

/** Bottles of the shelf in one line for each grade. */
export function sayShelf(bottles: readonly Bottle[], say: SayLitres): string {
  const opened = bottles.filter(({ openedOn }) => openedOn !== null);
  const sealed = bottles.filter(({ openedOn }) => openedOn === null);
  const bySize = [...Map.groupBy(sealed, ({ sizeL }) => sizeL)].map(
    ([size, of]) => `${of.length} × ${say(size)}`,
  );
  return [...bySize, ...opened.map(({ leftL, sizeL }) => `${say(leftL)} left of ${say(sizeL)}`)].join(', ');
}

/** What is ordered of a grade. */
export interface Ahead {
  readonly says: string;
  /** Still to come, in litres, as far as the orders say how much is in a bottle. */
  readonly comingL: number;
  /** Puts what has come onto the shelf. */
  readonly buttons: readonly Button[];
}

/** A grade of the budget: what takes it, what there is, what is short. */
export function budgetItem(budget: GradeBudget, ahead: Ahead, before: string, say: SayLitres): Item {
  const { grade, shares, bottles, shelfL, neededL, shortL } = budget;
  const takes = shares
    .filter(({ lackingL: lacking }) => lacking > 0)
    .map(({ fluidCase, lackingL: lacking }) => `${fluidCase.name} ${say(lacking)}`);
  const { says: coming, comingL, buttons } = ahead;
  const shelf = bottles.length === 0 ? 'none on the shelf' : `on the shelf ${sayShelf(bottles, say)}`;
  const note = [takes.length === 0 ? 'nothing takes any now' : takes.join(', '), shelf, coming]
    .filter(Boolean)
    .join('; ');
  if (shortL > 0 && comingL >= shortL) {
    return {
      text: `${grade}: ${say(shortL)} short of ${say(neededL)}, ordered`,
      note: `${upper(note)}.`,
      tone: 'soon',
      buttons,
    };
  }
  if (shortL > 0) {
    const { count, sizeL } = bottlesToBuy({ ...budget, shortL: shortL - comingL });
    const [first] = shares;
    return {
      text: `${grade}: ${say(shortL)} short of ${say(neededL)}`,
      note: `${upper(note)}. Order ${count} × ${say(sizeL)}${before}.`,
      tone: 'late',
      buttons:
        first === undefined
          ? buttons
          : [
              ...buttons,
              {
                label: 'Order it',
                does: { command: 'fluid', action: 'order', args: { case: first.fluidCase.id } },
              },
            ],
    };
  }
  const enough =
    neededL === 0
      ? shelfL === 0
        ? 'filled'
        : `${say(shelfL)} on the shelf`
      : `enough, ${say(shelfL)} for ${say(neededL)}`;
  return { text: `${grade}: ${enough}`, note: `${upper(note)}.`, tone: 'done', buttons };
}

export function budgetData(budget: GradeBudget): JsonObject {
  const { grade, shares, neededL, shelfL, shortL } = budget;
  const { count, sizeL } = bottlesToBuy(budget);
  return {
    grade,
    neededL,
    shelfL,
    shortL,
    ...(shortL > 0 ? { orderCount: count, orderSizeL: sizeL } : {}),
    cases: shares.map(({ fluidCase, lackingL: lacking, fromShelfL }) => ({
      case: fluidCase.id,
      name: fluidCase.name,
      lackingL: lacking,
      fromShelfL,
    })),
  };
}

export function caseData(fluidCase: FluidCase): JsonObject {
  const { id, name, grade, capacityL, inL, filledOn, note } = fluidCase;
  return {
    kind: 'fluid',
    case: id,
    name,
    grade,
    capacityL,
    inL,
    lackingL: lackingL(fluidCase),
    filledOn,
    note,
  };
}

const upper = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
