/**
 * Ledger entries as a reader would tell them.
 */
import { mendInWords } from '../../digest/mend-words.ts';
import { fullDay } from '../../digest/words.ts';
import { isChosen, isOfPeople, isSeen, isWork } from '../../garden/fact-kinds.ts';
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
  if (isWork(fact)) return workInWords(fact, reader);
  if (isSeen(fact)) return seenInWords(fact, reader);
  if (isChosen(fact)) return chosenInWords(fact, reader);
  if (isOfPeople(fact)) return householdInWords(fact, reader);
  switch (fact.kind) {
    case 'garden-imported':
      return `Garden file brought in: ${fact.file.garden.name}`;
    case 'garden-mended':
      return mendInWords(fact.edits, reader);
    case 'entry-undone':
      return `Took back entry ${fact.entry}`;
    case 'away-told':
      return `Away from ${fullDay(fact.from, reader.units)} to ${fullDay(fact.to, reader.units)}`;
    default:
      return fact satisfies never;
  }
}
