/**
 * What has to be bought or gathered before a week begins, told apart from the tools that hang in the shed.
 */
import type { Supply } from '../practices/draft.ts';
import { gatheredSupplies } from '../schedule/entry-text.ts';
import type { PlannedTask } from '../schedule/plan.ts';

/** Tools that a household has already, by a word of the supply. House default. */
const TOOLS =
  /\b(fork|broadfork|rake|trowel|shears|sickle|trimmer|knife|loppers|barrow|watering can|board to stand|brush|hose|mower|file|thermometer|water)\b/;

/** Whether a thing is used up or fetched rather than kept: what has an amount, and what is no tool. */
export function isToGet({ what, amount }: Supply): boolean {
  return amount !== undefined || !TOOLS.test(what);
}

/** Whether a task is itself the buying. */
export function isOrder({ kind }: Pick<PlannedTask, 'kind'>): boolean {
  return kind.startsWith('order-');
}

/** The things that work to come wants got beforehand, equal things added up; what is only ordered in it is got then. */
export function toGetFor(tasks: readonly PlannedTask[]): Supply[] {
  return gatheredSupplies(tasks.filter((task) => !isOrder(task)).flatMap(({ supplies }) => supplies)).filter(isToGet);
}
