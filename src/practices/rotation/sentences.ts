/**
 * The sentences of the rotation practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import type { Reason } from '../draft.ts';
import { firstFreezeOf } from '../freeze-words.ts';
import type { Practice } from '../practice.ts';
import { diseaseSentences } from './disease-sentences.ts';

/** Every rule of the practice, in words. */
export const rotationSentences: Practice['sentences'] = {
  ...diseaseSentences,
  'changeover.last-harvest': ({ saw }) => `The plan has the last of the ${saw.crop} in on ${dated(String(saw.day))}.`,
  'changeover.moved-on': ({ saw }) =>
    `The plan had the last of the ${saw.crop} in on ${dated(String(saw.planned))}. It went in on ${dated(String(saw.from))} ` +
    `instead of ${dated(String(saw.meant))}, so the last of it is in on ${dated(String(saw.day))}.`,
  'changeover.harvested': ({ saw }) =>
    `The last of the ${saw.crop} was in on ${dated(String(saw.day))}, and nothing says that the bed was cleared.`,
  'changeover.frozen': ({ saw, limit }) =>
    `${quantity(Number(saw.tempC), 'tempC')} were measured in the night of ${dated(String(saw.evening))}, with the ${saw.crop} ` +
    `uncovered: few live through ${quantity(Number(limit), 'tempC')}.`,
  'changeover.killed': ({ saw }) =>
    `The ${saw.crop} does not outlast a freeze of ${quantity(Number(saw.tempC), 'tempC')}, and in half of the years the ` +
    `first one has come by ${dated(String(saw.day))}.`,
  'changeover.maturity': ({ saw }) =>
    `The ${saw.crop} went in on ${dated(String(saw.from))} and takes ${dayRange(saw)} days to ripen; ` +
    `with its usual picking time it is over about ${dated(String(saw.day))}.`,
  'changeover.over-winter': ({ saw }) =>
    `The ${saw.crop} went in on ${dated(String(saw.from))} and stands through winter, in which it hardly grows. The ` +
    `${dayRange(saw)} days it takes to ripen are counted from ${dated(String(saw.counted))}, when its kind may first go in ` +
    `in spring; with its usual picking time it is over by about ${dated(String(saw.day))}.`,
  'changeover.lifted-in': ({ saw }) =>
    `The ${saw.crop} went in on ${dated(String(saw.from))}. However late it was planted, it is lifted about midsummer, from ` +
    `${dated(String(saw.opens))} to ${dated(String(saw.closes))}: long days ripen it, and its leaves tell the day.`,
  'changeover.next': ({ saw, limit }) =>
    `Next comes ${saw.next} from ${dated(String(saw.day))}; a bed is cleared within ${limit} days.`,
  'changeover.locked-out': ({ saw }) =>
    `Mind the disease: ${saw.next} is planned here for ${dated(String(saw.day))}, and ${saw.disease} keeps it out` +
    `${saw.until === undefined ? ' for good' : ` until ${dated(String(saw.until))}`}.`,
  'changeover.family-returns': ({ saw, limit }) =>
    `Mind the rotation: ${saw.next} would follow ${saw.before} of the same family ` +
    `${saw.years === 0 ? 'in the same year' : `after ${saw.years} ${saw.years === 1 ? 'year' : 'years'}`}; ` +
    `${limit} years or more is the rule.`,
  'settle.before-covers': ({ saw, limit }) =>
    `The first freeze has come by ${dated(String(saw.freeze))} in half of the years. The plan is settled from ` +
    `${saw.weeks} weeks before it, ahead of the covers that hang on it, to ` +
    `${dated(String(limit))}${saw.hard === 'yes' ? `, about ${firstFreezeOf(24)}` : ''}; seed is ordered after that.`,
  'settle.intervals': ({ saw }) =>
    `A family of crops waits ${saw.yearsLow} to ${saw.yearsHigh} years, each its own, before it comes back to a bed; ` +
    'longer where a disease of it is known.',
  'settle.returns': ({ saw, limit }) =>
    `${saw.bed}: ${saw.next} after ${saw.before} of the same family would be ${saw.years} ` +
    `${saw.years === 1 ? 'year' : 'years'}, and ${limit} are asked for.`,
  'settle.legume-first': () =>
    'Legume, then hungry crop, then a modest one is the custom; no trial is known to rank it.',
  'settle.history': ({ saw }) =>
    `For ${saw.beds} ${saw.beds === 1 ? 'bed' : 'beds'} the file does not reach back as far as the longest wait before ` +
    `${saw.season}: what is not known breaks no rule.`,
};

function dayRange({ daysLow, daysHigh }: Reason['saw']): string {
  return daysLow === daysHigh ? `about ${daysHigh}` : `${daysLow} to ${daysHigh}`;
}
