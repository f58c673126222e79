/**
 * What somebody types about a bed to be filled, read.
 */

import type { Problem } from '../../garden/problem.ts';
import { capital } from '../../measures/capital.ts';
import { readArea, readHeap, readLength, type TypedSize } from '../../measures/typed-amount.ts';
import { readNumber } from '../../measures/typed-number.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { BedToFill } from '../bed-fill.ts';

/** A bed as typed; what may be left out is empty then. */
export type FillTyped = Readonly<Record<'length' | 'width' | 'depth' | 'paths' | 'compost' | 'phosphorus', string>>;

/** The bed read, and whose units it was typed in. */
export interface FillRead {
  asked: { bed: BedToFill; compostL?: number; phosphorusPpm?: number };
  units: UnitSystem;
}

/** Sizes that a bed can have, metres, as in a garden file. */
const LIMITS = { length: [0.2, 200], width: [0.2, 50], depth: [0.05, 3] } as const;
const EXAMPLES = { length: '2.4m or 8ft', width: '1.2m or 4ft', depth: '30cm or 12in' } as const;
/** Largest area of path, m², and most phosphorus, ppm, as in a garden file. */
const MOST = { pathsM2: 1000, phosphorusPpm: 5000 } as const;

/** Reads a bed, or says all that is wrong with it at once. */
export function askedFill(typed: FillTyped): FillRead | { problems: Problem[] } {
  const problems: Problem[] = [];
  const refuse = (where: string, text: string, mend: string): undefined => {
    problems.push({ where, what: text.trim() === '' ? 'is missing.' : `"${text}" cannot be used.`, mend });
    return undefined;
  };
  const side = (key: 'length' | 'width' | 'depth'): TypedSize => {
    const read = readLength(typed[key]);
    const [least, most] = LIMITS[key];
    if (read !== undefined && read.value >= least && read.value <= most) return read;
    refuse(capital(key), typed[key], `Give it with its unit, ${least} to ${most} m, such as ${EXAMPLES[key]}.`);
    return { value: least, units: 'metric' };
  };
  const [length, width, depth] = [side('length'), side('width'), side('depth')];
  const paths =
    optional(typed.paths, readArea, ({ value }) => value <= MOST.pathsM2) ??
    refuse('Paths', typed.paths, 'Give an area with its unit, such as 2m2 or 20ft2, or 0 for none.');
  const compost =
    optional(typed.compost, litresOf) ??
    refuse('Compost', typed.compost, 'Give a volume with its unit, such as 100L or 4ft3.');
  const ppm =
    optional(typed.phosphorus, numberOf, (value) => value <= MOST.phosphorusPpm) ??
    refuse('Phosphorus', typed.phosphorus, 'Give parts per million, such as 18.');
  if (problems.length > 0) return { problems };
  return {
    asked: {
      bed: {
        lengthM: length.value,
        widthM: width.value,
        depthM: depth.value,
        ...(paths === undefined || paths === 'left out' ? {} : { pathsM2: paths.value }),
      },
      ...(compost === undefined || compost === 'left out' ? {} : { compostL: compost }),
      ...(ppm === undefined || ppm === 'left out' ? {} : { phosphorusPpm: ppm }),
    },
    units: [length, width, depth].some(({ units }) => units === 'us') ? 'us' : 'metric',
  };
}

/** What may be left out: read where something is written, and nothing where that cannot be used. */
function optional<Value>(
  text: string,
  read: (text: string) => Value | undefined,
  fits: (value: Value) => boolean = () => true,
): Value | 'left out' | undefined {
  if (text.trim() === '') return 'left out';
  const value = read(text);
  return value !== undefined && fits(value) ? value : undefined;
}

function litresOf(text: string): number | undefined {
  const heap = text.trim() === '0' ? { litres: 0 } : readHeap(text);
  return heap !== undefined && 'litres' in heap ? heap.litres : undefined;
}

function numberOf(text: string): number | undefined {
  return /^\d{1,5}([.,]\d+)?$/.test(text.trim()) ? readNumber(text) : undefined;
}
