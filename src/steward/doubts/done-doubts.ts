/**
 * What is taken as it was told, and hardly meant: a crop cleared away before it can have been ripe, or a bed sown again that
 * was never cleared.
 */

import type { DoneTask } from '../../garden/facts.ts';
import type { Day } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { cropSpans, firstRipe, isPermanent } from '../../practices/bed-timeline.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { unclearedUnder } from '../../practices/rotation/index.ts';

type Known = Pick<PracticeInput, 'garden' | 'climate'>;

/** A sentence, with marked days, for each thing of a task done on a day that is doubted. */
export function doneDoubts(known: Known, { makes }: Pick<DoneTask, 'makes'>, on: Day): string[] {
  const { garden } = known;
  return makes.flatMap((effect) => {
    switch (effect.makes) {
      case 'bed-cleared':
        return unripe(known, effect.plantingId, on);
      case 'stand-sown':
        return uncleared(known, effect.bedId, { itemId: effect.standId, on });
      case 'planting-started': {
        const bedId = garden.plantings.find(({ id }) => id === effect.plantingId)?.bedId;
        return bedId === undefined ? [] : uncleared(known, bedId, { itemId: effect.plantingId, on });
      }
      default:
        return [];
    }
  });
}

function unripe({ garden, climate }: Known, plantingId: string, on: Day): string[] {
  const planting = garden.plantings.find(({ id }) => id === plantingId);
  const span = planting && cropSpans(garden, planting.bedId, climate).find((each) => each.planting.id === planting.id);
  if (span === undefined || isPermanent(span.crop)) return [];
  const ripe = firstRipe(span);
  if (on >= ripe) return [];
  const crop = span.crop.name.toLowerCase();
  const how = startWord(span.planting.cropId, span.planting.start.how);
  return [
    `Cleared on ${dated(on)}, the ${crop} can hardly have been ripe: ${how} on ${dated(span.from)}, its quickest kinds ` +
      `are ripe from ${dated(ripe)}. If the crop failed or was eaten young that is right; if the day is wrong, take it back.`,
  ];
}

/** A bed sown again is taken to be clear, and nothing asks for the clearing any more. */
function uncleared(known: Known, bedId: string, went: { itemId: string; on: Day }): string[] {
  const crops = [...new Set(unclearedUnder(known, bedId, went).map(({ crop }) => crop.name.toLowerCase()))];
  return crops.map(
    (crop) =>
      `The ${crop} was not marked cleared, and with this in its bed nothing asks for that any more. If it is out, take this ` +
      'back, mark its clearing done on its own day, and then this again; if it still stands, take this back and clear it first.',
  );
}
