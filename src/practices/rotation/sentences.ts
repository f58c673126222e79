/**
 * The sentences of the rotation practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import type { Reason } from '../draft.ts';
import type { Practice } from '../practice.ts';

/** Every rule a changeover gives as a reason. */
export const rotationSentences: Practice['sentences'] = {
  'changeover.last-harvest': ({ saw }) => `The plan has the last of the ${saw.crop} in on ${dated(String(saw.day))}.`,
  'changeover.harvested': ({ saw }) =>
    `The last of the ${saw.crop} was in on ${dated(String(saw.day))}, and nothing says that the bed was cleared.`,
  'changeover.killed': ({ saw }) =>
    `The ${saw.crop} does not outlast a freeze of ${quantity(Number(saw.tempC), 'tempC')}, and in half of the years the ` +
    `first one has come by ${dated(String(saw.day))}.`,
  'changeover.maturity': ({ saw }) =>
    `The ${saw.crop} went in on ${dated(String(saw.from))} and takes ${dayRange(saw)} days to ripen; ` +
    `with its usual picking time it is over about ${dated(String(saw.day))}.`,
  'changeover.next': ({ saw, limit }) =>
    `Next comes ${saw.next} from ${dated(String(saw.day))}; a bed is cleared within ${limit} days.`,
  'changeover.family-returns': ({ saw, limit }) =>
    `Mind the rotation: ${saw.next} would follow ${saw.before} of the same family ` +
    `${saw.years === 0 ? 'in the same year' : `after ${saw.years} ${saw.years === 1 ? 'year' : 'years'}`}; ` +
    `${limit} years or more is the rule.`,
};

function dayRange({ daysLow, daysHigh }: Reason['saw']): string {
  return daysLow === daysHigh ? `about ${daysHigh}` : `${daysLow} to ${daysHigh}`;
}
