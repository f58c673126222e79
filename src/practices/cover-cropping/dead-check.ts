/**
 * Seeing in late winter whether an autumn stand is dead.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { yearlyMinima } from '../../climate/zones.ts';
import { lethalRange } from '../../handbook/cover-cold.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day, earliestOf } from '../../measures/days.ts';
import { nextCrop } from '../bed-timeline.ts';
import type { CoverPart } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer, midwinterAfter } from '../seasons.ts';
import { draftOfStand, type StandInBed } from './stand.ts';
import { winterFate, yearlyMinimumC } from './winter.ts';

/** Weeks before the median last freeze at which dead and living stands can be told apart. House default. */
const WEEKS_BEFORE = { first: 6, last: 3 } as const;
/** Days the look stays open at the least, so that a weekend lies in it. House default. */
const LEAST_OPEN_DAYS = 7;

/**
 * The look at a stand of which no kind is sure to live.
 *
 * @returns nothing where a kind is sure to live, the stand is not one of autumn, a crop follows before winter, or no
 *   freeze date is known
 */
export function deadCheckDraft(input: PracticeInput, at: StandInBed, sown: Day): TaskDraft | undefined {
  const window = looksBetween(input, at, sown);
  if (window === undefined) return undefined;
  const { name } = at;
  return {
    ...draftOfStand(input, at),
    key: `cover-dead-check/stand:${at.stand.id}`,
    kind: 'check-winter-kill',
    job: { id: 'check-winter-kill', title: 'See whether winter killed the cover' },
    weight: 'check',
    title: `See whether winter killed the ${name} in ${at.bed.name}`,
    steps: [
      'Pull at a few plants: brown and limp to the crown is dead, and the bed can be planted through with no wait.',
      'Green at the crown is alive: cut it low, and look again in two weeks. Mark this done once it is dead.',
      'Snow, mild winters and small late plants are what lets a stand live.',
    ],
    cautions: [],
    supplies: [],
    window,
    ifMissed: 'still do',
    missedNote: 'A stand that lived is growing on unseen: look before you plant, for it has to be cut first.',
    effortMinutes: LOOK_MINUTES,
    after: at.stand.sow.happened ? [] : [{ key: sowKey(at.stand.id), minDays: 0 }],
    reasons: at.parts.filter(mayDie(input)).map((part) => coldReason(input, part)),
    makes: [{ makes: 'stand-dead', standId: at.stand.id }],
  };
}

const mayDie = (input: PracticeInput) => (part: CoverPart) =>
  !part.cover.frostTender && winterFate(part.cover, input) !== 'lives';

function looksBetween(input: PracticeInput, at: StandInBed, sown: Day): TaskDraft['window'] | undefined {
  const { climate, garden } = input;
  if (!isAfterMidsummer(climate, sown) || at.parts.every(({ cover }) => cover.frostTender)) return undefined;
  if (at.parts.some(({ cover }) => winterFate(cover, input) === 'lives')) return undefined;
  const season = seasonOf(climate.seasonTurn, sown) + 1;
  const freeze = freezeDay(climate, { event: 'last-spring', limitF: 32, season, chancePercent: 50 });
  const next = nextCrop(garden, at.bed.id, climate, sown);
  if (freeze === undefined || (next !== undefined && next.from <= midwinterAfter(climate, sown))) return undefined;
  const usual = addDays(freeze, -7 * WEEKS_BEFORE.last);
  const latest = next === undefined ? usual : earliestOf(usual, addDays(next.from, -1));
  const earliest = earliestOf(addDays(freeze, -7 * WEEKS_BEFORE.first), addDays(latest, -LEAST_OPEN_DAYS));
  return { earliest, preferred: earliestOf(addDays(earliest, LEAST_OPEN_DAYS), latest), latest };
}

/** What kills a kind and how cold it gets; in how many winters, where they are on record. */
function coldReason(input: PracticeInput, { cover }: CoverPart): Reason {
  const range = cover.autumnSow?.fate === 'winter-killed' ? lethalRange(cover)?.tempC : undefined;
  const killC = range?.low ?? cover.winterKillC;
  const coldC = yearlyMinimumC(input);
  const winters = yearlyMinima(input.climate.seasons);
  return {
    rule: 'cover-dead-check.cold',
    saw: {
      cover: cover.name.toLowerCase(),
      ...(killC === undefined ? {} : { killC }),
      ...(range === undefined || range.high === range.low ? {} : { aliveC: range.high }),
      ...(coldC === undefined ? {} : { yearlyMinimumC: Math.round(coldC) }),
      ...(killC === undefined || winters.length === 0
        ? {}
        : { winters: winters.length, cold: winters.filter(({ tminC }) => tminC <= killC).length }),
    },
    source: originOf(cover, killC === undefined ? 'hardinessZoneMin' : 'winterKillC'),
  };
}
