/**
 * Amounts that a task is marked done with: asked for in the reader's unit where later arithmetic counts on them, with what
 * was planned filled in.
 */
import type { Effect } from '../garden/effects.ts';
import { fertiliserById } from '../handbook/fertilisers.ts';
import { readableIn } from '../measures/quantity.ts';
import { GRAMS_PER_OUNCE, LITRES_PER_CUBIC_FOOT, type UnitSystem } from '../measures/units.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { PlannedTask } from '../schedule/plan.ts';
import type { Used } from '../steward/steward.ts';
import { type Form, SHOWN_CHARACTERS } from './form.ts';

/** One amount a task is asked for. */
export interface AskedAmount {
  /** Name of its field. */
  field: string;
  /** What it is of, as the field's label begins: "How much compost". */
  label: string;
  /** The reader's unit. */
  unit: string;
  /** What was planned, as the field shows it. */
  planned: string;
  measure: keyof Used;
  /** Litres or grams in one of the reader's unit. */
  per: number;
}

interface Unit {
  label: string;
  per: number;
  /** Figures behind the point. */
  digits: number;
}

const UNITS: Readonly<Record<keyof Used, Readonly<Record<UnitSystem, Unit>>>> = {
  litres: {
    us: { label: 'cu ft', per: LITRES_PER_CUBIC_FOOT, digits: 1 },
    metric: { label: 'L', per: 1, digits: 1 },
  },
  grams: {
    us: { label: 'oz', per: GRAMS_PER_OUNCE, digits: 2 },
    metric: { label: 'g', per: 1, digits: 1 },
  },
};

/** What an effect's amount is of, as its label asks for it. */
function labelOf(effect: Effect): string {
  return `How much ${effect.makes === 'bed-fed' ? fertiliserById(effect.fertiliserId).name : 'compost'}`;
}

/** The amounts a task is marked done with; none where nothing that comes later counts on one. */
export function askedAmounts({ key, makes }: Pick<PlannedTask, 'key' | 'makes'>, units: UnitSystem): AskedAmount[] {
  const asked = makes.flatMap((effect): AskedAmount[] => {
    const label = labelOf(effect);
    if ('litres' in effect) return [askedFor({ key, label, measure: 'litres', amount: effect.litres }, units)];
    if ('grams' in effect) return [askedFor({ key, label, measure: 'grams', amount: effect.grams }, units)];
    return [];
  });
  return asked.filter(({ field }, at) => asked.findIndex((each) => each.field === field) === at);
}

function askedFor(
  { key, label, measure, amount }: { key: TaskKey; label: string; measure: keyof Used; amount: number },
  units: UnitSystem,
): AskedAmount {
  const unit = UNITS[measure][units];
  const planned = String(Number((amount / unit.per).toFixed(unit.digits)));
  return { field: `${measure}:${key}`, label, unit: unit.label, planned, measure, per: unit.per };
}

/** Amounts that were changed from what was planned; what is no amount is refused under its task. */
export function usedIn(form: Form, tasks: readonly PlannedTask[], units: UnitSystem): Record<TaskKey, Used> {
  const used: Record<TaskKey, Used> = {};
  for (const task of tasks) {
    for (const { field, planned, measure, per, label } of askedAmounts(task, units)) {
      const typed = form.text(field);
      if (typed === '' || typed === planned) continue;
      const amount = Number(typed.replace(',', '.'));
      if (amount > 0 && Number.isFinite(amount)) used[task.key] = { ...used[task.key], [measure]: amount * per };
      else {
        const what = `"${typed.slice(0, SHOWN_CHARACTERS)}" is not an amount.`;
        const mend = `Give a number above 0, such as ${planned}.`;
        form.refuse({ where: `${label}: ${readableIn(units, task.title)}`, what, mend });
      }
    }
  }
  return used;
}
