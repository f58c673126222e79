/**
 * Successions whose last sowings would not be ready in time.
 */
import { seasonOf } from '../../climate/season.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import type { Problem } from '../../garden/problem.ts';
import { sowingIds } from '../../garden/successions.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { Day } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { cropWindow } from '../../practices/planting/crop-window.ts';
import type { PracticeInput } from '../../practices/practice.ts';

/** Every succession that goes on too long, in the order of the file. Texts may hold marked days. */
export function successionDoubts(file: GardenFile, input: PracticeInput): Problem[] {
  return file.plantings.flatMap((row, at) => {
    if (row.again === undefined) return [];
    const sowings = sowingIds(row);
    const late = sowings.flatMap((id) => tooLate(input, id) ?? []);
    const [first] = late;
    if (first === undefined) return [];
    const name = vegetableById(row.crop).name.toLowerCase();
    const fits = sowings.length - late.length - 1;
    return [
      {
        where: `plantings[${at}].again`,
        what:
          `${lateSowings(late.length, sowings.length, name, first.day)} be ready in time: it goes in until ` +
          `${dated(first.last)} here.`,
        mend:
          fits > 0 ? `Give times: ${fits}, or fewer days between two sowings.` : 'Leave "again" out, or begin sooner.',
      },
    ];
  });
}

function lateSowings(late: number, all: number, name: string, from: Day): string {
  if (late === all) return `None of the ${all} sowings of ${name}, from ${dated(from)} on, would`;
  const which = late === 1 ? 'The last sowing' : `The last ${late} of the ${all} sowings`;
  return `${which} of ${name}, from ${dated(from)} on, would not`;
}

/** A planned sowing that comes after the last day of its season. */
function tooLate({ garden, climate }: PracticeInput, id: string): { day: Day; last: Day } | undefined {
  const planting = garden.plantings.find((each) => each.id === id);
  if (planting === undefined || planting.start.happened) return undefined;
  const { day, how } = planting.start;
  const season = seasonOf(climate.seasonTurn, day);
  const crop = vegetableById(planting.cropId);
  const window = cropWindow(climate, { crop, how, season, frostRisk: garden.place.frostRisk });
  return window !== undefined && day > window.latest ? { day, last: window.latest } : undefined;
}
