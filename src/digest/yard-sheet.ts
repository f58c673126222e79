/**
 * The compost yard in figures and words: what is there and to come, what the beds want, month by month, and what to do
 * about what is short.
 */
import { addDays, type Day, dayOf, dayParts, latestOf } from '../measures/days.ts';
import { dated, quantity } from '../measures/quantity.ts';
import type { BedDemand, BedUnserved, CompostBalance, HeapSupply, Shortfall } from '../practices/compost-balance.ts';
import { boughtWords, pileWords, thinnerWords } from '../practices/topdressing/ways-in-words.ts';

/** Months shown, the running one first. House default: a year, and the month it comes round to. */
const MONTHS = 13;

/** One month of the yard, litres. */
export interface YardMonth {
  /** Its first day; of the running month, today. */
  from: Day;
  /** Ready in it; in the running month what is there already, too. */
  ready: number;
  /** Wanted in it, by the day each bed is best served. */
  wanted: number;
  /** What of that there will be. */
  given: number;
  /** Ready and not yet given when it ends. */
  left: number;
  /** Wanted and not to be had, of this month's beds. */
  short: number;
}

/** A shortage told. */
export interface ShortfallWords {
  season: number;
  heading: string;
  lines: readonly string[];
}

/** The yard, as a page or a command tells it. */
export interface YardSheet {
  today: Day;
  heaps: readonly HeapSupply[];
  /** Beds to be served within the months shown, in the order they want it. */
  beds: readonly BedDemand[];
  months: readonly YardMonth[];
  shortfalls: readonly ShortfallWords[];
  spared: readonly string[];
  /** What is said of seasons spread a touch thinner. May hold marked amounts. */
  thinned: readonly string[];
  /** What new beds could take, and what of it the yard spares. May hold marked amounts. */
  fills: readonly string[];
}

/** The yard of a balance, from today on. */
export function yardSheet(balance: CompostBalance, today: Day): YardSheet {
  const months = monthsFrom(today);
  const end = months.at(-1)?.to ?? today;
  const wanting = balance.beds.filter((bed) => !bed.skipped && dayOfNeed(bed, today) <= end);
  const beds = wanting.flatMap((bed) => servedOf(bed) ?? []);
  return {
    today,
    heaps: balance.heaps,
    beds,
    months: monthRows(months, balance.heaps, beds, today),
    shortfalls: balance.shortfalls.filter(({ by }) => by <= end).map(shortfallWords),
    thinned: thinnedWords(beds),
    fills: wanting.flatMap((bed) => fillWords(bed) ?? []),
    spared: [
      ...balance.spared.map(
        ({ bedName, phosphorusPpm }) =>
          `${bedName} gets none: its soil test found ${phosphorusPpm} ppm of phosphorus, which is very high. Test again in a few years.`,
      ),
      ...balance.unserved.map(unservedWords),
    ],
  };
}

function unservedWords({ bedName, season, closes, comes }: BedUnserved): string {
  const why =
    comes === undefined
      ? `its days were over on ${dated(closes)}, before the garden was brought in`
      : `its days end on ${dated(closes)}, and compost from elsewhere can be here and tested with beans about ${dated(comes)} at the soonest`;
  return `${bedName} gets none for ${season}: ${why}. Its next layer is that of ${season + 1}.`;
}

/** A bed as the yard serves it: a new one takes what it is given and is never short, or it is not there at all. */
function servedOf(bed: BedDemand): BedDemand | undefined {
  if (bed.fill === undefined) return bed;
  const depthMm = Math.round(bed.given / bed.areaM2);
  return bed.given < 1 ? undefined : { ...bed, litres: bed.given, layer: { ...bed.layer, depthMm } };
}

function fillWords({ fill, bedName, litres, given, window }: BedDemand): string | undefined {
  if (fill === undefined) return undefined;
  const spared = given < 1 ? 'None is free: all is promised to layers' : `${quantity(Math.floor(given), 'L')} are free`;
  const rest =
    given >= litres ? '' : given < 1 ? '; bought mix takes its place' : '; bought mix takes the place of the rest';
  return `${bedName}, to be filled by ${dated(window.latest)}, could take ${quantity(litres, 'L')} of compost. ${spared}${rest}.`;
}

function thinnedWords(beds: readonly BedDemand[]): string[] {
  const bySeason = new Map(
    beds.flatMap(({ season, thinner }) =>
      thinner === undefined || thinner.comes !== undefined ? [] : [[season, thinner] as const],
    ),
  );
  return [...bySeason].map(
    ([season, { lacking, percent }]) =>
      `The layers of ${season} lack only ${quantity(lacking, 'L')} in all, too little to order: every bed is given ${percent} % of its layer.`,
  );
}

/** The day a bed is best served; today where that is past and it still waits. */
export function dayOfNeed({ window }: BedDemand, today: Day): Day {
  return latestOf(window.preferred, today);
}

function monthsFrom(today: Day): { from: Day; to: Day }[] {
  const { year, month } = dayParts(today);
  return Array.from({ length: MONTHS }, (_, at) => {
    const first = monthStart(year, month + at);
    return { from: latestOf(first, today), to: addDays(monthStart(year, month + at + 1), -1) };
  });
}

/** The first day of a month counted on past December. */
function monthStart(year: number, month: number): Day {
  return dayOf(year + Math.floor((month - 1) / 12), ((month - 1) % 12) + 1, 1);
}

function monthRows(
  months: readonly { from: Day; to: Day }[],
  heaps: readonly HeapSupply[],
  beds: readonly BedDemand[],
  today: Day,
): YardMonth[] {
  let left = 0;
  return months.map(({ from, to }, at) => {
    const inMonth = (day: Day): boolean => day <= to && (at === 0 || day >= from);
    const ready = sum(heaps.filter((heap) => inMonth(heap.ready)).map(({ litres }) => litres));
    const served = beds.filter((bed) => inMonth(dayOfNeed(bed, today)));
    const wanted = sum(served.map(({ litres }) => litres));
    const given = sum(served.map((bed) => bed.given));
    left += ready - given;
    return { from, ready, wanted, given, left, short: wanted - given };
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function shortfallWords({ season, litres, by, order, waysOut }: Shortfall): ShortfallWords {
  return {
    season,
    heading: `${quantity(litres, 'L')} short by ${dated(by)}`,
    lines: [
      `Thinner: ${thinnerWords(waysOut)}.`,
      waysOut.pile === undefined ? 'A pile begun now is not ready in time for it.' : pileWords(waysOut.pile, by),
      `Buy: order between ${dated(order.earliest)} and ${dated(order.latest)}, five to six weeks before it is spread, so that beans can be grown in it first. ${boughtWords(waysOut.buy)}`,
      'Ask the seller: heated and turned, manure and whose, tested for salts, jumping worms? Go and look before you pay.',
    ],
  };
}
