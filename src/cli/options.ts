/**
 * Options that several commands share.
 */
import { choiceValue, textValue, todayValue } from './values.ts';

const today = {
  flags: '--today <day>',
  about: 'stand on this day instead of the present one',
  value: todayValue.optional(),
};

const data = {
  flags: '--data <folder>',
  about: 'the data folder (default: LOAMTIDE_DATA, or ./data)',
  value: textValue('Name a folder, such as ./data.').optional(),
};

const garden = {
  flags: '--garden <id>',
  about: 'which garden, where the data folder holds several',
  value: textValue('Name a garden by its id, such as hollow-lane.').optional(),
};

/** What every command takes. */
export const everywhere = { today, data };

/** What a command about one garden takes. */
export const ofOneGarden = { today, data, garden };

/** The format of a report; text unless asked otherwise. */
export function formatOption<const Words extends readonly [string, ...string[]]>(...words: Words) {
  return {
    flags: '--format <format>',
    about: `${words.join(', ')} (default: text)`,
    value: choiceValue(words).optional(),
  };
}
