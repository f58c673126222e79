/**
 * A choice for a bed's gap in words: what it comes to, its odds, its seed, what speaks for it and against it. Texts may
 * hold marked amounts and days.
 */
import type { Span } from '../handbook/shapes/row.ts';
import type { Day } from '../measures/days.ts';
import { dated, formatQuantity, quantity, readableIn } from '../measures/quantity.ts';
import { tenth } from '../measures/tenth.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { FitBloom, FitGap, GapFit, PartBloom, Share, Verdict } from '../practices/cover-cropping/fit/fit.ts';
import type { Reason } from '../practices/draft.ts';
import { reasonSentence } from '../schedule/explain.ts';

/** The verdicts as a reader meets them. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  good: 'fits well',
  possible: 'can be done',
  poor: 'fits badly',
  unusable: 'does not fit',
};

/** One line of what is known of a choice. */
export interface FitLine {
  what: string;
  text: string;
}

/** A choice, told. */
export interface FitTold {
  name: string;
  verdict: string;
  lines: readonly FitLine[];
  pros: readonly string[];
  cons: readonly string[];
}

/** A choice with every figure that is known of it. */
export function fitTold(fit: GapFit): FitTold {
  return {
    name: fit.name,
    verdict: VERDICT_WORDS[fit.verdict],
    lines: [...sowLines(fit), ...oddsLines(fit), ...endLines(fit), ...amountLines(fit)],
    pros: fit.pros.map(reasonSentence),
    cons: fit.cons.map(reasonSentence),
  };
}

/** Choices that one reason rules out. */
export interface RuledOut {
  why: string;
  names: readonly string[];
}

/** What does not fit, and why: choices that one and the same thing rules out are named together. */
export function ruledOut(fits: readonly GapFit[]): RuledOut[] {
  const out = fits.flatMap(({ verdict, name, cons: [first] }) =>
    verdict !== 'unusable' || first === undefined
      ? []
      : [{ name, why: TOGETHER[first.rule]?.(first) ?? reasonSentence(first) }],
  );
  const reasons = [...new Set(out.map(({ why }) => why))];
  return reasons.map((why) => ({ why, names: out.filter((each) => each.why === why).map(({ name }) => name) }));
}

/** Reasons that rule out many, said without their names. */
const TOGETHER: Readonly<Record<string, (reason: Reason) => string>> = {
  'cover-fit.never-then': () => 'Their time to sow does not lie in this gap.',
  'cover-fit.too-far': () => 'Their next time to sow in this gap is more than two years off.',
  'cover-fit.no-room': ({ limit }) =>
    `There is no room for ${limit} days of growth, the least that is worth the seed, and time to settle.`,
};

/** A gap in words: "after the snap bean, from 29 August, until tomato goes in on 29 May". */
export function gapInWords({ from, to, before, next }: FitGap): string {
  const start =
    from === undefined
      ? 'free now'
      : before === undefined
        ? `free from ${dated(from)}`
        : `after ${before}, from ${dated(from)}`;
  if (to === undefined) return `${start}; nothing is planned after it`;
  return `${start}, until ${next ?? 'what follows'} goes in on ${dated(to)}`;
}

/** Seasons as "27 of 30 seasons". */
function seasons({ of, among }: Share, noun: 'season' | 'winter'): string {
  return `${of} of ${among} ${noun}s`;
}

function sowLines({ sow, sowOn }: GapFit): FitLine[] {
  if (sow === undefined || sowOn === undefined) return [];
  const window = sow.earliest === sow.latest ? '' : `, at any time from ${dated(sow.earliest)} to ${dated(sow.latest)}`;
  return [{ what: 'Sow', text: `about ${dated(sowOn)}${window}` }];
}

/** What is known of a stand's odds. */
export function oddsLines({ establish, winter, bloom }: Pick<GapFit, 'establish' | 'winter' | 'bloom'>): FitLine[] {
  const lines: FitLine[] = [];
  if (establish !== undefined && establish.share.among > 0)
    lines.push({ what: 'Grown in time', text: `before hard cold in ${seasons(establish.share, 'season')}` });
  if (winter !== undefined && winter.lives.among > 0) {
    lines.push({ what: 'Winter', text: wintersTold(winter) });
  }
  if (bloom !== undefined) lines.push({ what: 'Flowers', text: flowersTold(bloom) });
  return lines.filter(({ text }) => text !== '');
}

/** The flowers of a cover; of a mix those of each part by its name, so that one without a figure hides no other's odds. */
function flowersTold(bloom: FitBloom): string {
  if (bloom.parts === undefined) return partTold(bloom);
  return bloom.parts.map((part) => `${part.cover}: ${partTold(part.bloom)}`).join('; ');
}

function partTold(bloom: PartBloom): string {
  if ('none' in bloom) return `${bloom.none}; look for buds from ${dated(bloom.lookFrom)}`;
  const risks = bloom.byRisk.map(({ percent, close }) => `${percent} % by ${dated(close)}`).join(', ');
  const event = EVENT_WORDS[bloom.event] ?? bloom.event;
  const seed = bloom.seed === undefined ? '' : `, viable seed about ${dated(bloom.seed)}`;
  const middle = bloom.median === undefined ? '' : `${event} about ${dated(bloom.median)}${seed} in the middle year`;
  const chance = risks === '' ? '' : `chance of ${bloom.seed === undefined ? 'it' : 'seed'}: ${risks}`;
  return [middle, chance].filter((part) => part !== '').join('; ');
}

