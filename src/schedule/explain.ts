/**
 * Reasons turned into sentences: the one place that does it, so that a sentence can never disagree with its date.
 */
import { sources } from '../handbook/sources.ts';
import { dated } from '../measures/quantity.ts';
import { sentenceOf } from '../practices/catalogue.ts';
import type { Reason } from '../practices/draft.ts';
import type { Sentence } from '../practices/practice.ts';

/** Sentences of the schedule's own rules. */
const SCHEDULE_SENTENCES: Readonly<Record<string, Sentence>> = {
  'schedule.not-done': ({ saw }) =>
    `It stood on ${dated(String(saw.day))} and has not been marked done; its window is still open.`,
  'schedule.lapsed': ({ saw }) => `Its window closed on ${dated(String(saw.day))} and it has not been marked done.`,
  'schedule.given-up': ({ saw }) =>
    `Its window closed on ${dated(String(saw.day))}, and it was not marked done in the ${saw.days} days after.`,
  'schedule.window': ({ saw }) =>
    `Its window now runs from ${dated(String(saw.earliest))} to ${dated(String(saw.latest))}.`,
  'schedule.follows': ({ saw }) => `It comes after "${saw.task}", which is now on ${dated(String(saw.day))}.`,
  'schedule.work-day': ({ saw }) => `Nobody means to work in the garden on ${dated(String(saw.day))}.`,
  'schedule.away': ({ saw }) => `Nobody is at home on ${dated(String(saw.day))}.`,
  'schedule.alone': ({ saw }) =>
    `The work it went with has moved or is done; ${dated(String(saw.day))} suits it best by itself.`,
  'schedule.gathered': ({ saw }) => `It was gathered with other work on ${dated(String(saw.day))}.`,
  'schedule.goes-with': ({ saw }) => `It goes with "${saw.task}", which is now on ${dated(String(saw.day))}.`,
  'schedule.load': ({ saw }) =>
    `The load of the weeks was shared out anew: it stands on ${dated(String(saw.day))} instead of ${dated(String(saw.from))}.`,
  'schedule.hours': ({ saw }) =>
    `With this work, the week of ${dated(String(saw.monday))} would hold more than the hours you keep for the garden.`,
  'schedule.entries': ({ saw }) => `The week of ${dated(String(saw.monday))} holds enough other entries already.`,
  'schedule.pinned': ({ saw }) => `You pinned it to ${dated(String(saw.day))}.`,
  'schedule.best-past': ({ saw }) => `Its best day, ${dated(String(saw.best))}, is past.`,
  'schedule.waits': ({ saw }) =>
    `It waits for "${saw.task}" on ${dated(String(saw.day))}` +
    (saw.days === 0 ? '.' : `, and comes ${saw.days} ${saw.days === 1 ? 'day' : 'days'} after that at the soonest.`),
  'schedule.nobody-home': ({ saw }) => `Nobody is at home from ${dated(String(saw.from))} to ${dated(String(saw.to))}.`,
  'schedule.together': ({ saw }) =>
    `Its best day is ${dated(String(saw.best))}; it is done in one go with "${saw.task}".`,
  'schedule.shared-out': ({ saw }) =>
    `Its best day is ${dated(String(saw.best))}; it stands on ${dated(String(saw.day))} because the work of the weeks is ` +
    'shared out.',
  'schedule.put-off': ({ saw }) => `It was put off past ${dated(String(saw.day))}.`,
  'schedule.unpinned': () => 'It is no longer pinned.',
  'schedule.no-longer-wanted': () => 'Nothing in the garden asks for it any more.',
};

/**
 * A reason as a sentence; may hold marked amounts and days.
 *
 * @throws {RangeError} when no practice has a sentence for the rule
 */
export function reasonSentence(reason: Reason): string {
  const sentence = SCHEDULE_SENTENCES[reason.rule] ?? sentenceOf(reason.rule);
  if (sentence === undefined) throw new RangeError(`No sentence is written for the rule "${reason.rule}".`);
  return sentence(reason);
}

/** Whether there is a sentence for a rule: reasons kept from an older program may go by one that is no more. */
export function hasSentence({ rule }: Pick<Reason, 'rule'>): boolean {
  return (SCHEDULE_SENTENCES[rule] ?? sentenceOf(rule)) !== undefined;
}

/** Where a reason's figure comes from, for the reader: the book, or in words of our own. */
export function sourceLine(source: Reason['source']): string {
  return sources.find(({ id }) => id === source)?.citation ?? source;
}
