/**
 * The beds' gaps with what may lie in them, as lines of text and as JSON.
 */
import { type CoverToSow, sownWhen } from '../../digest/cover-sowings.ts';
import {
  bothWeights,
  fitTold,
  gapInWords,
  noCoverWords,
  readableFit,
  readableLine,
  ruledOut,
} from '../../digest/fit-words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { BedGaps, GapOfBed } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { choiceName, type GapFit } from '../../practices/cover-cropping/fit/fit.ts';
import type { SeedToBuy } from '../../practices/cover-cropping/fit/seed-to-buy.ts';
import { fitGap } from '../../practices/cover-cropping/fit/sown-fit.ts';
import { coverName } from '../../practices/covers.ts';

/** Who reads, and on which day. */
interface Reader {
  units: UnitSystem;
  today: string;
  /** The covers its plan asks to sow. */
  toSow: readonly CoverToSow[];
}

/** Choices told whole before the rest are only named. House default. */
const TOLD_WHOLE = 3;

/** Every bed's gaps, with the choices from the best to what a rule forbids; of a single bed, every one of them. */
export function seasonEndLines(beds: readonly BedGaps[], seed: readonly SeedToBuy[], reader: Reader): string[] {
  const all = beds.length === 1;
  const lines = beds.flatMap((bed) => bedLines(bed, reader, all));
  return [...lines.slice(1), ...seedLines(seed, reader)];
}

function bedLines({ bed, gaps }: BedGaps, reader: Reader, all: boolean): string[] {
  if (gaps.length === 0) return ['', `${bed.name}: no gap in the next two years.`];
  return gaps.flatMap((gap) => gapLines(bed.name, gap, reader, all));
}

function gapLines(bedName: string, gap: GapOfBed, reader: Reader, all: boolean): string[] {
  const { units, today } = reader;
  const words = readableIn(units, gapInWords(fitGap(gap.span)), today);
  const usable = gap.fits.filter(({ verdict }) => verdict !== 'unusable');
  const told = all ? usable : usable.slice(0, TOLD_WHOLE);
  const more = usable.slice(told.length).map(({ name }) => name);
  const noCover = usable.every(({ choice }) => choice.choice === 'mulch');
  return [
    '',
    ...wrapped(`${bedName}: ${words}.`, '', '  '),
    ...meantLines(gap, reader),
    ...(noCover ? wrapped(noCoverWords(gap.fits), '  ', '  ') : []),
    ...told.flatMap((fit, at) => fitLines(fit, at < TOLD_WHOLE, reader)),
    ...(more.length === 0 ? [] : wrapped(`After these: ${more.join(', ')}.`, '  ', '    ')),
    ...(all ? outLines(gap, reader) : []),
  ];
}

function outLines({ fits }: GapOfBed, { units, today }: Reader): string[] {
  const out = ruledOut(fits).map(({ why, names }) => `${names.join(', ')}: ${readableIn(units, why, today)}`);
  return out.length === 0 ? [] : ['  Does not fit:', ...out.flatMap((text) => wrapped(text, '    ', '      '))];
}

function meantLines({ planned, mulch }: GapOfBed, { units, today, toSow }: Reader): string[] {
  const stands = planned.map(
    ({ stand }) => `  Planned: ${coverName(stand.coverId)}, ${readableIn(units, sownWhen(stand, toSow), today)}.`,
  );
  return mulch === undefined ? stands : [...stands, `  Chosen: a mulch of ${mulch.mulch}.`];
}

function fitLines(fit: GapFit, whole: boolean, { units, today }: Reader): string[] {
  const { name, verdict, lines, pros, cons } = fitTold(fit);
  const head = `  ${name} (${choiceName(fit.choice)}): ${verdict}`;
  const best = [
    ...pros.slice(0, whole ? pros.length : 1).map((text) => `+ ${text}`),
    ...cons.slice(0, whole ? cons.length : 1).map((text) => `- ${text}`),
  ];
  return [
    head,
    ...(whole ? lines.flatMap((line) => wrapped(readableLine(line, units, today), '    ', '      ')) : []),
    ...best.flatMap((text) => wrapped(readableFit(text, units, today), '    ', '      ')),
  ];
}

function seedLines(seed: readonly SeedToBuy[], { units, today }: Reader): string[] {
  if (seed.length === 0) return [];
  return [
    '',
    'Seed to buy for what is planned:',
    ...seed.map(
      ({ cover, grams, by }) =>
        `  ${cover}: ${bothWeights(grams)}, ${by < today ? 'now' : `by ${readableIn(units, `⟦${by}⟧`, today)}`}`,
    ),
  ];
}

/** The same for {@link writeJson}. */
export function seasonEndJson(beds: readonly BedGaps[], seed: readonly SeedToBuy[]): object {
  return {
    beds: beds.map(({ bed, gaps }) => ({
      bed: bed.id,
      name: bed.name,
      gaps: gaps.map(({ span, fits, planned, mulch }) => ({
        ...fitGap(span),
        planned: planned.map(({ stand, from, ends }) => ({ stand: stand.id, cover: stand.coverId, from, ends })),
        ...(mulch === undefined ? {} : { mulch: mulch.mulch }),
        choices: fits.map(fitJson),
      })),
    })),
    seed,
  };
}

function fitJson(fit: GapFit): object {
  const { bedId: _bed, gap: _gap, points: _points, choice, seed, ...known } = fit;
  const { pros, cons } = fitTold(fit);
  return {
    ...known,
    choice: choiceName(choice),
    seed: seed.map(({ part, gPerM2, grams }) => ({ cover: part.cover.id, gPerM2, grams })),
    pros,
    cons,
  };
}
