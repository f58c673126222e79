/**
 * What a new bed is filled with, in figures and words, for the terminal and the pages.
 */
import type { Bed } from '../garden/garden.ts';
import { quantity } from '../measures/quantity.ts';
import { barrowLoads } from '../practices/barrow.ts';
import { type BedFill, type BedToFill, bedFill } from '../practices/bed-fill.ts';
import { compostBalance } from '../practices/catalogue.ts';
import { type BedFilling, bedFilling, fillOf } from '../practices/fill-window.ts';
import { FILL_CAUTIONS, fillMinutes, fillSteps } from '../practices/new-beds/fill-draft.ts';
import { amountReasons } from '../practices/new-beds/fill-reasons.ts';
import { mixQuestions } from '../practices/new-beds/mix-order-draft.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { VERY_HIGH_PHOSPHORUS_PPM } from '../practices/soil-test.ts';
import { reasonSentence } from '../schedule/explain.ts';
import { hoursText } from './words.ts';

/** What is asked about a bed that may never be made. */
export interface FillAsked {
  bed: BedToFill;
  /** Compost of the household's own that is free for it, litres. */
  compostL?: number;
  phosphorusPpm?: number;
}

/** All that is said of a fill. Texts may hold marked amounts. */
export interface FillSheet {
  fill: BedFill;
  parts: readonly { what: string; litres: number; barrows: string }[];
  /** The sum, step by step. */
  sum: readonly string[];
  /** What to ask whoever sells the mix; none where nothing is bought. */
  ask: readonly string[];
  steps: readonly string[];
  cautions: readonly string[];
  minutes: number;
  effort: string;
}

/** What is said of a bed that somebody asks about. What the yard could spare is not looked up: it is told. */
export function fillSheet({ bed, compostL = 0, phosphorusPpm }: FillAsked): FillSheet {
  const tooMuch = phosphorusPpm !== undefined && phosphorusPpm >= VERY_HIGH_PHOSPHORUS_PPM;
  const fill = bedFill(bed, { freeCompostL: compostL, phosphorus: tooMuch });
  const reasons = amountReasons(tooMuch ? { phosphorusPpm } : {}, fill).filter(
    ({ rule }) => rule !== 'bed-fill.free-compost',
  );
  return sheetOf(fill, reasons.map(reasonSentence));
}

/** A fill told, with the sentences of its sum. */
export function sheetOf(fill: BedFill, sum: readonly string[]): FillSheet {
  const minutes = fillMinutes(fill);
  const parts = [
    { what: 'topsoil from the paths', litres: fill.topsoilL },
    { what: 'your own compost', litres: fill.compostL },
    { what: 'bed mix to buy', litres: fill.mixL },
  ];
  return {
    fill,
    parts: parts.filter(({ litres }) => litres > 0).map((part) => ({ ...part, barrows: barrowLoads(part.litres) })),
    sum,
    ask: fill.mixL > 0 ? mixQuestions(fill) : [],
    steps: fillSteps(fill),
    cautions: [...FILL_CAUTIONS, ...reachWords(fill.widthM)],
    minutes,
    effort: `${quantity(fill.movedL, 'L')} are shovelled and pushed in all: about ${hoursText(minutes)}, more for whoever is not used to it. That is by figures from memory.`,
  };
}

/** A planned bed with what it is filled with. */
export interface PlannedFill {
  filling: BedFilling;
  fill: BedFill;
}

/** How a bed is filled as the garden's plan has it; nothing for one that is there. */
export function plannedFill(input: PracticeInput, bed: Bed): PlannedFill | undefined {
  const planned = bedFilling(input, bed);
  if (planned === undefined) return undefined;
  const demand = compostBalance(input).beds.find(({ key }) => key === planned.key);
  const filling = demand === undefined ? planned : { ...planned, window: demand.window };
  return { filling, fill: fillOf(filling, demand?.given ?? 0) };
}

/** Width from which the middle of a bed is out of reach from its sides, metres: 1.2 m is usual. Common practice. */
const OUT_OF_REACH_M = 1.5;

function reachWords(widthM: number): string[] {
  if (widthM <= OUT_OF_REACH_M) return [];
  return [
    `Nobody reaches the middle of a bed ${quantity(widthM, 'm')} wide without stepping in, and soil that is trodden sets hard: ${quantity(1.2, 'm')} is usual. Make two of it, with a path between.`,
  ];
}
