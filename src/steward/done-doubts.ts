/**
 * What is taken as it was told, and hardly meant: a crop cleared away before it can have been ripe.
 */
import type { Climate } from '../climate/climate.ts';
import type { DoneTask } from '../garden/facts.ts';
import type { Garden } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import { cropSpans, firstRipe, isPermanent } from '../practices/bed-timeline.ts';

/** A sentence, with marked days, for each thing of a task done on a day that is doubted. */
export function doneDoubts(
  { garden, climate }: { garden: Garden; climate: Climate },
  { makes }: Pick<DoneTask, 'makes'>,
  on: Day,
): string[] {
  return makes.flatMap((effect) => {
    if (effect.makes !== 'bed-cleared') return [];
    const planting = garden.plantings.find(({ id }) => id === effect.plantingId);
    const span =
      planting && cropSpans(garden, planting.bedId, climate).find((each) => each.planting.id === planting.id);
    if (span === undefined || isPermanent(span.crop)) return [];
    const ripe = firstRipe(span);
    if (on >= ripe) return [];
    const crop = span.crop.name.toLowerCase();
    const how = span.planting.start.how === 'sow' ? 'sown' : 'set out';
    return [
      `Cleared on ${dated(on)}, the ${crop} can hardly have been ripe: ${how} on ${dated(span.from)}, its quickest kinds ` +
        `are ripe from ${dated(ripe)}. If the crop failed or was eaten young that is right; if the day is wrong, take it back.`,
    ];
  });
}
