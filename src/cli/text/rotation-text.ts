/**
 * A proposed rotation as lines of text and as JSON.
 */
import { wrapped } from '../../digest/wrapped.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { Day } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import { type BrokenRule, isHard } from '../../practices/rotation-plan/looked-at.ts';
import { aheadOf, betweenOf, type Entry, entriesOf, type PlanBed } from '../../practices/rotation-plan/problem.ts';
import {
  amountInWords,
  brokenSentence,
  givingWayInWords,
  ruleInWords,
} from '../../practices/rotation-plan/sentences.ts';
import { legumesWait } from '../../practices/rotation-plan/waits.ts';
import { isMet } from '../../practices/rotation-plan/wishes.ts';
import {
  conflictTexts,
  foundInWords,
  undatedTexts,
  unknownTexts,
  unmetTexts,
} from '../../steward/bed-plan/proposal-words.ts';
import type { RotationProposal } from '../../steward/rotation-plan/propose.ts';
import { columns } from './output.ts';

/** Who reads, and on which day. */
interface Reader {
  units: UnitSystem;
  today: Day;
}

/** The plan bed by bed, then what it breaks, what is not known, and why a wish is not met. */
export function rotationLines(proposal: RotationProposal, { units, today }: Reader): string[] {
  const { problem } = proposal;
  const read = (text: string): string => readableIn(units, text, today);
  const seasons = problem.seasons.map((season) => problem.seasonNames[season] ?? '');
  const rows = problem.beds.map((bed) => [
    bed.name,
    ...problem.seasons.map((season) => read(bedInSeason(proposal, bed, season))),
  ]);
  const parts = [
    ...told('Not met:', unmetTexts(proposal), read),
    ...proposal.conflicts.flatMap((conflict) => told(...conflictTexts(proposal, conflict), read)),
    ...told('Where it gives way:', brokenTexts(proposal, proposal.broken.filter(isNow)), read),
    ...told(
      'Broken before, or by what is planned already:',
      brokenTexts(
        proposal,
        proposal.broken.filter((each) => !isNow(each) && isHard(each)),
      ),
      read,
    ),
    ...told('Covers with a legume that would fit ahead:', legumeTexts(proposal), read),
    ...told('No day is known for:', undatedTexts(proposal), read),
    ...told('Not known, and so not held against it:', unknownTexts(proposal), read),
  ];
  return [
    ...columns([['', ...seasons], ...rows]),
    '',
    foundInWords(proposal),
    ...parts,
    '',
    'Nothing was changed. Add --accept to see what taking it would do.',
  ];
}

function isNow({ how }: BrokenRule): boolean {
  return how === 'proposed';
}

function told(head: string, texts: readonly string[], read: (text: string) => string): string[] {
  if (texts.length === 0) return [];
  return ['', ...wrapped(read(head)), ...texts.flatMap((text) => wrapped(`- ${read(text)}`, '  ', '    '))];
}

function bedInSeason({ problem, placements }: RotationProposal, bed: PlanBed, season: number): string {
  if (bed.lasting !== undefined) return `(${cropWord(bed.lasting)})`;
  const here = entriesOf(problem, bed, placements).filter((entry) => entry.season === season);
  const word = ({ crop, how, areaM2 }: Entry): string => {
    const name = crop.name.toLowerCase();
    if (how === 'settled') return `(${name})`;
    return areaM2 === undefined || areaM2 >= bed.areaM2 ? name : `${name} ${amountInWords({ areaM2 })}`;
  };
  const words = here
    .filter(({ after }) => after === undefined)
    .map((entry) => {
      const second = here.find(({ after }) => after === entry.crop.id);
      return second === undefined ? word(entry) : `${word(entry)}, then ${word(second)}`;
    });
  return words.length === 0 ? 'open' : words.join(' + ');
}

function brokenTexts({ problem }: RotationProposal, broken: readonly BrokenRule[]): string[] {
  return broken.map(({ bedId, season, reason }) => {
    const bed = problem.beds.find(({ id }) => id === bedId);
    const where = bed === undefined ? '' : `${bed.name}, ${problem.seasonNames[season]}: `;
    return `${where}${brokenSentence(reason)} (${reason.source})`;
  });
}

/** Hungry crops that a cover with a legume could stand ahead of. */
function legumeTexts({ problem, placements }: RotationProposal): string[] {
  return problem.beds.flatMap((bed) => {
    const entries = entriesOf(problem, bed, placements);
    return problem.seasons.flatMap((season) => {
      const hungry = entries.find(
        ({ crop, how, season: its }) => its === season && how === 'proposed' && crop.nitrogen === 'high',
      );
      const before = aheadOf(entries, season).at(-1);
      if (hungry === undefined || before === undefined || before.crop.nitrogen === 'legume-fixer') return [];
      const isLate = hungry.after !== undefined || before.after !== undefined;
      if (isLate || legumesWait(entries, season)) return [];
      const { legume } = betweenOf(problem, before.crop.id, hungry.crop.id);
      if (typeof legume === 'string') return [];
      const what = `${hungry.crop.name.toLowerCase()} of ${problem.seasonNames[season]}`;
      return [`${bed.name}, before ${what}: ${coverName(legume.coverId)}.`];
    });
  });
}

function cropWord(cropId: string): string {
  return vegetableById(cropId).name.toLowerCase();
}

function daysOf({ placements }: RotationProposal, bed: PlanBed, season: number, cropId: string): object {
  const place = placements.find((each) => each.bedId === bed.id && each.season === season && each.cropId === cropId);
  const { start, lastHarvest } = place ?? {};
  return {
    ...(start === undefined ? {} : { [start.how === 'sow' ? 'sow' : 'setOut']: start.day }),
    ...(lastHarvest ? { lastHarvest } : {}),
  };
}

/** The same for {@link writeJson}. */
export function rotationJson(proposal: RotationProposal): object {
  const { problem, placements, found, broken, unknown, wishes, conflicts } = proposal;
  return {
    seasons: problem.seasons,
    found,
    beds: problem.beds.map((bed) => ({
      bed: bed.id,
      name: bed.name,
      ...(bed.lasting === undefined ? {} : { lasting: bed.lasting }),
      crops: entriesOf(problem, bed, placements)
        .filter(({ how }) => how !== 'past')
        .map(({ season, crop, how, after, areaM2 = bed.areaM2 }) => ({
          season,
          crop: crop.id,
          how,
          areaM2,
          ...(after === undefined ? {} : { after }),
          ...(how === 'proposed' ? daysOf(proposal, bed, season, crop.id) : {}),
        })),
    })),
    wishes: wishes.map((met) => ({ ...met.wish, given: met.given, met: isMet(met) })),
    broken: broken.map(({ reason, ...where }) => ({
      ...where,
      rule: reason.rule,
      hard: isHard({ reason, ...where }),
      why: brokenSentence(reason),
      source: reason.source,
    })),
    unknown,
    conflicts: conflicts.map(({ rules, cheapest }) => ({
      rules: rules.map((rule) => ruleInWords(rule, problem)),
      cheapest: cheapest.map(({ rule, by }) => givingWayInWords(rule, by, problem)),
    })),
  };
}
