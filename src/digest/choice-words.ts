/**
 * What has to be said of a choice before it is accepted: what it takes the place of, why it is far off, and what speaks
 * against it. Texts may hold marked amounts and days.
 */

import type { Fact } from '../garden/facts.ts';
import type { Garden } from '../garden/garden.ts';
import { capital } from '../measures/capital.ts';
import { type Day, daysBetween } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import { type BedGaps, gapOn } from '../practices/cover-cropping/fit/bed-gaps.ts';
import { type ChosenFit, chosenFit } from '../practices/cover-cropping/fit/chosen-fit.ts';
import { passedOver } from '../practices/cover-cropping/fit/passed-over.ts';
import { fitGap } from '../practices/cover-cropping/fit/sown-fit.ts';
import { lastOrderDay } from '../practices/cover-cropping/sow-drafts.ts';
import type { SowingHalf } from '../practices/cover-cropping/sow-window.ts';
import { coverName } from '../practices/covers.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { type FitLine, fitTold, gapInWords, oddsLines, VERDICT_WORDS } from './fit-words.ts';

/** Days ahead from which a sowing day is far off and has to be explained: half a year. House default. */
const FAR_OFF_DAYS = 183;

type Choice = Extract<Fact, { kind: 'stand-planned' | 'stand-dropped' | 'mulch-planned' }>;
type StandPlanned = Extract<Fact, { kind: 'stand-planned' }>;

/** What is said of a choice. */
export interface ChoiceNotes {
  /** What it takes the place of, and why it is as far off as it is. */
  told: readonly string[];
  /** The odds of a cover sown on that day: of coming up, of winter and of its flowers. */
  odds?: readonly FitLine[];
  /** That it fits badly or not at all, where it does. */
  verdict?: string;
  /** The reasons. */
  against: readonly string[];
}

/** A choice with the gaps of the bed it is for. */
export interface ChosenInBed {
  choice: Choice;
  gaps: BedGaps;
}

/**
 * The notes of a choice.
 *
 * @param after the garden as it would be with the choice taken in
 */
export function choiceNotes(input: PracticeInput, { choice, gaps }: ChosenInBed, after: Garden): ChoiceNotes {
  const places = takenPlaces(input.garden, choice, after);
  if (choice.kind !== 'stand-planned') return { told: places, against: [] };
  const chosen = chosenFit(input, gaps, choice.coverId, choice.sowOn);
  const odds = chosen !== undefined && 'fit' in chosen ? { odds: oddsLines(chosen.fit) } : {};
  return {
    told: [...places, ...lateToOrder(input, choice), ...farOff(input, gaps, choice)],
    ...odds,
    ...badFit(chosen, choice),
  };
}

/** Planned covers and mulches that are there before and not after. */
function takenPlaces(before: Garden, choice: Choice, after: Garden): string[] {
  const dropped = choice.kind === 'stand-dropped' ? choice.standId : undefined;
  const stands = before.stands.flatMap(({ id, coverId, sow }) => {
    const now = after.stands.find((stand) => stand.id === id);
    if (now === undefined && id !== dropped)
      return [`It takes the place of the ${coverName(coverId)} planned for ${dated(sow.day)}.`];
    return now !== undefined && now.sow.day !== sow.day ? [`It was planned for ${dated(sow.day)} before.`] : [];
  });
  const mulches = before.mulches
    .filter((mulch) => !after.mulches.includes(mulch))
    .map(({ mulch, from }) => `It takes the place of the mulch of ${mulch} chosen from ${dated(from)} on.`);
  return [...stands, ...mulches];
}

/** That seed by post comes late for it, where the day to order it is past. */
function lateToOrder({ today }: PracticeInput, { sowOn }: StandPlanned): string[] {
  const by = lastOrderDay(sowOn);
  if (by >= today || sowOn < today) return [];
  return [
    `It is late to order its seed: for a sowing about ${dated(sowOn)} that was to be done by ${dated(by)}. Choose it if you ` +
      'have the seed or can buy it nearby; what is ordered by post now may come too late.',
  ];
}

/** The times of the year in which covers are sown: a kind may have two. */
const WHEN: Readonly<Record<SowingHalf, string>> = {
  spring: 'in spring',
  summer: 'in the warm months',
  autumn: 'before winter',
};

/** Why a cover goes in as late as it does. */
function farOff(input: PracticeInput, gaps: BedGaps, { coverId, sowOn }: StandPlanned): string[] {
  if (daysBetween(input.today, sowOn) < FAR_OFF_DAYS) return [];
  const gap = gapOn(gaps, sowOn);
  const best = gap?.fits.find(({ choice }) => choice.choice === 'cover' && choice.coverId === coverId);
  // A day the gardener named needs no explaining.
  if (gap === undefined || best?.sowOn !== sowOn) return [];
  const earlier = gaps.gaps.slice(0, gaps.gaps.indexOf(gap)).flatMap(({ span, fits }) => {
    const fit = fits.find(({ choice }) => choice.choice === 'cover' && choice.coverId === coverId);
    const [why] = fit?.verdict === 'unusable' ? fitTold(fit).cons : [];
    return why === undefined ? [] : [`Not in the gap before (${gapInWords(fitGap(span))}): ${why}`];
  });
  const times = passedOver(input, gap.span, coverId, sowOn);
  const open = times.filter(({ over }) => !over);
  const told = [
    ...times
      .filter(({ over }) => over)
      .slice(-1)
      .map(
        ({ window: { latest }, half, opens }) =>
          `The time to sow ${coverName(coverId)} ${WHEN[half]} ends on ${dated(latest)}; the bed is free only from ${dated(opens)}, ` +
          `so it is sown about ${dated(sowOn)}.`,
      ),
    ...open.map(
      ({ window: { earliest, latest } }) =>
        `It could go in from ${dated(earliest)} to ${dated(latest)} too; about ${dated(sowOn)} serves this gap better.`,
    ),
  ];
  if (earlier.length === 0) return told;
  return [...earlier, `It is planned for the gap ${gapInWords(fitGap(gap.span))}.`, ...told];
}

function badFit(
  chosen: ChosenFit | undefined,
  { coverId, sowOn }: StandPlanned,
): Pick<ChoiceNotes, 'verdict' | 'against'> {
  if (chosen === undefined) return { against: [] };
  if ('outside' in chosen) return outside(chosen.outside, coverId, sowOn);
  const { verdict, name } = chosen.fit;
  if (verdict !== 'poor' && verdict !== 'unusable') return { against: [] };
  return { verdict: `${capital(name)} ${VERDICT_WORDS[verdict]} here`, against: fitTold(chosen.fit).cons };
}

function outside(
  windows: readonly { earliest: Day; latest: Day }[],
  coverId: string,
  sowOn: Day,
): Pick<ChoiceNotes, 'verdict' | 'against'> {
  const verdict = `${capital(coverName(coverId))} does not fit on that day`;
  const spans = windows.map(({ earliest, latest }) => `from ${dated(earliest)} to ${dated(latest)}`);
  const why =
    spans.length === 0
      ? `It has no time to be sown in this gap, and ${dated(sowOn)} lies in it.`
      : `In this gap it can be sown ${spans.join(', or ')}; a day near those is moved to the nearest of them.`;
  return { verdict, against: [why] };
}
