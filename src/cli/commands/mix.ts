import { mixSheet } from '../../digest/mix-sheet.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { readHeap, readSides } from '../../measures/typed-amount.ts';
import { type Room, roomOf } from '../../practices/composting/mix/layers.ts';
import { readMaterial, readPair, type TypedPortion } from '../../practices/composting/mix/read-portion.ts';
import type { AtHand } from '../../practices/composting/mix/what-to-add.ts';
import { command } from '../command-line/command.ts';
import { everywhere, formatOption } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { textValue } from '../command-line/values.ts';
import { mixJson, mixLines } from '../text/mix-text.ts';
import { writeJson, writeLines } from '../text/output.ts';

const ABOUT = 'That mix cannot be worked out.';

export const mix = command({
  name: 'mix',
  about: 'Works out a compost mix: how rich, how wet, what to add, how to lay it.',
  argument: { flags: '<materials...>', about: 'each a material and its amount: dry-leaves:200L grass-clippings:30lb' },
  options: {
    with: {
      flags: '--with <materials>',
      about: 'what is there to add, by name or with how much there is: straw,coffee-grounds:20L',
      value: textValue('Name what is there, such as straw,coffee-grounds:20L.').optional(),
    },
    bin: {
      flags: '--bin <size>',
      about: 'the bin to lay it in: its volume, or length x width x height: 760L, 1x1x0.9m, 3x3x3ft',
      value: textValue('Give its volume or its sides, such as 760L or 3x3x3ft.').optional(),
    },
    ...everywhere,
    format: formatOption('text', 'json'),
  },
  run: async ({ at, options, words }) => {
    const portions = allRead(words.map(readPair));
    const units = portions.some((portion) => portion.units === 'us') ? 'us' : 'metric';
    const atHand = options.with === undefined ? undefined : readAtHand(options.with);
    const sheet = mixSheet(portions, atHand, options.bin === undefined ? undefined : readRoom(options.bin));
    if (sheet === undefined)
      throw refusal(
        ABOUT,
        words.join(' '),
        'None of it has a ratio to reckon with.',
        'Add something that has: leaves.',
      );
    if (options.format === 'json') writeJson(at.stdout, mixJson(sheet), units);
    else writeLines(at.stdout, mixLines(sheet, units));
  },
});

/** Everything that could be read, or all that could not. */
function allRead(read: readonly (TypedPortion | Problem[])[]): TypedPortion[] {
  const problems = read.flatMap((each) => (Array.isArray(each) ? each : []));
  if (problems.length > 0) throw new InputRefused(ABOUT, problems);
  return read.flatMap((each) => (Array.isArray(each) ? [] : [each]));
}

/** Most things to add from: beyond that nobody chooses, and the reckoning slows. House default. */
const MOST_AT_HAND = 6;

function readAtHand(text: string): AtHand[] {
  const pairs = text.split(',').filter((pair) => pair.trim() !== '');
  if (pairs.length > MOST_AT_HAND)
    throw refusal(ABOUT, '--with', `It names ${pairs.length} things.`, `Name at most ${MOST_AT_HAND}.`);
  const read = pairs.map((pair): AtHand | Problem[] => {
    if (pair.includes(':')) {
      const portion = readPair(pair.trim());
      return Array.isArray(portion) ? portion : { material: portion.material, most: portion.amount };
    }
    const material = readMaterial(pair.trim());
    return 'mend' in material ? [material] : { material };
  });
  const problems = read.flatMap((each) => (Array.isArray(each) ? each : []));
  if (problems.length > 0) throw new InputRefused(ABOUT, problems);
  return read.flatMap((each) => (Array.isArray(each) ? [] : [each]));
}

function readRoom(text: string): Room {
  const sides = readSides(text);
  if (sides) {
    const floorM2 = sides.lengthM * sides.widthM;
    return { floorM2, litres: floorM2 * sides.heightM * 1000 };
  }
  const heap = readHeap(text);
  if (heap && 'litres' in heap) return roomOf(heap.litres);
  throw refusal(ABOUT, '--bin', `"${text}" is no size of a bin.`, 'Give its volume or its sides: 760L, 3x3x3ft.');
}
