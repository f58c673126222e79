/**
 * What winter would do to a stand, its parts taken together.
 */
import { lethalRange } from '../../../handbook/cover-cold.ts';
import type { CoverCrop } from '../../../handbook/shapes/cover.ts';
import { provenanceOf } from '../../../handbook/shapes/row.ts';
import type { Day } from '../../../measures/days.ts';
import type { CoverPart } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { isAfterMidsummer } from '../../seasons.ts';
import { fateOf, winterFate, yearlyMinimumC } from '../winter.ts';
import { type CountedWinters, countedWinters, type WinterEnd, wintersThat } from '../winter-odds.ts';
import type { Share, WinterOdds } from './fit.ts';

/**
 * The odds of a stand sown on a day. A part whose winters cannot be counted ends every winter as its zone says; where none
 * can, no winter is counted at all.
 *
 * @returns nothing for sowings of spring, and for stands that the first freeze ends
 */
export function winterOdds(input: PracticeInput, parts: readonly CoverPart[], sowOn: Day): WinterOdds | undefined {
  if (!isAfterMidsummer(input.climate, sowOn) || parts.every(({ cover }) => cover.frostTender)) return undefined;
  const each = parts.map(({ cover }) => {
    const counted = countedWinters(cover, input, sowOn);
    return { cover, counted, fate: counted ? fateOf(counted.ends) : winterFate(cover, input) };
  });
  const among = Math.max(0, ...each.map(({ counted }) => counted?.ends.length ?? 0));
  const ends = Array.from({ length: among }, (_, winter) =>
    together(each.map(({ counted, fate }) => counted?.ends[winter] ?? fate)),
  );
  const share = (end: WinterEnd): Share => ({ of: wintersThat(end, ends), among });
  return {
    fate: among > 0 ? fateOf(ends) : together(each.map(({ fate }) => fate)),
    coldKnown: among > 0 || yearlyMinimumC(input) !== undefined,
    lives: share('lives'),
    unsure: share('unsure'),
    dies: share('dies'),
    parts: each.map(({ cover, counted, fate }) => ({
      cover: cover.name.toLowerCase(),
      fate,
      ...knownBy(cover, counted),
    })),
  };
}

/** A stand is alive where any part is, and dead only where all are. */
function together(ends: readonly WinterEnd[]): WinterEnd {
  if (ends.includes('lives')) return 'lives';
  return ends.every((end) => end === 'dies') ? 'dies' : 'unsure';
}

function knownBy(cover: CoverCrop, counted: CountedWinters | undefined) {
  if (counted !== undefined) {
    const { range, provenance, sources } = counted;
    return { rangeC: range, origin: { provenance, sources } };
  }
  const limit = cover.hardinessZoneMin === undefined ? lethalRange(cover) : undefined;
  if (limit !== undefined) {
    return { rangeC: limit.tempC, origin: { provenance: limit.provenance, sources: limit.sources } };
  }
  const from = cover.readIn?.hardinessZoneMin;
  const provenance = provenanceOf(cover, 'hardinessZoneMin');
  return { origin: { provenance, sources: from === undefined ? [] : [from] } };
}
