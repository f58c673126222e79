/**
 * Amounts that a task is marked done with: asked for in the reader's unit where later arithmetic counts on them, with what
 * was planned filled in.
 */
import { type Effect, isOfSeed } from '../../garden/effects.ts';
import type { Problem } from '../../garden/problem.ts';
import { fertiliserById, nitrogenFertilisers } from '../../handbook/fertilisers.ts';
import { readableIn } from '../../measures/quantity.ts';
import { isUnclear, readNumber } from '../../measures/typed-number.ts';
import { GRAMS_PER_OUNCE, LITRES_PER_CUBIC_FOOT, type UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { Used } from '../../steward/doings/steward.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';

/** One amount a task is asked for. */
interface AskedAmount {
  /** Name of its field. */
  field: string;
  /** What it is of, as the field's label begins: "How much compost". */
  label: string;
  /** The reader's unit. */
  unit: string;
  /** What was planned, as the field shows it; empty where nobody knows. */
  planned: string;
  measure: Measure;
  /** The cover it is seed of, where it is seed. */
  seedOf?: string;
  /** Litres or grams in one of the reader's unit. */
  per: number;
}

/** What is told in figures of what was used. */
type Measure = 'litres' | 'grams';

type AskedOf = Pick<PlannedTask, 'key' | 'kind' | 'makes'>;

interface Unit {
  label: string;
  per: number;
  /** Figures behind the point. */
  digits: number;
}

const UNITS: Readonly<Record<Measure, Readonly<Record<UnitSystem, Unit>>>> = {
  litres: {
    us: { label: 'cu ft', per: LITRES_PER_CUBIC_FOOT, digits: 1 },
    metric: { label: 'L', per: 1, digits: 1 },
  },
  grams: {
    us: { label: 'oz', per: GRAMS_PER_OUNCE, digits: 2 },
    metric: { label: 'g', per: 1, digits: 1 },
  },
};

/** What an effect's amount is of, as its label asks for it; of what is chosen beside it, no more than "of it". */
function labelOf(effect: Effect, isChosen: boolean): string {
  if (effect.makes === 'pile-built') return 'How much went in, all together';
  if (isOfSeed(effect)) return `How much ${coverName(effect.coverId)} seed`;
  if (effect.makes !== 'bed-fed') return 'How much compost';
  return `How much ${isChosen ? 'of it' : fertiliserById(effect.fertiliserId).name}`;
}

/** The amounts a task is marked done with; none where nothing that comes later counts on one. */
export function askedAmounts(task: AskedOf, units: UnitSystem): AskedAmount[] {
  const { key, makes } = task;
  const asked = makes.flatMap((effect): AskedAmount[] => {
    const label = labelOf(effect, askedChoice(task) !== undefined);
    if ('litres' in effect && effect.litres !== undefined)
      return [askedFor({ key, label, measure: 'litres', amount: effect.litres }, units)];
    if (isOfSeed(effect))
      return [askedFor({ key, label, measure: 'grams', amount: effect.grams, seedOf: effect.coverId }, units)];
    if ('grams' in effect) return [askedFor({ key, label, measure: 'grams', amount: effect.grams }, units)];
    return [];
  });
  return asked.filter(({ field }, at) => asked.findIndex((each) => each.field === field) === at);
}

/** Names of all the fields that ask for what was used. */
export function fieldsOf(task: AskedOf, units: UnitSystem): string[] {
  return [...askedAmounts(task, units), askedChoice(task)].flatMap((asked) => asked?.field ?? []);
}

interface Asking {
  key: TaskKey;
  label: string;
  measure: Measure;
  amount: number;
  seedOf?: string;
}

function askedFor({ key, label, measure, amount, seedOf }: Asking, units: UnitSystem): AskedAmount {
  const unit = UNITS[measure][units];
  const planned = amount === 0 ? '' : String(Number((amount / unit.per).toFixed(unit.digits)));
  const asked = { label, unit: unit.label, planned, measure, per: unit.per };
  return seedOf === undefined
    ? { field: `${measure}:${key}`, ...asked }
    : { field: `${measure}:${seedOf}:${key}`, ...asked, seedOf };
}

/** Which of several things a task was done with, where its amount says nothing without that. */
interface AskedChoice {
  field: string;
  label: string;
  planned: string;
  choices: readonly { id: string; name: string }[];
}

/** What a task is asked to choose: the meal that was strewn for a crop. */
export function askedChoice({ key, kind, makes }: AskedOf): AskedChoice | undefined {
  const fed = makes.find((effect) => effect.makes === 'bed-fed');
  if (fed === undefined || kind !== 'feed-crop') return undefined;
  const choices = nitrogenFertilisers.map(({ id, name, analysis }) => ({ id, name: `${name} (${analysis})` }));
  return { field: `of:${key}`, label: 'What was strewn', planned: fed.fertiliserId, choices };
}

/** What was used otherwise than planned; what is no amount, and no choice, is refused under its task. */
export function usedIn(form: Form, tasks: readonly PlannedTask[], units: UnitSystem): Record<TaskKey, Used> {
  const used: Record<TaskKey, Used> = {};
  for (const task of tasks) {
    const chosen = chosenIn(form, task, units);
    if (chosen !== undefined) used[task.key] = { fertiliserId: chosen };
    for (const { field, planned, measure, per, label, seedOf } of askedAmounts(task, units)) {
      const typed = form.text(field);
      if (typed === '' || typed === planned) continue;
      const amount = readNumber(typed) ?? 0;
      if (amount > 0 && Number.isFinite(amount))
        used[task.key] = withAmount(used[task.key], measure, amount * per, seedOf);
      else form.refuse({ where: `${label}: ${readableIn(units, task.title)}`, ...noAmount(typed, planned) });
    }
  }
  return used;
}

function noAmount(typed: string, planned: string): Pick<Problem, 'what' | 'mend'> {
  const shown = `"${typed.slice(0, SHOWN_CHARACTERS)}"`;
  if (!isUnclear(typed))
    return { what: `${shown} is not an amount.`, mend: `Give a number above 0, such as ${planned || 100}.` };
  const [thousands, tenths] = [typed.replace(',', ''), typed.replace(',', '.')];
  return { what: `${shown} may be ${thousands} or ${tenths}.`, mend: `Write ${thousands} or ${tenths}.` };
}

function withAmount(used: Used | undefined, measure: Measure, amount: number, seedOf: string | undefined): Used {
  if (seedOf === undefined) return { ...used, [measure]: amount };
  return { ...used, seed: { ...used?.seed, [seedOf]: amount } };
}

function chosenIn(form: Form, task: PlannedTask, units: UnitSystem): string | undefined {
  const asked = askedChoice(task);
  const given = asked === undefined ? '' : form.text(asked.field);
  if (asked === undefined || given === '' || given === asked.planned) return undefined;
  if (asked.choices.some(({ id }) => id === given)) return given;
  const what = `"${given.slice(0, SHOWN_CHARACTERS)}" is not one of the choices.`;
  form.refuse({ where: `${asked.label}: ${readableIn(units, task.title)}`, what, mend: 'Choose one of the list.' });
  return undefined;
}
