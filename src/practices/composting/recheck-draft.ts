/**
 * Smelling a pile again after a turn that was to mend it.
 */
import type { Bin, Pile, PileReading } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { HOT_INSIDE } from '../cautions.ts';
import type { TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { draftOfPile } from './pile-draft.ts';
import { newestTelling } from './pile-life.ts';

/** Days after a turn at which a sick pile is smelt again, and days that stays open. House default. */
const RECHECK_DAYS = { first: 3, last: 6 } as const;
/** Days before a turn within which a reading was what the turn answered. House default. */
const ANSWERED_DAYS = 14;

/** What a reading showed, in words, where a turn with browns was to mend it. */
function signIn({ smell, moisture }: PileReading): string | undefined {
  if (smell === 'sour') return 'smelt sour';
  if (smell === 'ammonia') return 'smelt of ammonia';
  return moisture === 'wet' ? 'was too wet' : undefined;
}

/** The look after a turn that answered a bad smell or a wet handful; nothing once somebody has looked again. */
export function recheckDraft(pile: Pile, bin: Bin): TaskDraft | undefined {
  const turned = pile.turns.at(-1);
  const before = turned === undefined ? undefined : readingBefore(pile, turned);
  const sign = before === undefined ? undefined : signIn(before);
  if (turned === undefined || before === undefined || sign === undefined) return undefined;
  const looked = before.smell === 'sour' || before.smell === 'ammonia' ? 'smell' : 'moisture';
  if (newestTelling(pile, addDays(turned, 1), looked) !== undefined) return undefined;
  const earliest = addDays(turned, RECHECK_DAYS.first);
  return {
    ...draftOfPile(pile, bin),
    key: `pile-recheck/pile:${pile.id}/turn:${pile.turns.length}`,
    kind: 'recheck-pile',
    job: { id: 'recheck-pile', title: 'Smell the pile again' },
    weight: 'check',
    title: `Smell and squeeze the pile in ${bin.name} again`,
    steps: [
      'Open it a hand deep, smell it, squeeze a handful, take its temperature if you can, and write it down as a reading.',
      'Earthy and damp: it goes on as before. Still sour, sharp or running with water: more dry browns, and turn it again.',
    ],
    cautions: [`${HOT_INSIDE} Do not put your face in it: fork out a handful and smell that.`],
    window: { earliest, preferred: earliest, latest: addDays(turned, RECHECK_DAYS.last) },
    ifMissed: 'drop',
    missedNote: 'The next turn shows it too.',
    effortMinutes: LOOK_MINUTES,
    confidence: 'recorded',
    reasons: [
      {
        rule: 'pile-recheck.after-turn',
        saw: { sign, on: before.on, turned },
        limit: RECHECK_DAYS.first,
        source: 'house default',
      },
    ],
    makes: [],
  };
}

/** What a turn can have answered: the newest smell before it, else the newest handful; a clean one is nothing to answer. */
function readingBefore({ readings }: Pile, turned: Day): PileReading | undefined {
  const answered = readings.filter(({ on }) => on <= turned && daysBetween(on, turned) <= ANSWERED_DAYS);
  const smelt = newestOf(answered.flatMap(({ on, smell }) => (smell === undefined ? [] : [{ on, smell }])));
  const felt = newestOf(answered.flatMap(({ on, moisture }) => (moisture === undefined ? [] : [{ on, moisture }])));
  return [smelt, felt].find((reading) => reading !== undefined && signIn(reading) !== undefined);
}

/** The newest of some readings; of one day's the one told last. */
function newestOf(readings: readonly PileReading[]): PileReading | undefined {
  return readings.reduce<PileReading | undefined>(
    (newest, reading) => (newest === undefined || reading.on >= newest.on ? reading : newest),
    undefined,
  );
}
