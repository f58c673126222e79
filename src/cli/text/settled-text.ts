/**
 * Tasks settled from the command line: what was taken in, what is doubted of it, and what it moved.
 */
import { fullDay } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { addDays } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { GardenView, Steward, TaskMove } from '../../steward/doings/steward.ts';
import { doneDoubts } from '../../steward/doubts/done-doubts.ts';
import { movesBetween } from '../../steward/ledger/moves-between.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import type { Call } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import type { formatOption, ofOneGarden } from '../command-line/options.ts';
import { moveLines, section } from './moves-text.ts';
import { writeJson, writeLines } from './output.ts';

/** What a command that settles tasks takes besides its own options. */
type Settling = typeof ofOneGarden & { format: ReturnType<typeof formatOption<['text', 'json']>> };

/** What came of settling tasks. */
interface Settled {
  view: GardenView;
  entry: LedgerEntry | undefined;
  doubts: readonly string[];
  moves: readonly TaskMove[];
}

/** Settles the tasks a command names, or lists what could be named where it names none. */
export function settleTasks<Options extends Settling>(
  call: Call<Options>,
  settle: (steward: Steward, view: GardenView, keys: readonly string[]) => Promise<unknown>,
): Promise<void> {
  const { at, words: keys } = call;
  const options = call.options as Call<Settling>['options'];
  return withHousehold(call as Call<Settling>, { onlyLook: keys.length === 0 }, async ({ steward }) => {
    const gardenId = await chosenGarden(steward, options.garden);
    const before = await steward.view(gardenId);
    if (keys.length === 0) return listed(call as Call<Settling>, before);
    await settle(steward, before, [...new Set(keys)]);
    const view = await steward.view(gardenId);
    const entry = view.ledger.at(-1);
    const moves = movesBetween(before.plan, view.plan).filter(({ key }) => !keys.includes(key));
    const settled = { view, entry, moves, doubts: entry === undefined ? [] : doubtsOf(view, entry) };
    const { units } = view.garden.place;
    if (options.format === 'json') writeJson(at.stdout, settledJson(settled), units);
    else writeLines(at.stdout, settledLines(settled));
  });
}

function doubtsOf(view: GardenView, { fact }: LedgerEntry): string[] {
  return fact.kind === 'tasks-done' ? fact.tasks.flatMap((task) => doneDoubts(view, task, fact.on)) : [];
}

function settledLines({ view: { garden, plan }, entry, doubts, moves }: Settled): string[] {
  const { units } = garden.place;
  return [
    ...wrapped(entry === undefined ? '' : `Entry ${entry.entry}: ${factInWords(entry.fact, garden, plan.today)}`),
    ...section(
      'Look again:',
      doubts.map((doubt) => readableIn(units, doubt, plan.today)),
    ),
    ...moveLines('What moved:', moves, units),
  ];
}

function settledJson({ view: { garden, plan }, entry, doubts, moves }: Settled): object {
  const text = entry && factInWords(entry.fact, garden, plan.today);
  return { garden: garden.id, today: plan.today, entry: entry?.entry, text, doubts, moves };
}

/** Days ahead that are listed where no key was named: two weeks. House default. */
const LISTED_DAYS = 14;

function listed({ at, options }: Call<Settling>, { garden, plan }: GardenView): void {
  const until = addDays(plan.today, LISTED_DAYS);
  const open = plan.tasks.filter(({ state, day }) => state === 'lapsed' || (state === 'open' && day < until));
  if (options.format === 'json') {
    const tasks = open.map(({ key, title, day, state }) => ({ key, title, day, state }));
    writeJson(at.stdout, { garden: garden.id, today: plan.today, tasks }, garden.place.units);
  } else writeLines(at.stdout, listedLines(open, garden.place.units));
}

function listedLines(open: readonly PlannedTask[], units: UnitSystem): string[] {
  if (open.length === 0) return ['Nothing is open in the next two weeks.'];
  const line = ({ key, title, day }: PlannedTask): string[] => [
    ...wrapped(`${readableIn(units, title, day)} (${fullDay(day, units)})`),
    `  ${key}`,
  ];
  return ['Name tasks by their keys. Open in the next two weeks, or left over:', '', ...open.flatMap(line)];
}
