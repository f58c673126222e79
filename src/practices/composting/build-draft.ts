/**
 * Building a pile.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { BROWNS_TO_GREENS, feedstockById } from '../../handbook/feedstocks.ts';
import { addDays } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { START_UP_MINUTES } from '../effort.ts';
import { additionWords, middleWords } from './mix/in-words.ts';
import { type Mix, mixOf } from './mix/mix.ts';
import { GOOD_START } from './mix/target.ts';
import { type WhatToAdd, whatToAdd } from './mix/what-to-add.ts';
import { draftOfPile, forkingMinutes, pileCautions } from './pile-draft.ts';
import { builtLitres, HEATS_FROM_LITRES, portionsOf } from './pile-life.ts';

/** Thickest stick that rots in a season, mm (half an inch). Common practice. */
const THICKEST_STICK_MM = 12.7;
/** Days a planned build may be early or late. House default. */
const BUILD_DAYS = { early: 3, late: 7 } as const;

/** The task that builds a pile. */
export function buildKey(pileId: string): string {
  return `pile-build/pile:${pileId}`;
}

/** Build a pile the plan asks for. */
export function buildDraft(pile: Pile, bin: Bin): TaskDraft {
  const { day } = pile.built;
  const [browns, greens] = [litresOf(pile, 'brown'), litresOf(pile, 'green')];
  return {
    ...draftOfPile(pile, bin),
    key: buildKey(pile.id),
    kind: 'build-pile',
    job: { id: 'build-pile', title: 'Build a pile' },
    weight: 'work',
    title: `Build the pile in ${bin.name}`,
    steps: buildSteps(pile, bin, browns, greens),
    cautions: [
      ...new Set([
        ...pileCautions(pile),
        ...pile.ingredients.flatMap(({ materialId }) => feedstockById(materialId).cautions),
      ]),
    ],
    supplies: [
      ...pile.ingredients.map(({ materialId, litres }) => ({
        what: feedstockById(materialId).name.toLowerCase(),
        amount: { value: litres, unit: 'L' as const },
      })),
      { what: 'fork and water' },
    ],
    window: { earliest: addDays(day, -BUILD_DAYS.early), preferred: day, latest: addDays(day, BUILD_DAYS.late) },
    ifMissed: 'still do',
    missedNote:
      'Green stuff loses its heat and its nitrogen while it waits: build it at your next chance, before the cold.',
    effortMinutes: forkingMinutes(builtLitres(pile), 2),
    onceMinutes: START_UP_MINUTES,
    confidence: 'recorded',
    reasons: [
      { rule: 'pile-build.planned', saw: { day }, source: "the garden's own plan" },
      ratioReason(browns, greens),
      ...mixReasons(mixOf(portionsOf(pile))),
    ],
    makes: [
      {
        makes: 'pile-built' as const,
        pileId: pile.id,
        ...(builtLitres(pile) > 0 ? { litres: builtLitres(pile) } : {}),
      },
    ],
  };
}

function buildSteps(pile: Pile, bin: Bin, browns: number, greens: number): string[] {
  return [
    ...pile.ingredients.map(({ materialId, litres }) => `${feedstockById(materialId).name}: ${quantity(litres, 'L')}.`),
    ratioStep(browns, greens),
    ...mixSteps(pile),
    `Coarse stuff at the bottom, then thin layers. Nothing thicker than ${quantity(THICKEST_STICK_MM, 'mm')}.`,
    'Wet each layer until a squeezed handful is damp and gives a drop or two at most.',
    ...sizeSteps(pile, bin),
  ];
}

function litresOf(pile: Pile, kind: 'brown' | 'green'): number {
  return pile.ingredients
    .filter(({ materialId }) => feedstockById(materialId).class === kind)
    .reduce((sum, { litres }) => sum + litres, 0);
}

/** What is there of each, and what the rule would still add. */
function ratioStep(browns: number, greens: number): string {
  const have = `In all ${quantity(browns, 'L')} of browns to ${quantity(greens, 'L')} of greens`;
  const missing = BROWNS_TO_GREENS * greens - browns;
  if (missing > 0) return `${have}: add about ${quantity(Math.ceil(missing / 5) * 5, 'L')} more browns.`;
  return greens === 0 ? `${have}: without greens it rots slowly and will not heat.` : `${have}.`;
}

/** What the stuff comes to by its own figures, and what it still wants. */
function mixSteps(pile: Pile): string[] {
  const mix = mixOf(portionsOf(pile));
  return mix.carbonToNitrogen === undefined
    ? []
    : [`Reckoned by what is in it, it begins at ${middleWords(mix)}. ${wantWords(whatToAdd(mix.portions))}`];
}

function wantWords(answer: WhatToAdd): string {
  if (answer.reach === 'not') return `More of the same makes it no better: it stays ${answer.hindrance}.`;
  if (answer.add.length === 0 && answer.waterL === 0) return 'It wants nothing more.';
  return `It wants ${additionWords(answer)}: then it is ${middleWords(answer.after)}.`;
}

function mixReasons({ carbonToNitrogen, moisturePct }: Mix): Reason[] {
  if (carbonToNitrogen === undefined || moisturePct === undefined) return [];
  const saw = {
    ratioLow: Math.round(carbonToNitrogen.low),
    ratioHigh: Math.round(carbonToNitrogen.high),
    waterLow: Math.round(moisturePct.low),
    waterHigh: Math.round(moisturePct.high),
    goodLow: GOOD_START.carbonToNitrogen.low,
    goodHigh: GOOD_START.carbonToNitrogen.high,
  };
  return [{ rule: 'pile-build.mix', saw, source: 'compost:S14' }];
}

function ratioReason(browns: number, greens: number): Reason {
  return {
    rule: 'pile-build.ratio',
    saw: { browns, greens },
    limit: BROWNS_TO_GREENS,
    source: 'common practice',
  };
}

function sizeSteps(pile: Pile, bin: Bin): string[] {
  const litres = builtLitres(pile);
  return [
    ...(litres > bin.volumeL
      ? [`It is more than ${bin.name} holds (${quantity(bin.volumeL, 'L')}): fill up again when it has sunk.`]
      : []),
    ...(pile.method === 'hot' && litres < HEATS_FROM_LITRES
      ? [
          `Below ${quantity(HEATS_FROM_LITRES, 'L')} a pile may not heat through: gather more first, or reckon on a slow one.`,
        ]
      : []),
  ];
}
