/**
 * What was said of tasks, in words: done, skipped, put off, pinned.
 */
import { fullDay } from '../../digest/words.ts';
import type { Effect } from '../../garden/effects.ts';
import type { WorkFact } from '../../garden/fact-kinds.ts';
import type { DoneTask } from '../../garden/facts.ts';
import { fertiliserById } from '../../handbook/fertilisers.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { ToldReader } from './told-reader.ts';

/** What such a fact says, in one line. */
export function workInWords(fact: WorkFact, reader: ToldReader): string {
  const { units, beside, day } = reader;
  switch (fact.kind) {
    case 'tasks-done':
      return `Done on ${day(fact.on)}: ${fact.tasks.map((task) => doneInWords(task, reader)).join('; ')}`;
    case 'tasks-skipped':
      return `Skipped: ${titlesInWords(fact, reader)}`;
    case 'put-off':
      return `Put off past ${fullDay(fact.on, units)}: ${titlesInWords(fact, reader)}`;
    case 'day-pinned':
      return `Pinned to ${fullDay(fact.day, units)}: ${readableIn(units, fact.title, beside)}`;
    case 'day-unpinned':
      return `No longer pinned: ${readableIn(units, fact.title, beside)}`;
    default:
      return fact satisfies never;
  }
}

/** The titles of tasks, one after another. */
export function titlesInWords(
  { tasks }: { tasks: readonly { title: string }[] },
  { units, beside }: ToldReader,
): string {
  return tasks.map(({ title }) => readableIn(units, title, beside)).join('; ');
}

/** A task that was done, with what was used where later work counts on it. */
function doneInWords({ title, makes }: DoneTask, { units, beside }: ToldReader): string {
  const told = readableIn(units, title, beside);
  const used = [...new Set(makes.flatMap((effect) => usedInWords(effect, units)))];
  const news = used.filter((words) => !told.includes(words));
  return news.length === 0 ? told : `${told} (${news.join(', ')})`;
}

function usedInWords(effect: Effect, units: UnitSystem): string[] {
  if (effect.makes === 'bed-fed' && effect.grams > 0)
    return [
      `${formatQuantity({ value: effect.grams, unit: 'g' }, units)} of ${fertiliserById(effect.fertiliserId).name}`,
    ];
  if (!('litres' in effect) || !effect.litres) return [];
  const amount = formatQuantity({ value: effect.litres, unit: 'L' }, units);
  return [effect.makes === 'pile-built' ? `${amount} in all` : `${amount} of compost`];
}
