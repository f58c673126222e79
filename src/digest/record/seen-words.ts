/**
 * What was seen, in the few words of a record's note.
 */
import type { NotReady, PileReading, Regrowth, StageSeen } from '../../garden/garden.ts';
import type { Doing } from './row.ts';

/** Stages of flowering. */
export const STAGE_NOTES: Readonly<Record<StageSeen['stage'], string>> = {
  'first-buds': 'first buds',
  'in-bloom': 'flowers',
};

/** What a look at compost found amiss. */
export const FAILED_WORDS: Readonly<Record<NotReady['failed'][number], string>> = {
  heats: 'it heats again',
  smells: 'it smells sharp or sour in the bag',
  coarse: 'what went in can still be told apart',
};

/** What a look at a pile found besides its heat: "at 14:30, damp, earthy". Empty where nothing was noted. */
export function readingNote({ at, moisture, smell, pests, slumped }: PileReading): string {
  const parts = [at && `at ${at}`, moisture, smell, pests && 'pests at it', slumped && 'slumped'];
  return parts.filter((part) => part !== undefined).join(', ');
}

const REGROWTH_DOINGS: Readonly<Record<Regrowth['what'], Doing>> = {
  'grew-again': 'regrowth-seen',
  'cut-again': 'regrowth-cut',
  'sheet-laid': 'sheet-laid',
  'sheet-lifted': 'sheet-lifted',
};

/** That a cover grew again, or what was done about it. */
export function regrowthDoing(told: Regrowth): { doing: Doing; note?: string } {
  const doing = REGROWTH_DOINGS[told.what];
  if (told.what !== 'grew-again' || told.answer === undefined) return { doing };
  return { doing, note: told.answer === 'cut' ? 'to be cut again' : 'to go under a sheet' };
}
