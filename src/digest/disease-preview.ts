/**
 * What a disease would set going, told before it is taken in.
 */

import type { DiseaseFound, Garden } from '../garden/garden.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import { capital } from '../measures/capital.ts';
import { readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { coverName } from '../practices/covers.ts';
import { findingOf } from '../practices/disease.ts';
import type { Reason } from '../practices/draft.ts';
import { lockedPlantings, lockedStands, ownLockOut } from '../practices/lock-out.ts';
import { lockReasons } from '../practices/rotation/disease-reasons.ts';
import { reasonSentence } from '../schedule/explain.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';
import { fullDay } from './words.ts';

/** The plan as it is and as it would be, with the garden as it would be. */
export interface PlansCompared {
  before: Plan;
  after: Plan;
  garden: Garden;
}

/** A line of a preview, and what its dates rest on. */
export interface PreviewLine {
  text: string;
  reasons: readonly Reason[];
}

/** A heading with its lines, in the reader's units; never without lines. */
export interface PreviewSection {
  heading: string;
  lines: readonly PreviewLine[];
}

/** Everything that taking the disease in would do: what is closed, broken, dropped, held back, new, other and gone. */
export function diseasePreview(compared: PlansCompared, found: DiseaseFound): PreviewSection[] {
  const { garden, after } = compared;
  const { units } = garden.place;
  const locked = lockReasons(ownLockOut(garden, findingOf(found)));
  const because = (text: string): PreviewLine => ({ text, reasons: locked });
  const sections: PreviewSection[] = [
    {
      heading: 'What the bed is closed to',
      lines: locked.map((reason) => ({ text: reasonSentence(reason), reasons: [reason] })),
    },
    { heading: 'Plantings that break it', lines: brokenBy(garden, found.bedId, units).map(because) },
    { heading: 'Covers that are dropped', lines: droppedIn(garden, found.bedId, units).map(because) },
    ...taskSections(compared, units),
  ];
  return sections
    .filter(({ lines }) => lines.length > 0)
    .map(({ heading, lines }) => ({
      heading,
      lines: lines.map(({ text, reasons }) => ({ text: readableIn(units, text, after.today), reasons })),
    }));
}

function brokenBy(garden: Garden, bedId: string, units: UnitSystem): string[] {
  return lockedPlantings(garden, bedId).map(
    ({ planting: { cropId, start } }) => `${vegetableById(cropId).name}, planned for ${fullDay(start.day, units)}`,
  );
}

function droppedIn(garden: Garden, bedId: string, units: UnitSystem): string[] {
  return lockedStands(garden, bedId).map(
    ({ stand, lock }) =>
      `${capital(coverName(stand.coverId))}, planned for ${fullDay(stand.sow.day, units)}: it carries ${lock.finding.name}`,
  );
}

function taskSections({ before, after }: PlansCompared, units: UnitSystem): PreviewSection[] {
  const [was, will] = [unsettled(before), unsettled(after)];
  const line = (task: PlannedTask, text: string): PreviewLine => ({ text, reasons: task.reasons });
  const day = (task: PlannedTask): string => `${task.title}: ${fullDay(task.day, units)}`;
  const on = (task: PlannedTask): PreviewLine => line(task, day(task));
  const fresh = [...will.values()].filter(({ key }) => !was.has(key));
  const pairs = [...will.values()].flatMap((task) => {
    const old = was.get(task.key);
    return old === undefined ? [] : [{ old, task }];
  });
  return [
    { heading: 'New tasks', lines: fresh.filter(({ kind }) => kind !== 'hold-compost').map(on) },
    { heading: 'Piles that are held back', lines: fresh.filter(({ kind }) => kind === 'hold-compost').map(on) },
    {
      heading: 'Tasks that become another',
      lines: pairs
        .filter(({ old, task }) => old.title !== task.title)
        .map(({ old, task }) => line(task, `${old.title}: now ${day(task)}`)),
    },
    {
      heading: 'What moves',
      lines: pairs
        .filter(({ old, task }) => old.title === task.title && old.day !== task.day)
        .map(({ old, task }) =>
          line(task, `${task.title}: from ${fullDay(old.day, units)} to ${fullDay(task.day, units)}`),
        ),
    },
    { heading: 'What goes off the plan', lines: [...was.values()].filter(({ key }) => !will.has(key)).map(on) },
  ];
}

function unsettled({ tasks }: Plan): Map<string, PlannedTask> {
  const open = tasks.filter(({ state }) => state === 'open' || state === 'lapsed');
  return new Map(open.map((task) => [task.key, task]));
}
