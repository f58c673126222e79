/**
 * What a calendar entry says: its title and, below it, steps, amounts, cautions and reasons in plain words.
 */
import { capital } from '../measures/capital.ts';
import { inNumberOrder } from '../measures/number-order.ts';
import { formatQuantity, readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { Supply, TaskKey } from '../practices/draft.ts';
import { reasonSentence } from './explain.ts';
import type { Entry, Plan, PlannedTask } from './plan.ts';

/** An entry written out for its reader. */
interface EntryText {
  title: string;
  description: string;
  categories: string[];
}

/** The tasks of an entry, in its own order. */
export function tasksOf(plan: Pick<Plan, 'tasks'>, entry: Pick<Entry, 'keys'>): PlannedTask[] {
  const byKey = tasksByKey(plan.tasks);
  return entry.keys.flatMap((key) => byKey.get(key) ?? []);
}

/** Tasks by key, made once for each list of them: a plan writes its entries out one after another. */
const madeByKey = new WeakMap<readonly PlannedTask[], ReadonlyMap<TaskKey, PlannedTask>>();

function tasksByKey(tasks: readonly PlannedTask[]): ReadonlyMap<TaskKey, PlannedTask> {
  const made = madeByKey.get(tasks) ?? new Map(tasks.map((task) => [task.key, task]));
  madeByKey.set(tasks, made);
  return made;
}

/** An entry's text in the reader's units. */
export function entryText(plan: Pick<Plan, 'tasks'>, entry: Entry, units: UnitSystem): EntryText {
  const tasks = tasksOf(plan, entry);
  return {
    title: readableIn(units, entry.title, entry.day),
    description: readableIn(units, descriptionOf(tasks), entry.day),
    categories: [...new Set(tasks.map((task) => PRACTICE_WORDS[task.practice]))],
  };
}

/** One word or two a practice, as the pages and the feed name it. */
export const PRACTICE_WORDS: Readonly<Record<PlannedTask['practice'], string>> = {
  'soil-readiness': 'Soil',
  planting: 'Planting',
  'cover-cropping': 'Cover crops',
  composting: 'Compost',
  topdressing: 'Topdressing',
  'new-beds': 'New beds',
  mulching: 'Mulch',
  rotation: 'Rotation',
  fertility: 'Fertility',
  'frost-watch': 'Frost watch',
  'season-end': 'Season end',
};

/** A title for tasks done together: the job and its subjects, or the one task's own title. */
export function titleOf(tasks: readonly Pick<PlannedTask, 'job' | 'title' | 'subject' | 'weight'>[]): string {
  const [first] = tasks;
  if (first === undefined) return '';
  const same = tasks.filter((task) => task.job.id === first.job.id);
  if (same.length === 1) return first.title;
  return `${first.job.title}: ${subjectNames(first.job.title, same)}`;
}

/** Subjects in a row: stands of one cover, or beds of one crop, share its name, which is left out where the job has said it. */
function subjectNames(job: string, tasks: readonly Pick<PlannedTask, 'subject'>[]): string {
  const covers = new Map<string, Set<string>>();
  for (const { subject } of tasks) {
    const grown = 'bedId' in subject ? subject : undefined;
    const grows = grown?.grows ?? '';
    // two plantings of one bed are one bed to walk to
    covers.set(grows, (covers.get(grows) ?? new Set()).add(grown?.bedName ?? subject.name));
  }
  return [...covers]
    .map(([grows, beds]) => [grows, inNumberOrder([...beds]).join(', ')] as const)
    .map(([grows, beds]) => (grows === '' || job.includes(grows) ? beds : `${grows} in ${beds}`))
    .join('; ');
}

/** The text below the title, amounts and days still marked. */
export function descriptionOf(tasks: readonly PlannedTask[]): string {
  const blocks = [
    givenLines(tasks).join('\n'),
    stepLines(tasks).join('\n'),
    suppliesBlock(tasks),
    windowBlock(tasks),
    cautionsBlock(tasks),
    whyBlock(tasks),
  ];
  return blocks.filter((block) => block !== '').join('\n\n');
}

/** Whom the work was given to, a sentence a line: one name for all of it, or each with what of it is theirs. */
function givenLines(tasks: readonly Pick<PlannedTask, 'state' | 'assignedTo' | 'subject'>[]): string[] {
  const open = tasks.filter(({ state }) => state === 'open' || state === 'lapsed');
  const names = [...new Set(open.flatMap(({ assignedTo }) => assignedTo ?? []))];
  if (names.length === 1 && open.every(({ assignedTo }) => assignedTo !== undefined)) return [`For ${names[0]}.`];
  return names.map((name) => {
    const theirs = open.filter(({ assignedTo }) => assignedTo === name);
    return `${capital(inNumberOrder(theirs.map(({ subject }) => subject.name)).join(', '))}: for ${name}.`;
  });
}

/** Work and what rides along with it; an entry of checks alone is its own work. */
function parted(tasks: readonly PlannedTask[]): { work: readonly PlannedTask[]; riders: readonly PlannedTask[] } {
  const work = tasks.filter(({ weight }) => weight !== 'check');
  if (work.length === 0) return { work: tasks, riders: [] };
  return { work, riders: tasks.filter(({ weight }) => weight === 'check') };
}

/** How tasks done together are done: what all share said once, then what is one's own after its name. Amounts are marked. */
export function stepLines(tasks: readonly PlannedTask[]): string[] {
  const { work, riders } = parted(tasks);
  const shared = sharedLines(work.map(({ steps }) => steps));
  const own = work.map(({ subject, steps }) =>
    named(
      subject.name,
      steps.filter((step) => !shared.includes(step)),
    ),
  );
  const checks = riders.map(({ title, steps }) => named(title, steps));
  return [...shared, ...own, ...checks].filter((line) => line !== '');
}

function named(name: string, lines: readonly string[]): string {
  return lines.length === 0 ? '' : `${capital(name)}: ${lines.join(' ')}`;
}

/** Lines that every task's list holds, so that they need saying once. */
function sharedLines(lists: readonly (readonly string[])[]): string[] {
  const [first = [], ...rest] = lists;
  return rest.length === 0 ? [...first] : first.filter((line) => rest.every((list) => list.includes(line)));
}

function suppliesBlock(tasks: readonly PlannedTask[]): string {
  const lines = gatheredSupplies(tasks.flatMap(({ supplies }) => supplies)).map(supplyLine);
  return lines.length === 0 ? '' : `To hand: ${lines.join('; ')}.`;
}

/** Supplies of several tasks, equal things added up; amounts in different units stay apart. */
export function gatheredSupplies(supplies: readonly Supply[]): Supply[] {
  const byName = new Map<string, Supply>();
  for (const supply of supplies) {
    const name = `${supply.what}|${supply.amount?.unit ?? ''}`;
    const held = byName.get(name);
    byName.set(name, held === undefined ? supply : sumOf(held, supply));
  }
  const all = [...byName.values()];
  const measured = new Set(all.flatMap(({ what, amount }) => (amount === undefined ? [] : [what])));
  return all.filter(({ what, amount }) => amount !== undefined || !measured.has(what));
}

function sumOf(a: Supply, b: Supply): Supply {
  if (!a.amount || !b.amount) return a;
  return { what: a.what, amount: { unit: a.amount.unit, value: a.amount.value + b.amount.value } };
}

/** A supply in words, its amount marked for the reader's units. */
export function supplyLine({ what, amount, also }: Supply): string {
  if (amount === undefined) return what;
  return `${what} ⟦${amount.value} ${amount.unit}⟧${also === undefined ? '' : ` (${also})`}`;
}

function windowBlock(tasks: readonly PlannedTask[]): string {
  const { work } = parted(tasks);
  return work
    .filter(({ state }) => state === 'open' || state === 'lapsed')
    .map((task) => windowLine(task, work.length > 1))
    .join('\n');
}

function windowLine(task: PlannedTask, named: boolean): string {
  const { earliest, latest } = task.window;
  const name = named ? `${capital(task.subject.name)}: ` : '';
  const span = earliest === latest ? `on ⟦${latest}⟧` : `from ⟦${earliest}⟧ to ⟦${latest}⟧`;
  const state = task.state === 'lapsed' ? ` That has passed. ${task.missedNote}` : '';
  const pin = task.pinWarning === undefined ? '' : ` ${task.pinWarning}`;
  return `${name}Window ${span}.${state}${pin}`;
}

function cautionsBlock(tasks: readonly PlannedTask[]): string {
  const lines = [...new Set(tasks.flatMap(({ cautions }) => cautions))];
  return lines.length === 0 ? '' : `Take care:\n${lines.map((line) => `- ${line}`).join('\n')}`;
}

function whyBlock(tasks: readonly PlannedTask[]): string {
  const lines = [...new Set(tasks.flatMap(({ reasons }) => reasons.map(reasonSentence)))];
  return lines.length === 0 ? '' : `Why then:\n${lines.map((line) => `- ${line}`).join('\n')}`;
}

/** An amount of a supply in the reader's units, for tables. */
export function supplyAmount({ amount }: Supply, units: UnitSystem): string {
  return amount === undefined ? '' : formatQuantity(amount, units);
}
