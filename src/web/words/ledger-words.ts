/**
 * Ledger entries as a reader would tell them.
 */
import { mendInWords } from '../../digest/mend-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { Fact } from '../../garden/facts.ts';
import type { Day } from '../../measures/days.ts';
import { chosenInWords } from './chosen-words.ts';
import { householdInWords } from './household-words.ts';
import { seenInWords } from './seen-words.ts';
import { type ToldGarden, toldReader } from './told-reader.ts';
import { workInWords } from './work-words.ts';

/**
 * What a fact says, in one line.
 *
 * @param beside a day the reader has in mind: days of another year are written with their year
 */
export function factInWords(fact: Fact, garden: ToldGarden, beside: Day): string {
  const reader = toldReader(garden, beside);
  switch (fact.kind) {
    case 'garden-imported':
      return `Garden file brought in: ${fact.file.garden.name}`;
    case 'garden-mended':
      return mendInWords(fact.edits, reader);
    case 'entry-undone':
      return `Took back entry ${fact.entry}`;
    case 'away-told':
      return `Away from ${fullDay(fact.from, reader.units)} to ${fullDay(fact.to, reader.units)}`;
    case 'member-kept':
    case 'member-gone':
    case 'mail-stopped':
    case 'people-told':
      return householdInWords(fact, reader);
    case 'tasks-done':
    case 'tasks-skipped':
    case 'put-off':
    case 'day-pinned':
    case 'day-unpinned':
    case 'task-assigned':
      return workInWords(fact, reader);
    case 'pile-read':
    case 'compost-not-ready':
    case 'cold-night-told':
    case 'soil-squeezed':
    case 'disease-found':
    case 'stage-seen':
    case 'stand-looked':
    case 'regrowth-seen':
    case 'weather-logged':
      return seenInWords(fact, reader);
    case 'stand-planned':
    case 'stand-dropped':
    case 'mulch-planned':
    case 'plantings-planned':
    case 'crop-wished':
    case 'wish-dropped':
      return chosenInWords(fact, reader);
    default:
      return fact satisfies never;
  }
}
