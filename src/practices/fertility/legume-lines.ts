/**
 * What covers and pulses leave to the crops after them. A cover feeds the crop that goes in next, once.
 */

import type { Bed, Stand } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { tenth } from '../../measures/tenth.ts';
import { type CropSpan, cropSpans, cropYear } from '../bed-timeline.ts';
import type { Reason, ReasonSource } from '../draft.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { midwinterAfter, soilAwake } from '../seasons.ts';
import { coveredShare, growingParts, grownSince, standName } from '../stand-cover.ts';
import { type Origin, standNitrogen } from '../stand-nitrogen.ts';
import { shareOf } from './crop-needs.ts';
import { between, certain, type Grams, type LedgerLine, seen, times } from './ledger-line.ts';

/** Nitrogen that peas or beans leave with their roots and tops, g/m²: 20 to 40 lb an acre. From memory. */
const PULSE_NITROGEN = between(2.2, 4.5);
/** Days after its end, in soil that is awake, within which a cover still feeds what follows; most comes in four to six weeks (cover:S7). House default. */
const COVER_FEEDS_DAYS = 90;
/** The most a legume cover is published to give, g/m²: 100 lb an acre (cover:S7). */
const MOST_GIVEN = 11.2;
/** What a vigorous legume sod gives, g/m²: 100 lb an acre (veg:V15). */
const SOD_NITROGEN = 11.2;
/** Days a clover has to have stood to count as a sod. House default: a year. */
const SOD_DAYS = 365;

/** A cover whose residue had all its time before winter is spent by spring. */
function isSpent({ climate }: PracticeInput, ends: Day, next: CropSpan): boolean {
  const winter = midwinterAfter(climate, ends);
  return winter < next.from && addDays(ends, COVER_FEEDS_DAYS) < winter;
}

/** A cover and the day it is over. */
interface Ended {
  stand: Stand;
  ends: Day;
}

/** A line for every cover whose next crop is one of the season. */
export function coverLines(
  input: PracticeInput,
  { coverStands }: Pick<Findings, 'coverStands'>,
  bed: Bed,
  season: number,
): LedgerLine[] {
  const { garden, climate } = input;
  const crops = cropSpans(garden, bed.id, climate);
  const stands = [...inBed(garden.stands, bed.id)].sort((a, b) => (a.id < b.id ? -1 : 1));
  return stands.flatMap((stand) => {
    const ends =
      stand.cutOn ?? stand.deadOn ?? inBed(coverStands, bed.id).find(({ standId }) => standId === stand.id)?.ends;
    const next = ends === undefined ? undefined : crops.find(({ from }) => from >= ends);
    if (ends === undefined || next === undefined || cropYear(next, climate) !== season) return [];
    return feeds(input, ends, next) ? (coverLine(input, { stand, ends }) ?? []) : [];
  });
}

/** Whether a crop goes in while a cover's residue still feeds: in frozen soil nothing rots. */
function feeds(input: PracticeInput, ends: Day, next: CropSpan): boolean {
  const { climate } = input;
  if (isSpent(input, ends, next)) return false;
  const awake = soilAwake(climate, cropYear(next, climate));
  const from = awake !== undefined && awake <= next.from ? latestOf(ends, awake) : ends;
  return next.from <= addDays(from, COVER_FEEDS_DAYS);
}

function coverLine(input: PracticeInput, ended: Ended): LedgerLine | undefined {
  const { stand, ends } = ended;
  const cover = standName(stand);
  const share = coveredShare(stand) ?? 1;
  if (isSod(ended)) {
    const saw = { cover, percent: Math.round(100 * share), usualGPerM2: tenth(SOD_NITROGEN * share) };
    return line(cover, certain(SOD_NITROGEN * share), { rule: 'ledger.sod', saw, source: 'veg:V15' });
  }
  const held = standNitrogen(input, growingParts(stand), lifeOf(input, ended));
  if (held === undefined) return undefined;
  const { low, high } = held.availableGPerM2;
  const gives = times(between(Math.min(low, MOST_GIVEN), Math.min(high, MOST_GIVEN)), share);
  const saw = {
    cover,
    on: ends,
    dryLowGPerM2: Math.round(1000 * held.dryKgPerM2.low),
    dryHighGPerM2: Math.round(1000 * held.dryKgPerM2.high),
    percentLow: tenth(held.percentN.low),
    percentHigh: tenth(held.percentN.high),
    percent: Math.round(100 * share),
    ...seen(gives),
  };
  const rule = low < 0 ? 'ledger.cover-ties-up' : 'ledger.cover';
  return line(cover, gives, { rule, saw, source: sourceOf(held.origin) });
}

function line(of: string, gPerM2: Grams, reason: Reason): LedgerLine {
  return { side: 'give', of, gPerM2, reason };
}

function sourceOf({ provenance, sources }: Origin): ReasonSource {
  if (provenance === 'from memory' || provenance === 'house default') return provenance;
  return sources[0] ?? 'cover:S7';
}

function isSod({ stand, ends }: Ended): boolean {
  const clovers = growingParts(stand).every(({ cover }) => cover.inoculant === 'red and white clover');
  return clovers && addDays(grownSince(stand), SOD_DAYS) <= ends;
}

/** How long a stand grew, and how old it was: one found dead after winter stopped growing by midwinter. */
function lifeOf({ climate }: PracticeInput, { stand, ends }: Ended): Parameters<typeof standNitrogen>[2] {
  const sown = grownSince(stand);
  const dead = stand.cutOn === undefined && stand.deadOn !== undefined;
  if (dead) return { sown, end: earliestOf(ends, midwinterAfter(climate, sown)), stage: 'green' };
  const inFlower = stand.seen?.some(({ stage, on }) => stage === 'in-bloom' && on <= ends) ?? false;
  if (inFlower) return { sown, end: ends, stage: 'in flower' };
  // Cut before its first winter it was leafy; after one it stands somewhere between leaf and flower.
  return { sown, end: ends, stage: ends <= midwinterAfter(climate, sown) ? 'green' : 'between' };
}

/** A line for all peas and beans of one kind whose next crop, other than such, is one of the season: on their own share. */
export function pulseLines({ garden, climate }: PracticeInput, bed: Bed, season: number): LedgerLine[] {
  const all = cropSpans(garden, bed.id, climate);
  const left = all.flatMap((span) => {
    const { crop, to } = span;
    if (crop.nitrogen !== 'legume-fixer' || to === undefined) return [];
    const next = all.find((other) => other.from >= to && other.crop.nitrogen !== 'legume-fixer');
    if (next === undefined || cropYear(next, climate) !== season || season - cropYear(span, climate) > 1) return [];
    return [{ of: crop.name.toLowerCase(), next: next.crop.name.toLowerCase(), share: shareOf(bed, span) }];
  });
  return [...new Set(left.map(({ of }) => of))].map((crop) => {
    const ofKind = left.filter(({ of }) => of === crop);
    const share = Math.min(
      1,
      ofKind.reduce((sum, each) => sum + each.share, 0),
    );
    const gives = times(PULSE_NITROGEN, share);
    const saw = { crop, next: ofKind[0]?.next ?? '', percent: Math.round(100 * share), ...seen(gives) };
    return line(`roots and tops of the ${crop}`, gives, { rule: 'ledger.pulse', saw, source: 'from memory' });
  });
}
