/**
 * The soil sample: in the garden's first autumn, and every third autumn after the last one. A bed that has a test of
 * its own keeps its own round.
 */

import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Bed, SoilTest, Subject } from '../../garden/garden.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import type { BedDemand } from '../compost-balance.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { SAMPLE_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { autumnTopdressKey, sampleKey } from '../keys.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { bedSubject, gardenSubject } from '../subjects.ts';

/** Years from one sample to the next: the short end of three to five (veg:V45). */
export const SAMPLE_YEARS = 3;
/** Depth of a sample, mm: 6 in (veg:V45). */
const SAMPLE_DEPTH_MM = 150;
/** Weeks before the median first freeze from which autumn samples are taken. House default. */
const AUTUMN_WEEKS = 6;
/** Days before that freeze on which it is best done: the answer comes before winter, and lime has its two to three months (veg:V46). House default. */
const BEST_DAYS_BEFORE = 14;
/** Days after its window that a sample is still waited for; then the next autumn's is asked. House default. */
const STILL_WANTED_DAYS = 60;

/** An autumn's sample: of one bed, or of all without tests of their own. */
interface Sampled {
  season: number;
  bed: Bed | undefined;
}

/** The samples that are due next: the garden's, and those of beds with tests of their own. */
export function sampleDrafts(input: PracticeInput, found: Findings): TaskDraft[] {
  const { beds, soilTests } = input.garden;
  const own = beds.filter(({ id }) => soilTests.some(({ bedId }) => bedId === id));
  const shared = own.length < beds.length ? [sampleDraft(input, found, undefined)] : [];
  return [...shared, ...own.map((bed) => sampleDraft(input, found, bed))].flatMap((draft) => draft ?? []);
}

function sampleDraft(input: PracticeInput, found: Findings, bed: Bed | undefined): TaskDraft | undefined {
  const { garden, climate } = input;
  const last = newest(garden.soilTests.filter(({ bedId }) => bedId === bed?.id));
  const due = nextDue(input, last);
  if (due === undefined) return undefined;
  const { season, freeze } = due;
  const { window, layer } = beforeLayers(due.window, layersOf(input, found, { season, bed }));
  const under = spreadAlready(input, { season, bed });
  const subject: Subject = bed ? bedSubject(bed) : gardenSubject(garden);
  return {
    key: sampleKey(bed?.id, season),
    practice: 'fertility',
    kind: 'take-soil-sample',
    job: { id: 'take-soil-sample', title: 'Take a soil sample' },
    subject,
    weight: 'work',
    title: bed ? `Take a soil sample of ${bed.name}` : 'Take a soil sample of the beds',
    steps: [
      `Push compost and mulch aside and take a slice of soil ${quantity(SAMPLE_DEPTH_MM, 'mm')} deep, at ten places${bed ? ' of the bed' : ' over the beds, not the paths'}.`,
      'Mix the slices in a clean bucket, and send what the laboratory asks for. Ask for pH, phosphorus and organic matter.',
      NOT_AFTER_COMPOST,
      ...(under.length === 0 ? [] : [underCompost(under, bed)]),
      'Write the answer down under The garden, as a soil test. Lime and wood ash are spread only where it asks for them.',
    ],
    cautions: [
      'Lime and wood ash burn eyes and skin: gloves, goggles and still air, should the test ask for either.',
      'Wash your hands after handling soil.',
    ],
    supplies: [{ what: 'trowel and clean bucket' }, { what: "the laboratory's bag and form" }],
    window,
    ifMissed: 'still do',
    missedNote: 'Take it while the ground is open, or in spring before compost goes on; laboratories are slower then.',
    effortMinutes: SAMPLE_MINUTES,
    onceMinutes: START_UP_MINUTES,
    needs: ['above-freezing'],
    after: [],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      dueReason(last),
      { rule: 'soil-sample.autumn', saw: { freeze, weeks: AUTUMN_WEEKS }, limit: due.window.latest, source: 'veg:V45' },
      ...layerReasons(layer),
    ],
    makes: [{ makes: 'soil-sampled', ...(bed ? { bedId: bed.id } : {}) }],
  };
}

function layerReasons(layer: BedDemand | undefined): Reason[] {
  if (layer === undefined) return [];
  const saw = { bed: layer.bedName, day: layer.window.preferred };
  return [{ rule: 'soil-sample.before-layer', saw, source: 'veg:V45' }];
}

