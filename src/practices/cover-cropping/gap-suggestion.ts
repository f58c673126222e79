/**
 * Which cover to suggest for a gap that nobody planned for.
 *
 * The choice follows a published table of uses (Cornell, handbook of cover crops): a bed wanted early gets a cover that
 * winter kills; one wanted from late spring on may carry rye or rye with vetch through winter; a warm gap of five to
 * eight weeks gets buckwheat.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { dayOfIndex, seasonOf } from '../../climate/season.ts';
import type { Bed, Stand } from '../../garden/garden.ts';
import type { SourceId } from '../../handbook/shapes.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { type Gap, soonest } from '../bed-timeline.ts';
import { coverName, coverParts, waitDaysOf } from '../covers.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { livesThroughWinter } from './bloom.ts';
import { FINISH_DAYS, growsAgain } from './cut-window.ts';
import { heldInGap, type SowWindow, sowWindow } from './sow-window.ts';
import { type StandInBed, standInBed } from './stand.ts';

/** Days after the median last freeze from which a bed may still carry a living cover. "Mid-May or later" in New York. */
const LATE_BED_DAYS = 14;
/** Days a stand must grow to have been worth the seed. House default: buckwheat's 40 warm days (cover:S4a). */
const LEAST_STAND_DAYS = 40;

/** A suggested stand with its window and the reason for the kind. */
export interface Suggestion {
  at: StandInBed;
  sow: SowWindow;
  why: Reason;
}

interface Candidate {
  coverId: string;
  why: 'warm gap' | 'wanted early' | 'wanted late' | 'hungry crop next' | 'spring gap';
  source: SourceId;
}

/** Season indices that stand for the three sowing times of a season: spring, early summer, late summer. */
const SOWING_INDICES = { spring: 100, warm: 170, autumn: 227 } as const;
type SowingTime = keyof typeof SOWING_INDICES;

/** Days before the median first freeze after which a warm cover is no longer suggested (Cornell: 15 August at Geneva). */
const WARM_LAST_DAYS = 65;

/** The first cover of the table that the gap and the season let in, from a day on. */
export function suggestedStand(input: PracticeInput, bed: Bed, gap: Gap, from: Day): Suggestion | undefined {
  const turn = input.climate.seasonTurn;
  const season = seasonOf(turn, from);
  for (const year of [season, season + 1]) {
    for (const time of ['spring', 'warm', 'autumn'] as const) {
      const wanted = dayOfIndex(turn, year, SOWING_INDICES[time]);
      for (const candidate of candidates(input, gap, wanted, time)) {
        const found = tryCover(input, bed, gap, from, wanted, candidate);
        if (found !== undefined) return found;
      }
    }
  }
  return undefined;
}

function candidates(input: PracticeInput, gap: Gap, wanted: Day, time: SowingTime): Candidate[] {
  if (time === 'spring') return [{ coverId: 'oats-field-pea', why: 'spring gap', source: 'cover:S4c' }];
  if (time === 'warm') return [{ coverId: 'buckwheat', why: 'warm gap', source: 'cover:S4a' }];
  const legumeNear = [gap.before, gap.next].some((span) => span?.crop.rotationGroup === 'legume');
  const killed = (legumeNear ? ['oats'] : ['oats-field-pea', 'oats']).map(
    (coverId): Candidate => ({ coverId, why: 'wanted early', source: 'cover:S2a' }),
  );
  if (!wantedLate(input, gap, wanted)) return killed;
  const rye: Candidate = { coverId: 'cereal_rye', why: 'wanted late', source: 'cover:S4i' };
  if (gap.next?.crop.nitrogen === 'high') {
    return [{ coverId: 'rye-vetch', why: 'hungry crop next', source: 'cover:S4l' }, ...killed, rye];
  }
  return [...killed, rye];
}

/** Whether the next crop leaves a living cover its spring: it goes in two weeks after the median last freeze or later. */
function wantedLate(input: PracticeInput, gap: Gap, wanted: Day): boolean {
  if (gap.to === undefined) return true;
  const season = seasonAfter(input.climate, wanted);
  const freeze = freezeDay(input.climate, { event: 'last-spring', limitF: 32, season, chancePercent: 50 });
  return freeze !== undefined && gap.to >= addDays(freeze, LATE_BED_DAYS);
}

function tryCover(
  input: PracticeInput,
  bed: Bed,
  gap: Gap,
  from: Day,
  wanted: Day,
  candidate: Candidate,
): Suggestion | undefined {
  const stand = suggestedStandOf(input, bed, gap, candidate.coverId, wanted);
  const at = standInBed(stand, bed);
  const rule = sowWindow(at.parts, wanted, input.climate, input.garden.place.frostRisk);
  const last = lastSuggested(input, gap, wanted, candidate);
  const sow = rule && heldInGap(rule, gap.from, last);
  if (sow === undefined || sow.window.latest < from) return undefined;
  return {
    at,
    sow,
    why: {
      rule: 'cover-sow.suggested',
      saw: {
        cover: coverName(candidate.coverId),
        why: candidate.why,
        ...(gap.next && gap.to ? { next: gap.next.crop.name.toLowerCase(), to: gap.to } : {}),
      },
      source: candidate.source,
    },
  };
}

/** The last day a candidate is worth sowing: before the next crop, and a warm one well before the freeze. */
function lastSuggested(input: PracticeInput, gap: Gap, wanted: Day, candidate: Candidate): Day | undefined {
  const season = seasonOf(input.climate.seasonTurn, wanted);
  const beforeNext = gap.to === undefined ? undefined : lastBefore(input, gap.to, season, candidate);
  if (candidate.why !== 'warm gap') return beforeNext;
  const freeze = freezeDay(input.climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  return soonest(beforeNext, freeze === undefined ? undefined : addDays(freeze, -WARM_LAST_DAYS));
}

/** A stand that winter will not end before the next crop has to grow, be cut and settle first. */
function lastBefore(input: PracticeInput, next: Day, season: number, candidate: Candidate): Day {
  const midwinter = dayOfIndex(input.climate.seasonTurn, season + 1, 1);
  const parts = coverParts(candidate.coverId);
  const ended = next > midwinter && !parts.some(({ cover }) => livesThroughWinter(cover, input.climate));
  const settle = ended ? 0 : Math.max(waitDaysOf(parts).smallSeed, growsAgain(parts) ? FINISH_DAYS : 0);
  return addDays(next, -(LEAST_STAND_DAYS + settle));
}

/** The stand a suggestion would make. Its id hangs on the gap and the season, so that it cannot be made twice. */
function suggestedStandOf(input: PracticeInput, bed: Bed, gap: Gap, coverId: string, wanted: Day): Stand {
  const gapName = gap.before ? `after-${gap.before.planting.id}` : 'first';
  const id = `${bed.id}-${gapName}-${seasonOf(input.climate.seasonTurn, wanted)}-${coverId}`;
  return { id, bedId: bed.id, coverId, sow: { day: wanted, happened: false }, regrowthCheckedOn: [] };
}
