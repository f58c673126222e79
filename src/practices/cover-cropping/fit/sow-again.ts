/**
 * What the thin places of a young stand can still be sown with: the same again while its time and its odds hold, else the
 * kind that serves best of those that can still be sown.
 */
import { usualOf } from '../../../climate/logged.ts';
import type { Bed, Stand } from '../../../garden/garden.ts';
import { coverCrops } from '../../../handbook/cover-crops.ts';
import { addDays, type Day, daysBetween, earliestOf } from '../../../measures/days.ts';
import type { Gap } from '../../bed-timeline.ts';
import { type CoverPart, coverParts } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { isAfterMidsummer } from '../../seasons.ts';
import { LEAST_GROWTH_DAYS } from '../cut-window.ts';
import { nextStand } from '../followers.ts';
import type { OpenSpan } from '../open-spans.ts';
import { heldBetween, type SowingHalf, type SowWindow } from '../sow-window.ts';
import type { GapFit } from './fit.ts';
import { bestFirst } from './gap-fits.ts';
import { type Sowing, sowingsIn } from './sowings.ts';
import { sownFit } from './sown-fit.ts';

/** Days from a look within which a kind must be sowable to be sown into thin places: ground is not left bare for it. House default. */
const SOON_DAYS = 7;
/** Days from a look on which its thin places are best sown. House default: the next weekend but for the worst weeks. */
const BEST_DAYS = 3;

/** Days such a sowing has to stay open at the least, so that a day of work lies in it. House default. */
const LEAST_OPEN_DAYS = 4;

/** A sowing of thin places. */
export interface SowAgain {
  coverId: string;
  parts: readonly CoverPart[];
  sow: SowWindow;
  fit: GapFit;
}

/** A young stand that was looked at, in its gap between crops. */
interface ThinStand {
  stand: Stand;
  bed: Bed;
  gap: Gap;
  /** Whether so little came up that what is sown now may be of any kind, and is cut in its own time. */
  anew: boolean;
  /** The last day to cut what did come up, and what is sown among it; absent where nothing has to be cut. */
  cutBy?: Day;
}

/** What can be sown from the day of a look on; nothing where no kind's time and odds hold. */
export function sowAgain(given: PracticeInput, thin: ThinStand, from: Day): SowAgain | undefined {
  const input = { ...given, climate: usualOf(given.climate) };
  const [own] = triedIn(input, thin, from, thin.stand.coverId);
  if (own !== undefined) return own;
  return coverCrops.flatMap(({ id }) => triedIn(input, thin, from, id)).sort((a, b) => bestFirst(a.fit, b.fit))[0];
}

/** A cover a few days after the look, or on the first day where that alone leaves it its odds: good or possible then. */
function triedIn(input: PracticeInput, thin: ThinStand, from: Day, coverId: string): SowAgain[] {
  const { bed } = thin;
  const span = spanFrom(input, thin, from);
  const parts = coverParts(coverId);
  if (!thin.anew && isTender(parts) !== isTender(coverParts(thin.stand.coverId))) return [];
  const sowings = sowingsIn(input, span, parts, from);
  if (typeof sowings === 'string') return [];
  return sowings.flatMap((sowing) => {
    const soon = soonIn(input, thin, from, sowing);
    const { earliest = from, latest = from } = soon?.window ?? {};
    const days = [earliestOf(addDays(earliest, BEST_DAYS), latest), earliest];
    return days
      .flatMap((preferred): SowAgain[] => {
        if (soon === undefined) return [];
        const sow = { ...soon, window: { earliest, preferred, latest } };
        const trial = { input, bed, span, coverId, parts };
        return [{ coverId, parts, sow, fit: sownFit(trial, { ...sowing, sow }, preferred) }];
      })
      .filter(({ fit }) => fit.verdict === 'good' || fit.verdict === 'possible')
      .slice(0, 1);
  });
}

/** The days of a sowing that are left to thin places, where they begin soon, are enough, and suit what grows already. */
function soonIn(input: PracticeInput, thin: ThinStand, from: Day, { sow: rule }: Sowing): SowWindow | undefined {
  const grows = thin.anew || thin.cutBy === undefined ? undefined : addDays(thin.cutBy, -LEAST_GROWTH_DAYS);
  const sow = heldBetween(rule, from, grows);
  if (sow === undefined || sow.window.earliest > addDays(from, SOON_DAYS)) return undefined;
  if (daysBetween(sow.window.earliest, sow.window.latest) < LEAST_OPEN_DAYS) return undefined;
  return thin.anew || sow.half === halfOf(input, thin.stand) ? sow : undefined;
}

/** The rest of the gap, up to what is planned next in it. */
function spanFrom(input: PracticeInput, { stand, gap }: ThinStand, from: Day): OpenSpan {
  const next = nextStand(input, stand.bedId, stand.sow.day);
  if (next === undefined || (gap.to !== undefined && next.sow.day >= gap.to)) return { ...gap, from };
  const { next: _crop, ...open } = gap;
  return { ...open, from, to: next.sow.day, nextCover: next.coverId };
}

function isTender(parts: readonly CoverPart[]): boolean {
  return parts.every(({ cover }) => cover.frostTender);
}

/** What grows together is sown in the same part of the year: its cut is then one. */
function halfOf({ climate }: PracticeInput, { coverId, sow }: Stand): SowingHalf {
  if (isTender(coverParts(coverId))) return 'summer';
  return isAfterMidsummer(climate, sow.day) ? 'autumn' : 'spring';
}
