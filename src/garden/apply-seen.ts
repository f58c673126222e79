/**
 * What somebody saw or measured, told of a garden.
 */
import { AT_WORK_C } from '../handbook/pile-heat.ts';
import type { Day } from '../measures/days.ts';
import { doneMark } from './done-mark.ts';
import type { SeenFact } from './fact-kinds.ts';
import type { DoneTask } from './facts.ts';
import type { Garden, NotReady, Pile, PileReading } from './garden.ts';
import { hasBed } from './plan-covers.ts';
import { withLogged } from './weather.ts';
import { withoutAbsent } from './without-absent.ts';
import { changePile, regrown, workPile, workStand } from './worked-on.ts';

/** The garden with what was seen. A look that a task asked for marks it done, under the entry that tells of it. */
export function applySeen(garden: Garden, fact: SeenFact, entry: number): Garden {
  switch (fact.kind) {
    case 'pile-read':
      return readPile(garden, fact);
    case 'compost-not-ready':
      return changePile(garden, fact.pileId, (pile) => notReadyYet(pile, fact));
    case 'cold-night-told': {
      const { kind: _kind, ...night } = fact;
      return { ...garden, coldNights: [...garden.coldNights, night] };
    }
    case 'soil-squeezed': {
      const { kind: _kind, ...squeeze } = fact;
      return { ...garden, soilSqueezes: [...garden.soilSqueezes, squeeze] };
    }
    case 'disease-found': {
      const { kind: _kind, ...found } = fact;
      return hasBed(garden, found.bedId) ? { ...garden, diseases: [...garden.diseases, found] } : garden;
    }
    case 'weather-logged':
      return { ...garden, weather: withLogged(garden.weather, fact.days.map(withoutAbsent)) };
    case 'stage-seen': {
      const { kind: _kind, standId, ...seen } = fact;
      return workStand(garden, standId, seen.on, (stand) => ({ seen: [...(stand.seen ?? []), withoutAbsent(seen)] }));
    }
    case 'stand-looked': {
      const { standId, on, covered, weedy, task } = fact;
      return workStand(settled(garden, task, on, entry), standId, on, ({ looked = [] }) => ({
        looked: [...looked, { on, covered, weedy }],
      }));
    }
    case 'regrowth-seen': {
      const { standId, on, answer, task } = fact;
      return regrown(settled(garden, task, on, entry), standId, { on, what: 'grew-again', answer });
    }
    default:
      return fact satisfies never;
  }
}

/** The garden with a reading of a pile. One that heats again while it cures is not ready yet. */
function readPile(
  garden: Garden,
  { kind: _kind, pileId, ...reading }: Extract<SeenFact, { kind: 'pile-read' }>,
): Garden {
  const seen = withoutAbsent(reading);
  const read = workPile(garden, pileId, reading.on, ({ readings }) => ({ readings: [...readings, seen] }));
  return changePile(read, pileId, (pile) =>
    heatsInCuring(pile, seen) ? notReadyYet(pile, { on: reading.on, failed: ['heats'] }) : pile,
  );
}

/** The garden with the task marked done that asked for what was told. */
function settled(garden: Garden, task: DoneTask | undefined, on: Day, entry: number): Garden {
  return task === undefined ? garden : { ...garden, done: [...garden.done, doneMark(task, on, entry)] };
}

/** Whether a thermometer finds a pile at work after the day it was moved to cure. */
function heatsInCuring({ curingSince, finishedOn }: Pile, { on, tempC }: PileReading): boolean {
  if (curingSince === undefined || finishedOn !== undefined) return false;
  return on > curingSince && tempC !== undefined && tempC >= AT_WORK_C;
}

/** A pile that heats again was moved to cure too soon, and works on. */
function notReadyYet(pile: Pile, { on, failed }: NotReady): Pile {
  const notReady = [...(pile.notReady ?? []), { on, failed }];
  const { curingSince: _curing, ...working } = pile;
  return failed.includes('heats') ? { ...working, notReady } : { ...pile, notReady };
}
