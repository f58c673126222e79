/**
 * The nitrogen ledgers of a garden in figures and words: how each bed comes out, why, and what could be strewn.
 */
import { seasonOf } from '../climate/season.ts';
import { thereFrom } from '../garden/planned-beds.ts';
import { dated, quantity, quantitySpan } from '../measures/quantity.ts';
import { tenth } from '../measures/tenth.ts';
import type { CropSpan } from '../practices/bed-timeline.ts';
import { nitrogenLedgers } from '../practices/catalogue.ts';
import type { ReasonSource } from '../practices/draft.ts';
import { standTogether } from '../practices/fertility/crop-needs.ts';
import type { Band, BedLedger } from '../practices/fertility/ledger.ts';
import type { Grams } from '../practices/fertility/ledger-line.ts';
import { cropsShort, type Strewn, veryHighPhosphorus, waysToBring } from '../practices/fertility/what-to-strew.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { reasonSentence } from '../schedule/explain.ts';

/** The bands as a reader meets them. */
export const BAND_WORDS: Readonly<Record<Band, string>> = { enough: 'enough', low: 'may run low', short: 'short' };

/** A line of a ledger, told. */
export interface LineTold {
  side: 'want' | 'give';
  of: string;
  gPerM2: Grams;
  /** The figure or its span, with marked amounts. */
  figure: string;
  how: string;
  source: ReasonSource;
}

/** A bed's season, told. Texts may hold marked amounts and days. */
export interface LedgerTold {
  bedId: string;
  bedName: string;
  season: number;
  crops: string;
  band: Band;
  /** What is wanted of the ground that comes out worst, g/m². */
  wants: number;
  gives: Grams;
  lines: readonly LineTold[];
  /** What it comes to, in a sentence. */
  outcome: string;
  notes: readonly string[];
  /** Any one of these would bring what is short; none where the bed is not short. */
  ways: readonly Strewn[];
}

/** The seasons that are told: the running one and the next. */
export function toldSeasons({ climate, today }: Pick<PracticeInput, 'climate' | 'today'>): [number, number] {
  const season = seasonOf(climate.seasonTurn, today);
  return [season, season + 1];
}

/** Every bed's ledgers of the running season and the next, told; seasons without a crop are left out. */
export function fertilitySheet(input: PracticeInput): LedgerTold[] {
  const { garden } = input;
  return nitrogenLedgers(input, toldSeasons(input)).map((ledger) => {
    const { bed, season, crops, band, lines, gives, worst } = ledger;
    const standing = cropsShort(ledger).filter(({ span: { to } }) => to === undefined || to > input.today);
    const short = standing.reduce((sum, { nitrogenG }) => sum + nitrogenG, 0);
    return {
      bedId: bed.id,
      bedName: bed.name,
      season,
      crops: cropsInWords(crops),
      band,
      wants: worst.wants,
      gives,
      lines: lines.map(({ side, of, gPerM2, reason }) => ({
        side,
        of,
        gPerM2,
        figure: figureOf(gPerM2),
        how: reasonSentence(reason),
        source: reason.source,
      })),
      outcome: outcomeOf(ledger),
      notes: notesOf(input, ledger, standing.length),
      ways: short > 0 ? waysToBring({ garden }, bed.id, short) : [],
    };
  });
}

/** "7.0 g/m² (3.5 to 10.5)" with each amount marked; one figure where that is all that is known. */
export function figureOf({ low, usual, high }: Grams): string {
  const grams = (value: number): string => quantity(tenth(value), 'gPerM2');
  return tenth(low) === tenth(high)
    ? grams(usual)
    : `${grams(usual)} (${quantitySpan(tenth(low), tenth(high), 'gPerM2')})`;
}

/** "lettuce, then beet", "tomato and basil": crops that stand together are joined by an "and". */
function cropsInWords(crops: readonly CropSpan[]): string {
  const each = crops.filter(({ crop }, at) => crops.findIndex((other) => other.crop.id === crop.id) === at);
  return each
    .map((span, at) => {
      const before = each[at - 1];
      const joined = before === undefined ? '' : standTogether(before, span) ? ' and ' : ', then ';
      return `${joined}${span.crop.name.toLowerCase()}`;
    })
    .join('');
}

function outcomeOf({ crops, worst, band }: BedLedger): string {
  if (worst.wants === 0) return 'Nothing is wanted: what grows here gathers its own.';
  const grams = (value: number): string => quantity(tenth(value), 'gPerM2');
  const where = crops.length === 1 ? '' : ` where the ${worst.span.crop.name.toLowerCase()} stands`;
  const sum = `${grams(worst.wants)} wanted${where}, ${grams(worst.gives.usual)} given by the usual figures and ${grams(worst.gives.high)} at best`;
  if (band === 'enough') return `${sum}: enough, ${grams(worst.balance.usual)} over.`;
  const short = grams(-worst.balance.usual);
  if (band === 'low') return `${sum}: short by ${short} if things go as usual, enough if they go well.`;
  return `${sum}: short by ${short}, and short even at best.`;
}

function notesOf({ garden }: PracticeInput, ledger: BedLedger, standing: number): string[] {
  const { bed, band, crops, season } = ledger;
  const ppm = veryHighPhosphorus({ garden }, bed.id);
  const untold = crops.filter(({ planting }) => !garden.fed.some(({ plantingId }) => plantingId === planting.id));
  const fed = garden.done.filter(({ key }) => untold.some(({ planting }) => key === `feed/planting:${planting.id}`));
  return [
    ...(ppm === undefined
      ? []
      : [
          `The soil test found ${ppm} ppm of phosphorus, which is very high. No compost is spread here for some years, and nothing is given that brings more of it; a cover with a legume in it brings nitrogen alone.`,
        ]),
    ...(thereFrom(bed) === undefined
      ? []
      : [
          `What the bed was filled with feeds its first crops too, and is not counted for ${season}: nobody knows what bought mix holds.`,
        ]),
    ...(band === 'low'
      ? [
          'Nothing is strewn for this. A legume or a legume cover ahead of the crop would carry it; else watch for pale lower leaves.',
        ]
      : []),
    ...(band === 'short' && standing === 0
      ? [
          'No meal helps now: what falls short is over, or is fed by compost alone. A legume cover before the next crop does.',
        ]
      : []),
    ...fed.map(({ on }) => `A meal was strewn on ${dated(on)}; nobody told how much, so it is not counted.`),
  ];
}
