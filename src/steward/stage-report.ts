/**
 * Whether a stage of flowering somebody tells of can be true of its stand, and what the figures had for it.
 */
import { fullDay } from '../digest/words.ts';
import type { StageSeen, Stand } from '../garden/garden.ts';
import type { Problem } from '../garden/problem.ts';
import { addDays, type Day, isDay } from '../measures/days.ts';
import { modelledBloom } from '../practices/cover-cropping/bloom.ts';
import { growingParts, grownSince, standName } from '../practices/stand-cover.ts';
import { planningInput, type VersionedView } from './planner.ts';
import type { GardenView, Report } from './steward.ts';

type StageReport = Extract<Report, { kind: 'stage-seen' }>;

/** Everything that speaks against it. */
export function stageProblems({ garden, plan }: VersionedView, { standId, coverId, on }: StageReport): Problem[] {
  const stand = garden.stands.find(({ id }) => id === standId);
  if (stand === undefined || !stand.sow.happened) {
    const sown = garden.stands.filter((each) => each.sow.happened).map(({ id }) => id);
    const mend = `Sown here: ${sown.join(', ') || 'none'}.`;
    return [{ where: 'the stand', what: `"${standId}" does not stand in this garden.`, mend }];
  }
  const kinds = growingParts(stand).map(({ cover }) => cover.id);
  const problems: Problem[] = [];
  if (!kinds.includes(coverId)) {
    const what = `The ${standName(stand)} has no "${coverId}" in it.`;
    problems.push({ where: 'the kind', what, mend: `Give one of ${kinds.join(', ')}.` });
  }
  return [...problems, ...dayProblems(stand, on, plan.today, (day) => fullDay(day, garden.place.units))];
}

/** A stage is seen while the stand stands: told after its cut it dates nothing anew, but is remembered. */
function dayProblems({ sow, cutOn, deadOn }: Stand, on: Day, today: Day, told: (day: Day) => string): Problem[] {
  const where = 'the day it was seen';
  const ended = cutOn ?? deadOn;
  const last = ended !== undefined && ended < today ? ended : today;
  if (isDay(on) && on >= sow.day && on <= last) return [];
  const until = last === ended ? `when it ${cutOn === undefined ? 'was seen dead' : 'was cut'}` : 'which is today';
  const mend = `Give a day from ${told(sow.day)}, when it was sown, to ${told(last)}, ${until}.`;
  return [{ where, what: `"${on}" cannot be used.`, mend }];
}

/** Days after its cut or death that a stand is still offered where a stage is told of. House default: while it is remembered. */
const OFFERED_DAYS = 60;

/** The stands a stage may be told of: those that stand, and those that did until lately. */
export function standsToTellOf({ garden: { stands }, plan: { today } }: Pick<GardenView, 'garden' | 'plan'>): Stand[] {
  return stands.filter(({ sow, cutOn, deadOn }) => {
    const ended = cutOn ?? deadOn;
    return sow.happened && (ended === undefined || ended >= addDays(today, -OFFERED_DAYS));
  });
}

/** What somebody saw, as the ledger keeps it: with the day the figures had, so that next year can learn from it. */
export function stageReport(
  view: GardenView,
  { standId, ...seen }: Omit<StageSeen, 'modelled'> & { standId: string },
): StageReport {
  const stand = view.garden.stands.find(({ id }) => id === standId);
  const modelled: Day | undefined = stand && modelledBloom(seen.coverId, grownSince(stand), planningInput(view));
  return { kind: 'stage-seen', standId, ...seen, ...(modelled === undefined ? {} : { modelled }) };
}
