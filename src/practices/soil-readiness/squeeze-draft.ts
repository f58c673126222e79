/**
 * The squeeze test: one handful for all beds of one soil, before the first spring work; again some days after one that
 * smeared.
 */

import { fitToWorkOdds } from '../../climate/fit-to-work.ts';
import type { Odds } from '../../climate/odds.ts';
import { dayOfIndex } from '../../climate/season.ts';
import type { Bed, SoilSqueeze, SoilTextureId } from '../../garden/garden.ts';
import { type SoilWork, soilWorkOf } from '../../handbook/soil-work.ts';
import { addDays, clampDay, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { soilWarmWords } from '../odds-of.ts';
import type { PracticeInput } from '../practice.ts';
import { midsummerOf, SOIL_AWAKE_C } from '../seasons.ts';
import {
  awaitedSqueezeKey,
  readyOdds,
  type Setback,
  setbackAfter,
  soilClassOf,
  squeezesOf,
  textureRow,
} from '../soil-class.ts';
import { type SpringWork, springWork } from '../spring-work.ts';
import { gardenSubject } from '../subjects.ts';

/** Days about the best one in which the test is as good: a week holds a work day of every household. House default. */
const CANDIDATE_DAYS = 7;
/** Days after the soil wakes until which the test is worth making where nothing is planned. House default. */
const OPEN_DAYS = 14;
/** The same after snow or a soaking: the work behind it is waiting. House default. */
const OPEN_DAYS_AFTER_SETBACK = 4;
/**
 * Days ahead within which planned work makes a handful worth squeezing again, and days back within which work that nobody
 * marked is still waiting. House default.
 */
const AHEAD_DAYS = 28;
/** Depth the handful is taken from, mm: the middle of the layer that is worked (agro section 5.4, house default). */
const HANDFUL_DEPTH_MM = 150;

/** One soil of the garden, the beds that hold it, and the season it is asked about. */
export interface SoilClass {
  soilTexture: SoilTextureId;
  beds: readonly Bed[];
  /** Whether these are all the beds there are. */
  everywhere: boolean;
  season: number;
}

interface Timing {
  odds?: Odds;
  oddsOf?: string;
  window: Window;
  reasons: readonly Reason[];
}

/**
 * The test a soil wants in a season.
 *
 * @returns nothing where the soil never wakes or never sleeps, a handful has crumbled, or work has begun without one
 */
export function squeezeDraft(input: PracticeInput, soil: SoilClass): TaskDraft | undefined {
  const { garden, climate } = input;
  const { soilTexture, season } = soil;
  const odds = readyOdds(input, soilTexture, season);
  const work = springWork(input, soil.beds, season);
  const last = squeezesOf(garden, climate, soilTexture, season).at(-1);
  const begun = work.findLast(({ happened, day }) => happened && (last === undefined || day >= last.on));
  const answered = begun?.day ?? (last?.answer === 'crumbles' ? last.on : undefined);
  const row = textureRow(soilTexture);
  const how = soilWorkOf(row.workClass);
  const asked = answered === undefined ? askedTest(input, soil, { odds, how, work, last }) : undefined;
  // A test that nobody made is asked again once snow or a soaking comes after its last day.
  const since = answered ?? asked?.window.latest;
  const setback = since === undefined ? undefined : testAfterSetback(input, soil, how, { since, work });
  const timing = setback ?? asked;
  if (timing === undefined) return undefined;
  const name = row.name.toLowerCase();
  return {
    key: awaitedSqueezeKey(input, soilTexture, season),
    practice: 'soil-readiness',
    kind: 'squeeze-soil',
    job: { id: 'squeeze-soil', title: 'Squeeze a handful of soil' },
    subject: gardenSubject(garden, name),
    weight: 'check',
    title: `Squeeze a handful of the ${name}${last === undefined ? '' : ' again'}`,
    steps: steps(soil, how),
    cautions: ['Stay off wet beds, with boots and with tools: soil worked wet sets hard and stays so all season.'],
    supplies: [],
    window: timing.window,
    ifMissed: 'drop',
    missedNote:
      'The day is past; squeeze a handful before the next work there all the same. Soil that is worked wet is lost to clods for the year.',
    effortMinutes: LOOK_MINUTES,
    needs: [],
    after: [],
    confidence: knownAs(climate, climate.seasons.length > 0 ? 'modelled' : 'derived'),
    ...(timing.odds === undefined ? {} : { odds: timing.odds }),
    ...(timing.oddsOf === undefined ? {} : { oddsOf: timing.oddsOf }),
    reasons: [...timing.reasons, drainReason(name, how)],
    makes: [{ makes: 'soil-squeezed', soilTexture, answer: 'crumbles' }],
  };
}

interface Asked {
  odds: Odds;
  how: SoilWork;
  work: readonly SpringWork[];
  last: SoilSqueeze | undefined;
}

/** The test of a soil that no handful has yet found fit. */
function askedTest(input: PracticeInput, soil: SoilClass, { odds, how, work, last }: Asked): Timing | undefined {
  const test = last === undefined ? firstTest(input, soil, odds, how, work[0]) : nextTest(input, soil, how, last);
  const winter = dayOfIndex(input.climate.seasonTurn, soil.season, 1);
  if (test === undefined) return undefined;
  const snow = setbackAfter(input, soil.soilTexture, last?.on ?? winter);
  return snow === undefined || snow.reckoned || snow.on > test.window.latest ? test : heldBySnow(test, how, snow);
}

/** A test put behind snow that lies by the log. */
function heldBySnow(test: Timing, how: SoilWork, snow: Setback): Timing {
  const { window, reasons } = afterSnowTold(how, snow);
  if (window.preferred <= test.window.preferred) return test;
  const latest = latestOf(test.window.latest, addDays(window.preferred, OPEN_DAYS_AFTER_SETBACK));
  return { ...test, window: { ...window, latest }, reasons: [...reasons, ...test.reasons] };
}

/** The test after snow of which nobody can reckon when it melts: once it is gone, as long after as a soil takes to drain. */
function afterSnowTold({ retestDays, retestFrom }: SoilWork, { on, expected }: Setback): Timing {
  const drained = addDays(on, retestDays);
  const latest = addDays(drained, CANDIDATE_DAYS);
  return {
    window: { earliest: drained, preferred: drained, latest },
    reasons: [
      {
        rule: 'squeeze.snow-told',
        saw: { on, days: retestDays, state: expected ? 'snow-expected' : 'snow' },
        limit: latest,
        source: retestFrom,
      },
    ],
  };
}

/**
 * The test that snow, frost or a soaking asks for again: when it will have melted and drained, if there is work ahead.
 *
 * @param since the day the soil last was known to be fit, or the last day of a test nobody made
 */
function testAfterSetback(
  input: PracticeInput,
  { soilTexture }: SoilClass,
  how: SoilWork,
  { since, work }: { since: Day; work: readonly SpringWork[] },
): Timing | undefined {
  const { garden, climate } = input;
  const setback = setbackAfter(input, soilTexture, since);
  if (setback === undefined) return undefined;
  const { on, from, state, expected } = setback;
  const [openFrom, openTo] = [addDays(on, -AHEAD_DAYS), addDays(on, AHEAD_DAYS)];
  const waits = work.some(({ happened, day }) => !happened && day >= openFrom && day <= openTo);
  if (waits && !setback.reckoned) return afterSnowTold(how, setback);
  const odds = fitToWorkOdds(climate, addDays(from, 1), soilClassOf(garden, soilTexture));
  if (!waits || odds?.median === undefined) return undefined;
  const { median, late } = odds;
  const latest = latestOf(late ?? median, addDays(median, OPEN_DAYS_AFTER_SETBACK));
  return {
    window: { earliest: median, preferred: median, latest },
    reasons: [
      {
        rule: 'squeeze.setback',
        saw: { on, state: expected ? `${state}-expected` : state, fit: median, years: odds.years },
        limit: latest,
        source: 'agro:S22',
      },
    ],
    odds,
    oddsOf: `the first day from ${dated(addDays(from, 1))} on with soil fit to work`,
  };
}

/** About the day the soil usually wakes, and in time before the first work planned, but never in frozen ground. */
function firstTest(
  { climate }: PracticeInput,
  { season }: SoilClass,
  odds: Odds,
  { retestDays }: SoilWork,
  first: SpringWork | undefined,
): Timing | undefined {
  const { early, median: awake } = odds;
  const midwinter = dayOfIndex(climate.seasonTurn, season, 1);
  if (awake === undefined || awake <= addDays(midwinter, CANDIDATE_DAYS)) return undefined;
  const beforeWork = first && addDays(first.day, -retestDays);
  const wanted = earliestOf(awake, beforeWork ?? awake);
  const preferred = latestOf(wanted, early ?? awake);
  const open = addDays(preferred, OPEN_DAYS);
  const latest = first === undefined ? open : clampDay(addDays(first.day, -1), preferred, open);
  const modelled = climate.seasons.length > 0 && odds.years > 0;
  const saw = { awake, tempC: SOIL_AWAKE_C, ...(modelled ? { years: odds.years } : {}) };
  const reasons: Reason[] = [
    { rule: modelled ? 'squeeze.fit' : 'squeeze.awake', saw, limit: latest, source: 'house default' },
  ];
  if (first !== undefined && beforeWork !== undefined && beforeWork < awake) {
    const { what, bedName, day } = first;
    reasons.push({
      rule: 'squeeze.before-work',
      saw: { what, bed: bedName, day, days: retestDays },
      source: "the garden's own plan",
    });
  }
  return {
    odds,
    oddsOf: soilWarmWords(SOIL_AWAKE_C, { fit: modelled }),
    window: { earliest: addDays(preferred, -CANDIDATE_DAYS), preferred, latest },
    reasons,
  };
}

/** Some days after a handful that smeared, for a week; past midsummer nobody asks. */
function nextTest(
  { climate }: PracticeInput,
  { season }: SoilClass,
  { retestDays, retestFrom }: SoilWork,
  { on }: SoilSqueeze,
): Timing | undefined {
  const earliest = addDays(on, retestDays);
  if (earliest > midsummerOf(climate, season)) return undefined;
  const window = { earliest, preferred: earliest, latest: addDays(earliest, CANDIDATE_DAYS) };
  return { window, reasons: [{ rule: 'squeeze.again', saw: { on, days: retestDays }, source: retestFrom }] };
}

function drainReason(soil: string, { retestDays, retestFrom, workClass }: SoilWork): Reason {
  return { rule: 'squeeze.drains', saw: { soil, days: retestDays, workClass }, source: retestFrom };
}

function steps({ beds, everywhere }: SoilClass, { retestDays, tooWet }: SoilWork): string[] {
  const names = beds.map(({ name }) => name).join(', ');
  return [
    everywhere
      ? `Take one handful from ${quantity(HANDFUL_DEPTH_MM, 'mm')} down, in the bed that dries last. It speaks for all.`
      : `Take one handful from ${quantity(HANDFUL_DEPTH_MM, 'mm')} down, in whichever of these dries last: ${names}.`,
    'Squeeze it, then press the lump with a finger. It crumbles: the soil is fit. It only dents or smears: too wet. Water runs out: far too wet.',
    tooWet,
    `Too wet? Say so here ("It smears"), stay off these beds, and squeeze again in ${retestDays} days.`,
  ];
}
