/**
 * Whether a stage of flowering somebody tells of can be true of its stand, and what the figures had for it.
 */
import { fullDay } from '../../digest/words.ts';
import type { StageSeen, Stand } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { addDays, type Day, daysBetween, isDay } from '../../measures/days.ts';
import { modelledBloom } from '../../practices/cover-cropping/bloom.ts';
import { coverName, coverParts } from '../../practices/covers.ts';
import { growingParts, grownSince, standName } from '../../practices/stand-cover.ts';
import type { GardenView, Report } from '../doings/steward.ts';
import { planningInput, type VersionedView } from '../planning/planner.ts';

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
  const told = (day: Day): string => fullDay(day, garden.place.units);
  const unfit = dayProblems(stand, on, plan.today, told);
  return [...problems, ...(unfit.length > 0 ? unfit : tooYoung(stand, coverId, on, told))];
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

/**
 * Days from its sowing in which no cover shows buds or flowers. House default: the quickest, buckwheat, has its first flowers
 * after 410 °C·d over 7 °C (derived from cover:S4a), 21 days at a mean of 26.5 °C and more in any cooler summer.
 */
const LEAST_DAYS_TO_BUDS = 21;

/** Buds told of a stand that is too young for any: another plant's, or another stand's. */
function tooYoung(stand: Stand, coverId: string, on: Day, told: (day: Day) => string): Problem[] {
  const own = ownSowing(stand, coverId);
  const days = daysBetween(own, on);
  if (days >= LEAST_DAYS_TO_BUDS) return [];
  const name = coverName(coverId).toLowerCase();
  const what =
    `On ${told(on)} this ${name} was ${days} ${days === 1 ? 'day' : 'days'} old, sown on ${told(own)}: no cover has buds ` +
    `or flowers within ${LEAST_DAYS_TO_BUDS} days.`;
  const mend = `Look whether it is a weed that flowers, or another stand; else give a day from ${told(addDays(own, LEAST_DAYS_TO_BUDS))} on.`;
  return [{ where: 'the day it was seen', what, mend }];
}

/** The first day on which a kind was sown in a stand: with the stand, or only later in its thin places. */
function ownSowing({ coverId: whole, sow, resown = [] }: Stand, coverId: string): Day {
  const has = (id: string): boolean => coverParts(id).some(({ cover }) => cover.id === coverId);
  return has(whole) ? sow.day : (resown.find((again) => has(again.coverId))?.on ?? sow.day);
}

/** Days before the figure from which what was seen is doubted. House default: more than a model and a year together err. */
const DOUBTED_DAYS = 30;

/** What speaks against a stage that is taken in all the same: it is much earlier than the figures have it. */
export function stageDoubt({ garden }: Pick<GardenView, 'garden'>, report: StageReport): string | undefined {
  const { coverId, on, modelled } = report;
  const early = modelled === undefined ? 0 : daysBetween(on, modelled);
  if (modelled === undefined || early <= DOUBTED_DAYS) return undefined;
  const told = (day: Day): string => fullDay(day, garden.place.units);
  return (
    `Look again before you take it in: the day the figures have for the ${coverName(coverId).toLowerCase()} is ` +
    `${told(modelled)}, ${early} days after ${told(on)}. What you tell dates the cut at once, and is remembered.`
  );
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
