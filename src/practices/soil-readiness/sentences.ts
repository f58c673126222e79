/**
 * The sentences of the soil-readiness practice.
 */
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { Practice } from '../practice.ts';

/** Every rule of the practice, in words. */
export const soilReadinessSentences: Practice['sentences'] = {
  'squeeze.awake': ({ saw, limit }) =>
    `In the middle year the soil wakes (${quantity(Number(saw.tempC), 'tempC')}) about ${dated(String(saw.awake))}; ` +
    `whether it is dry enough by then nobody can reckon yet, so a handful decides, by ${dated(String(limit))}.`,
  'squeeze.fit': ({ saw, limit }) =>
    `Over ${saw.years} seasons of the record, and this one so far, snow is gone, the ground thawed, at ` +
    `${quantity(Number(saw.tempC), 'tempC')} and drained by ${dated(String(saw.awake))} in the middle one. That is ` +
    `reckoned; a handful decides, by ${dated(String(limit))}.`,
  'squeeze.setback': ({ saw }) =>
    `${SETBACKS[String(saw.state)] ?? ''} on ${dated(String(saw.on))}. From there the middle one of ${saw.years} seasons ` +
    `has it melted, thawed and drained by ${dated(String(saw.fit))}; what the soil said before no longer counts.`,
  'squeeze.snow-told': ({ saw }) =>
    `${SETBACKS[String(saw.state)] ?? ''} on ${dated(String(saw.on))}, by the log. Without a daily record nobody can reckon ` +
    `when it is gone: then, and ${saw.days} days for its water, a handful says more.`,
  'squeeze.before-work': ({ saw }) =>
    `The first work planned in this soil is ${saw.what} in ${saw.bed} on ${dated(String(saw.day))}; ` +
    `${saw.days} days before it leave room for a second handful.`,
  'squeeze.again': ({ saw }) =>
    `A handful smeared on ${dated(String(saw.on))}; the next is worth squeezing ${saw.days} days on.`,
  'squeeze.drains': ({ saw }) => `${capital(String(saw.soil))} ${DRAINS[String(saw.workClass)] ?? ''}`,
  'loosen.new-ground': ({ saw }) =>
    `${saw.bed} lies at ground level, and nothing is known to have grown there before: ground that was trodden is ` +
    'loosened once. If it has been a bed for years, skip this. Raised beds that nobody treads on need none.',
  'loosen.awake': ({ saw, limit }) =>
    `The soil wakes (${quantity(Number(saw.tempC), 'tempC')}) about ${dated(String(saw.awake))}, and it has to crumble ` +
    `first: by ${dated(String(limit))}.`,
};

const SETBACKS: Readonly<Record<string, string>> = {
  snow: 'Snow lay again',
  frozen: 'The ground was frozen again',
  soaked: 'The ground was soaked again',
  'snow-expected': 'Snow is expected to lie',
  'frozen-expected': 'The ground is expected to freeze',
  'soaked-expected': 'A soaking is expected',
};

const DRAINS: Readonly<Record<string, string>> = {
  coarse: 'lets go of its water in about two days after a soaking.',
  medium: 'drains in two to three days after a soaking.',
  fine: 'can take weeks: draining alone is not enough, it has to dry as well, so it is squeezed week by week.',
};
