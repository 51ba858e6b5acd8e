import { UserError } from '../../core/user-error.ts';
import { readBoltClass } from '../bolt-class.ts';
import type { Line } from './line.ts';
import { answer, ask, type QuickContext, type QuickReading } from './reading.ts';
import { counted } from './thread-talk.ts';
import { otherDiameter, readSize } from './thread-words.ts';
import { vocabulary } from './vocabulary.ts';

const CLASS =
  /(?:\b(?:class|klasse|classe|clase|grade) )?(?<![\d.,])(?<metric>(?:4[.,]6|5[.,][68]|6[.,]8|8[.,]8|9[.,]8|10[.,]9|12[.,]9))(?![\d.,])|\b(?:sae )?(?:grade ?|gr\.? ?)(?<grade>[258])\b|\b(?<stainless>a[24][ -]?(?:50|70|80))\b/u;
const WORDS = vocabulary(
  'torque tight tighten tightening moment drehmoment anzugsmoment anziehen couple serrage par apriete how spec figure setting for dry oiled moly',
);
const ASKS_TORQUE = /\b(?:torque|how tight|drehmoment|anzugsmoment|couple|apriete)\b/u;
const FRICTION = /\b(?:dry|oiled|moly)\b/u;

/** A torque is shown in both units anyway. */
const IN_UNIT =
  / (?:in|to) (?:n\.?m|newton ?met(?:re|er)s?|lb[sf]?[ ./-]?ft|ft[ ./-]?lb[sf]?|foot[ -]?pounds?)[ ?]*$/u;

/** A bolt by size and class: what it is tightened to. */
export function readTorqueLine(line: Line, { boltClasses }: QuickContext): QuickReading | undefined {
  if (
    /^[\d.,]+ ?(?:n\.?m|lb\.?[ -]?ft|ft[ -]?lbs?) ?(?:\+|plus|then|and) ?\d+ ?(?:°|deg\w*)?$/u.test(line.text)
  )
    return ask('torque', 'A torque and then an angle: what is to be worked out?', [
      {
        label: 'The torque in other units',
        text: (/^[\d.,]+ ?[\p{L} .-]+?(?= ?(?:\+|plus|then|and))/u.exec(line.text)?.[0] ?? line.text).trim(),
      },
      { label: 'A bolt by size and class', text: 'm10 10.9' },
    ]);
  const found = CLASS.exec(line.text);
  const friction = FRICTION.exec(line.text)?.[0];
  if (found === null) return withoutClass(line);
  const behind =
    `${line.text.slice(0, found.index)} ${line.text.slice(found.index + found[0].length)}`.trim();
  const plain = behind.replace(IN_UNIT, '').trim();
  const rest = line.asks ? plain.replace(/\b(?:torqued|tightened|should|be|to)\b/gu, ' ').trim() : plain;
  const { metric, grade, stainless } = found.groups ?? {};
  const typed = metric ?? (grade === undefined ? stainless : `grade ${grade}`) ?? '';
  const propertyClass = classOf(typed, boltClasses);
  // gr8 is praise
  if (rest === '' && grade !== undefined && line.text.startsWith('grade'))
    return ask('torque', 'Of which size?', [
      { label: `A bolt of ${typed}`, text: `… ${typed} torque`, open: true },
    ]);
  const size = readSize(rest, WORDS);
  if (propertyClass === undefined || size === undefined || otherDiameter(size.read) || counted(line))
    return undefined;
  const { named, pitches, diameter } = size.read;
  const inch = metric === undefined && stainless === undefined;
  const nominal = named?.nominal !== undefined;
  if (!nominal || pitches.length > 1 || (named?.families?.[0] === 'iso-metric') === inch) return undefined;
  if (!inch && !/\bm ?\d/u.test(size.text) && diameter === undefined) return undefined;
  const numbers = {
    diameterMm: size.diameterMm ?? null,
    ...(size.pitchMm === undefined ? {} : { pitchMm: size.pitchMm }),
    propertyClass,
  };
  return answer('torque', 'bolt', numbers, {
    size: size.text,
    class: propertyClass,
    ...(friction === undefined ? {} : { friction }),
  });
}

function classOf(typed: string, known: readonly string[]): string | undefined {
  try {
    return readBoltClass(typed, known);
  } catch (error) {
    if (error instanceof UserError) return undefined;
    throw error;
  }
}

function withoutClass(line: Line): QuickReading | undefined {
  if (!ASKS_TORQUE.test(line.text)) return undefined;
  const size = readSize(line.text, WORDS);
  if (size === undefined || size.lengthMm !== undefined || size.read.named?.nominal === undefined)
    return undefined;
  const inch = size.read.named.families?.[0] !== 'iso-metric';
  const classes = inch ? ['grade 5', 'grade 8'] : ['8.8', '10.9'];
  return ask(
    'torque',
    'Which class stands on its head?',
    classes.map((each) => ({ label: each, text: `${size.text} ${each}` })),
  );
}
