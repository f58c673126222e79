/**
 * A proposal in words, for every place that shows one. Texts may hold marked amounts and days.
 */
import { vegetableById } from '../../handbook/vegetables.ts';
import { amountInWords, givingWayInWords, ruleInWords, wishInWords } from '../../practices/rotation-plan/sentences.ts';
import { isMet } from '../../practices/rotation-plan/wishes.ts';
import type { Conflict } from '../rotation-plan/conflicts.ts';
import type { RotationProposal } from '../rotation-plan/propose.ts';
import type { TakenPlan } from './taken-plan.ts';

/** How good the plan is. */
export function foundInWords({ found }: RotationProposal): string {
  return found === 'best' ? 'No plan does better by the rules.' : 'The best plan found; a better one may exist.';
}

/** Wishes that are not met, each with what found room. */
export function unmetTexts({ wishes, problem, conflicts }: RotationProposal): string[] {
  return wishes
    .filter((met) => !isMet(met))
    .map(({ wish, given }) => {
      const why = conflicts.length > 0 ? '' : ' More would break other rules that count more.';
      return `${wishInWords(wish)} in ${problem.seasonNames[wish.season]}: ${amountInWords(given)} found room.${why}`;
    });
}

/** Rules that cannot all be kept, under a line that says the least to give. */
export function conflictTexts({ problem }: RotationProposal, { rules, cheapest }: Conflict): [string, string[]] {
  const ways = cheapest.map(({ rule, by }) => givingWayInWords(rule, by, problem));
  const least = ways.length === 0 ? '' : ` The least to give: ${ways.join('; ')}.`;
  return [`These cannot all be kept.${least}`, rules.map((rule) => `${ruleInWords(rule, problem)}`)];
}

/** Beds of whose past too little is written down for what is proposed there. */
export function unknownTexts({ problem, unknown }: Pick<RotationProposal, 'problem' | 'unknown'>): string[] {
  return problem.beds.flatMap((bed) => {
    const crops = unknown
      .filter(({ bedId }) => bedId === bed.id)
      .map(({ cropId }) => vegetableById(cropId).name.toLowerCase());
    if (crops.length === 0) return [];
    return [
      `${bed.name}: nobody wrote down whether kin of ${[...new Set(crops)].join(', ')} stood there not long ago.`,
    ];
  });
}

/** Seasons that taking a proposal would leave empty of all that was planned. */
export function emptiedTexts({ problem }: RotationProposal, { emptied }: TakenPlan): string[] {
  return emptied.map((season) => {
    const isWished = problem.wishes.some((wish) => wish.season === season);
    const why = isWished ? 'no wish for it found room' : 'nothing is wished for it';
    return `${problem.seasonNames[season]} would be left empty: all that was planned for it goes, and ${why}.`;
  });
}

/** Crops proposed that no day is known for: they are placed by the season alone. */
export function undatedTexts({ problem, placements }: Pick<RotationProposal, 'problem' | 'placements'>): string[] {
  return problem.beds.flatMap((bed) => {
    const crops = placements
      .filter(({ bedId, start }) => bedId === bed.id && start === undefined)
      .map(({ cropId, season }) => `${vegetableById(cropId).name.toLowerCase()} in ${problem.seasonNames[season]}`);
    return crops.length === 0 ? [] : [`${bed.name}: ${crops.join(', ')}.`];
  });
}