/** The stages a cut comes before, as they are seen. */
const EVENT_WORDS: Readonly<Record<string, string>> = {
  anthesis: 'sheds pollen',
  heading: 'comes into ear',
  boot: 'swells before the ear',
  bud: 'in bud',
};

/** Winters as "lives through 20, dies in 4, open in 6 of 30 winters"; what never happened is left out. */
function wintersTold({ lives, dies, unsure }: NonNullable<GapFit['winter']>): string {
  const parts = [
    { words: 'lives through', share: lives },
    { words: 'dies in', share: dies },
    { words: 'open in', share: unsure },
  ].filter(({ share }) => share.of > 0);
  const [only] = parts;
  if (only !== undefined && parts.length === 1) return `${only.words} all ${only.share.among} winters`;
  const told = parts.map(({ words, share }) => `${words} ${share.of}`).join(', ');
  return `${told} of ${lives.among} winters`;
}

function endLines({ cut, next, winter }: GapFit): FitLine[] {
  const lines: FitLine[] = [];
  if (cut !== undefined) {
    const why = cut.decidedBy === 'next' ? 'for what follows' : 'before it flowers';
    lines.push({ what: 'Cut', text: `from ${dated(cut.window.earliest)} to ${dated(cut.window.latest)}, ${why}` });
  } else if (winter?.fate === 'unsure')
    lines.push({ what: 'Cut', text: 'what winter leaves alive: look in late winter' });
  else if (winter?.fate === 'dies') lines.push({ what: 'Cut', text: 'nothing to cut: winter ends it' });
  if (next !== undefined) lines.push({ what: 'Bed free again', text: `about ${dated(next.freeOn)}` });
  return lines;
}

function amountLines({ nitrogen, seed, needs, mulch }: GapFit): FitLine[] {
  const lines: FitLine[] = [];
  if (nitrogen !== undefined) {
    const { availableGPerM2, carbonToNitrogen } = nitrogen;
    const text =
      `${forTheNextCrop(availableGPerM2)}, ` +
      `carbon to nitrogen ${between(carbonToNitrogen, (value) => String(Math.round(value)))}`;
    lines.push({ what: 'Nitrogen', text });
  }
  if (seed.length > 0)
    lines.push({
      what: 'Seed',
      text: seed.map(({ part, grams }) => `${part.cover.name.toLowerCase()} ${bothWeights(grams)}`).join(', '),
    });
  for (const { cover, cm } of needs.depths)
    if (seed.length > 0)
      lines.push({
        what: needs.depths.length === 1 ? 'Depth' : `Depth of ${cover}`,
        text: between(cm, (value) => quantity(value, 'cm')),
      });
  if (mulch !== undefined)
    lines.push({ what: 'Amount', text: `${quantity(mulch.litres, 'L')}, ${quantity(mulch.depthMm, 'mm')} deep` });
  return lines;
}

/** Nitrogen left to the next crop, or tied up by residue that rots: a minus would have to be explained. */
function forTheNextCrop({ low, high }: Span): string {
  const grams = (value: number) => quantity(value, 'gPerM2');
  if (low >= 0) return `${between({ low, high }, grams)} for the next crop`;
  if (high <= 0) return `ties up ${between({ low: -high, high: -low }, grams)} while it rots`;
  return `from as much as ${grams(-low)} tied up while it rots to ${grams(high)} for the next crop`;
}

/** A weight both ways, whatever the reader's units: seed is sold in either. */
export function bothWeights(grams: number): string {
  return `${formatQuantity({ value: grams, unit: 'g' }, 'metric')} (${formatQuantity({ value: grams, unit: 'g' }, 'us')})`;
}

/** The day to order seed by, or that it is past. May hold a marked day. */
export function orderBy(by: Day, today: Day): string {
  return by < today ? 'now' : dated(by);
}

/** What is said of a gap that no cover can serve. */
export function noCoverWords(fits: readonly GapFit[]): string {
  const unknown = fits.flatMap(({ cons }) => cons).find(({ rule }) => rule === 'cover-fit.no-dates');
  return unknown === undefined ? 'No cover can serve here: mulch it.' : reasonSentence(unknown);
}

function between({ low, high }: Span, write: (value: number) => string): string {
  const [from, to] = [write(tenth(low)), write(tenth(high))];
  return from === to ? from : `${from} to ${to}`;
}

/** A told line in the reader's units. */
export function readableLine({ what, text }: FitLine, units: UnitSystem, beside: Day): string {
  return `${what}: ${readableFit(text, units, beside)}`;
}

/**
 * What is told of a choice, in the reader's units: a year that several days share stands once, with the last of them, and a
 * unit that both ends of a span share stands once, behind them.
 */
export function readableFit(text: string, units: UnitSystem, beside: Day): string {
  const days = [...text.matchAll(/⟦(\d{4})-\d{2}-\d{2}⟧/g)];
  const last = days.at(-1);
  const years = new Set(days.map(([, year]) => year));
  const read =
    last === undefined || years.size > 1
      ? readableIn(units, text, beside)
      : readableIn(units, text.slice(0, last.index), `${last[1]}-01-01`) +
        readableIn(units, text.slice(last.index), beside);
  return read.replace(SAME_UNIT, '$1 to $3 $2');
}

/** "¾ in to 1 ½ in", "0 oz per 100 sq ft to 2 oz per 100 sq ft". */
const SAME_UNIT = /([\d.¼½¾⅛⅜⅝⅞]) ([a-z][^\d,;]*(?:100 sq ft|[a-z²])) to ([\d.¼½¾⅛⅜⅝⅞ ]+) \2(?![a-z])/g;
