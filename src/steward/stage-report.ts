/**
 * Whether a stage of flowering somebody tells of can be true of its stand, and what the figures had for it.
 */
import type { StageSeen } from '../garden/garden.ts';
import type { Problem } from '../garden/problem.ts';
import type { Day } from '../measures/days.ts';
import { modelledBloom } from '../practices/cover-cropping/bloom.ts';
import { coverName, coverParts } from '../practices/covers.ts';
import { planningInput, type VersionedView } from './planner.ts';
import type { GardenView, Report } from './steward.ts';

type StageReport = Extract<Report, { kind: 'stage-seen' }>;

/** Everything that speaks against it. */
export function stageProblems({ garden, plan }: VersionedView, { standId, coverId, on }: StageReport): Problem[] {
  const stand = garden.stands.find(({ id }) => id === standId);
  if (stand === undefined || !stand.sow.happened || (stand.cutOn ?? stand.deadOn) !== undefined) {
    const standing = garden.stands.filter((each) => each.sow.happened && (each.cutOn ?? each.deadOn) === undefined);
    const mend = `Standing now: ${standing.map(({ id }) => id).join(', ') || 'none'}.`;
    return [{ where: 'the stand', what: `"${standId}" does not stand in this garden.`, mend }];
  }
  const kinds = coverParts(stand.coverId).map(({ cover }) => cover.id);
  const problems: Problem[] = [];
  if (!kinds.includes(coverId)) {
    const what = `${coverName(stand.coverId)} has no "${coverId}" in it.`;
    problems.push({ where: 'the kind', what, mend: `Give one of ${kinds.join(', ')}.` });
  }
  if (on < stand.sow.day || on > plan.today) {
    const mend = `Give a day from ${stand.sow.day}, when it was sown, to ${plan.today}.`;
    problems.push({ where: 'the day it was seen', what: `"${on}" cannot be used.`, mend });
  }
  return problems;
}

/** What somebody saw, as the ledger keeps it: with the day the figures had, so that next year can learn from it. */
export function stageReport(
  view: GardenView,
  { standId, ...seen }: Omit<StageSeen, 'modelled'> & { standId: string },
): StageReport {
  const stand = view.garden.stands.find(({ id }) => id === standId);
  const modelled: Day | undefined = stand && modelledBloom(seen.coverId, stand.sow.day, planningInput(view));
  return { kind: 'stage-seen', standId, ...seen, ...(modelled === undefined ? {} : { modelled }) };
}
