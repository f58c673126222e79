/**
 * Options that several commands share.
 */
import { choiceValue, portValue, textValue, todayValue } from './values.ts';

/** The address that is listened on unless another is named. */
export const LOOPBACK = '127.0.0.1';

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

/** Where the pages are answered: what serve takes, and whoever looks at how it stands with that. */
export const listening = {
  port: { flags: '--port <number>', about: 'port (default: LOAMTIDE_PORT, or 8137)', value: portValue.optional() },
  host: {
    flags: '--host <address>',
    about: `the address to listen on (default: LOAMTIDE_ADDRESS, or ${LOOPBACK}); others than loopback ones want a password`,
    value: textValue('Give an address of this computer, such as 127.0.0.1.').optional(),
  },
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