const NOT_AFTER_COMPOST =
  'Not within some weeks of compost or lime: it would measure those. Take it before the autumn layer goes on, or from beds still without.';

function underCompost(under: readonly string[], bed: Bed | undefined): string {
  if (bed !== undefined)
    return 'Its autumn layer is on before this sample can be taken: wait until spring, before the next layer, if you can.';
  return `The autumn layer is on before this sample can be taken in ${under.join(', ')}: take no slices there.`;
}

/** The names of the beds whose layer of that autumn is on already. */
function spreadAlready({ garden }: PracticeInput, { season, bed }: Sampled): string[] {
  const done = new Set(garden.done.map(({ key }) => key));
  const beds = garden.beds.filter(
    ({ id }) => isSampled(garden, id, bed) && done.has(autumnTopdressKey(id, season + 1)),
  );
  return beds.map(({ name }) => name);
}

function isSampled({ soilTests }: PracticeInput['garden'], bedId: string, bed: Bed | undefined): boolean {
  return bed === undefined ? soilTests.every((own) => own.bedId !== bedId) : bedId === bed.id;
}

/** The layers that go on in the autumn of a sample, in the beds it is taken of. */
function layersOf({ garden }: PracticeInput, { compostBalance }: Findings, { season, bed }: Sampled): BedDemand[] {
  const layers = compostBalance?.beds ?? [];
  return layers.filter(
    ({ bedId, half, season: of, fill, skipped }) =>
      half === 'autumn' && of === season + 1 && !fill && !skipped && isSampled(garden, bedId, bed),
  );
}

/**
 * A sample's window, so that it comes before the compost it would measure: within its own weeks of autumn where a layer can
 * wait for them, and sooner only where a layer's last day comes before they begin.
 */
function beforeLayers(window: Window, layers: readonly BedDemand[]): { window: Window; layer: BedDemand | undefined } {
  const [layer] = [...layers].sort((a, b) => (a.window.preferred < b.window.preferred ? -1 : 1));
  if (layer === undefined) return { window, layer };
  const latest = earliestOf(window.latest, ...layers.map((each) => each.window.latest));
  const wanted = latestOf(window.earliest, layer.window.preferred);
  const preferred = earliestOf(window.preferred, wanted, latest);
  return { window: { earliest: earliestOf(window.earliest, preferred), preferred, latest }, layer };
}

function newest(tests: readonly SoilTest[]): SoilTest | undefined {
  return [...tests].sort((a, b) => (a.on < b.on ? -1 : 1)).at(-1);
}

/** The first autumn from the one it is due in whose sample can still be waited for. */
function nextDue(
  input: PracticeInput,
  last: SoilTest | undefined,
): { season: number; window: Window; freeze: Day } | undefined {
  const { garden, climate, today, until } = input;
  const turn = climate.seasonTurn;
  const first = seasonOf(turn, garden.startedOn);
  const since = last === undefined ? first : Math.max(first, seasonOf(turn, last.on) + SAMPLE_YEARS);
  for (let season = since; season <= seasonOf(turn, until); season += 1) {
    const autumn = autumnOf(input, season);
    if (autumn === undefined) continue;
    const { latest } = autumn.window;
    if (latest >= garden.startedOn && daysBetween(latest, today) <= STILL_WANTED_DAYS) return { season, ...autumn };
  }
  return undefined;
}

/** From six weeks before the first freeze to the hard one; nothing where no freeze comes. */
function autumnOf({ climate }: PracticeInput, season: number): { window: Window; freeze: Day } | undefined {
  const frozen = (limitF: 32 | 24): Day | undefined =>
    freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
  const [freeze, hard] = [frozen(32), frozen(24)];
  if (freeze === undefined) return undefined;
  const window = {
    earliest: addDays(freeze, -7 * AUTUMN_WEEKS),
    preferred: addDays(freeze, -BEST_DAYS_BEFORE),
    latest: latestOf(freeze, hard ?? freeze),
  };
  return { window, freeze };
}

function dueReason(last: SoilTest | undefined): Reason {
  return last === undefined
    ? { rule: 'soil-sample.first', saw: { years: SAMPLE_YEARS }, source: 'veg:V45' }
    : { rule: 'soil-sample.due', saw: { on: last.on, years: SAMPLE_YEARS }, source: 'veg:V45' };
}
