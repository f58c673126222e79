/**
 * What can be sown, for a garden that has no crop planned: one look a half-season, naming easy kinds and their days.
 */

import { seasonOf } from '../../climate/season.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { cropSpans } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft, Window } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { midsummerOf } from '../seasons.ts';
import { gardenSubject } from '../subjects.ts';
import { easyKinds, type Sowable } from './later-crops.ts';

/** Kinds a look names at the most. House default. */
const NAMED_KINDS = 8;
/** Kinds that must be open for a look to be worth an entry. House default. */
const LEAST_KINDS = 3;
/** Days from a look's opening within which a kind must open to be named in it. House default. */
const OPENS_WITHIN_DAYS = 28;
/** Days a kind must still be open when it is named. House default. */
const LEAST_OPEN_DAYS = 10;

/** Cool kinds that may be sown into the warm months: the others run to seed. Common practice. */
const BEARS_HEAT: ReadonlySet<string> = new Set(['beet', 'swiss-chard', 'carrot', 'kale']);

type Half = 'spring' | 'summer' | 'autumn';

const WORDS: Readonly<Record<Half, string>> = {
  spring: 'What can be sown this spring',
  summer: 'What can be sown now that it is warm',
  autumn: 'What can still be sown for autumn',
};

/** The looks of the seasons worked out; none where a crop is planned anywhere, or no bed is free. */
export function ideaDrafts(input: PracticeInput): TaskDraft[] {
  const { garden, climate, until } = input;
  if (garden.plantings.some(({ start }) => !start.happened)) return [];
  const first = seasonOf(climate.seasonTurn, garden.startedOn);
  const last = seasonOf(climate.seasonTurn, until);
  const seasons = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  return seasons.flatMap((season) =>
    (['spring', 'summer', 'autumn'] as const).flatMap((half) => ideaDraft(input, season, half)),
  );
}

function ideaDraft(input: PracticeInput, season: number, half: Half): TaskDraft[] {
  const window = halfWindow(input, season, half);
  // A look is worth something only while its kinds can be sown: one whose days are past is no missed work.
  if (window === undefined || window.latest < input.today || !hasFreeBed(input, window.earliest)) return [];
  const kinds = easyKinds(input, season).filter((kind) => {
    const opens = kind.window.earliest <= addDays(window.earliest, OPENS_WITHIN_DAYS);
    const lasts = kind.window.latest >= addDays(window.earliest, LEAST_OPEN_DAYS);
    return opens && lasts && (half !== 'summer' || isWarm(kind) || BEARS_HEAT.has(kind.crop.id));
  });
  if (kinds.length < LEAST_KINDS) return [];
  return [draftOf(input, season, half, window, kinds.slice(0, NAMED_KINDS))];
}

/** Each look has days of its own, so that only one is open at a time. */
function halfWindow(input: PracticeInput, season: number, half: Half): Window | undefined {
  const kinds = easyKinds(input, season);
  const opening = (warm: boolean): Day | undefined => openingOf(kinds.filter((kind) => isWarm(kind) === warm));
  const [cool, warm] = [opening(false), opening(true)];
  const midsummer = midsummerOf(input.climate, season);
  if (cool === undefined) return undefined;
  const turn = warm === undefined || warm <= cool ? midsummer : earliestOf(warm, midsummer);
  if (half === 'spring') return spanning(cool, addDays(turn, -1));
  if (half === 'summer') return warm === undefined ? undefined : spanning(turn, midsummer);
  const [last, ...others] = kinds.map(({ window }) => window.latest);
  return last === undefined
    ? undefined
    : spanning(addDays(midsummer, 1), addDays(latestOf(last, ...others), -LEAST_OPEN_DAYS));
}

function spanning(earliest: Day, latest: Day): Window | undefined {
  return earliest <= latest ? { earliest, preferred: earliest, latest } : undefined;
}

function isWarm({ crop }: Sowable): boolean {
  return crop.frostClass === 'tender' || crop.frostClass === 'very-tender';
}

/** The day on which enough kinds of a sort are open for a look. */
function openingOf(kinds: readonly Sowable[]): Day | undefined {
  return kinds.map(({ window }) => window.earliest).sort()[LEAST_KINDS - 1];
}

function hasFreeBed({ garden, climate }: PracticeInput, day: Day): boolean {
  return garden.beds.some(({ id }) =>
    cropSpans(garden, id, climate).every(({ from, to }) => from > day || (to !== undefined && to < day)),
  );
}

function draftOf(
  { garden, climate }: PracticeInput,
  season: number,
  half: Half,
  window: Window,
  kinds: readonly Sowable[],
): TaskDraft {
  const named = kinds.map(({ crop, window: { earliest, latest } }) => {
    const from = earliest > window.earliest ? `from ${dated(earliest)} ` : '';
    return `${crop.name}: ${from}until ${dated(latest)}.`;
  });
  return {
    key: `sow-ideas/garden:${season}-${half}`,
    practice: 'planting',
    kind: 'sow-ideas',
    job: { id: 'sow-ideas', title: WORDS[half] },
    subject: gardenSubject(garden),
    weight: 'check',
    title: WORDS[half],
    steps: [...named, 'Add what you sow, or mean to, on the Beds page: dates, amounts and what follows come from it.'],
    cautions: [],
    supplies: [],
    window,
    ifMissed: 'drop',
    missedNote: 'Nothing is lost but time: the next half of the season has kinds of its own.',
    effortMinutes: LOOK_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      {
        rule: 'ideas.open',
        saw: { kinds: kinds.length, opens: window.earliest },
        limit: window.latest,
        source: 'common practice',
      },
    ],
    makes: [],
  };
}
