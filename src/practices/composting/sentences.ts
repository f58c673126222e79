/**
 * The sentences of the composting practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import type { Reason } from '../draft.ts';
import type { Practice, Sentence } from '../practice.ts';

const heated: Sentence = ({ saw }) =>
  `It holds manure. Its log shows ${saw.days} days at ${quantity(Number(saw.tempC), 'tempC')} and ${saw.turns} turns ` +
  `among them, and ${saw.hours} hours between hot readings; ${saw.daysWanted} days and ${saw.turnsWanted} turns make a ` +
  `hot record, which is a label for the log, not a licence.${unfitWords(saw)}`;

/** Said of a pile whose heat makes no record. */
function unfitWords({ unfit }: Reason['saw']): string {
  return unfit === undefined ? '' : ` Of this one no heat makes it, and it counts as raw manure: ${unfit}.`;
}

function lookedAt({ on, tempC }: Reason['saw']): string {
  if (on === undefined) return 'without a look at it to say otherwise';
  const warm = tempC === undefined ? '' : `${quantity(Number(tempC), 'tempC')} and `;
  return `on ${dated(String(on))} it was ${warm}well, and`;
}

const TROUBLE: Readonly<Record<string, string>> = {
  dry: 'It was dry',
  wet: 'It was too wet',
  sour: 'It smelt sour',
  ammonia: 'It smelt of ammonia',
  slumped: 'It had slumped',
  stalled: 'It was cold in warm weather',
  pests: 'Pests were at it',
};

/** Every rule of the practice, in words. */
export const compostSentences: Practice['sentences'] = {
  'pile-build.planned': ({ saw }) => `The plan has this pile built on ${dated(String(saw.day))}.`,
  'pile-build.ratio': ({ saw, limit }) =>
    `${limit} parts of browns to one of greens, by volume, is the rule of the trade: here ` +
    `${quantity(Number(saw.browns), 'L')} to ${quantity(Number(saw.greens), 'L')}.`,
  'pile-build.mix': ({ saw }) =>
    `By dry mass it comes to somewhere from ${saw.ratioLow} to ${saw.ratioHigh} of carbon to one of nitrogen and ` +
    `${saw.waterLow} to ${saw.waterHigh} % water, as such stuff varies; ${saw.goodLow} to ${saw.goodHigh} to one is a good start.`,
  'pile-bean-test.suspect': ({ saw, limit }) =>
    `Hay, straw and dung can carry weedkiller that outlives composting. Beans show it in ${saw.daysLow} to ${saw.daysHigh} ` +
    `days, and the ${saw.what} goes in on ${dated(String(saw.built))}: sown by ${dated(String(limit))}.`,
  'pile-turn.weekly': ({ saw }) =>
    `It was last moved on ${dated(String(saw.moved))}; ${lookedAt(saw)} a working pile is turned every ${saw.daysLow} to ` +
    `${saw.daysHigh} days.`,
  'pile-turn.after-skip': ({ saw }) =>
    `The turn before${saw.moved === saw.skipped ? '' : `, due about ${dated(String(saw.moved))},`} was skipped on ` +
    `${dated(String(saw.skipped))}; ${lookedAt(saw)} a working pile is turned every ` +
    `${saw.daysLow} to ${saw.daysHigh} days.`,
  'pile-turn.rest': ({ saw }) =>
    `That would be ${dated(String(saw.wanted))}, when the air is colder than ${quantity(Number(saw.tempC), 'tempC')} on ` +
    `average: the pile rests, and turning it would only let heat out. It wakes about ${dated(String(saw.day))}.`,
  'pile-turn.too-hot': ({ saw, limit }) =>
    `It was ${quantity(Number(saw.tempC), 'tempC')} in the middle on ${dated(String(saw.on))}. From ` +
    `${quantity(Number(limit), 'tempC')} up the life in it begins to die: turn within a day.`,
  'pile-turn.sour': ({ saw }) =>
    `It smelt sour on ${dated(String(saw.on))}: too wet or short of air. Dry browns and turning let air in.`,
  'pile-turn.ammonia': ({ saw }) =>
    `It smelt of ammonia on ${dated(String(saw.on))}: nitrogen is going to waste. Browns hold it.`,
  'pile-turn.wet': ({ saw }) =>
    `It felt too wet on ${dated(String(saw.on))}: water in the pores keeps air out. Dry browns take it up.`,
  'pile-turn.pests': ({ saw }) =>
    `Pests were at it on ${dated(String(saw.on))}: scraps that lie open draw them. Bury them in the middle as you turn.`,
  'pile-turn.slumped': ({ saw }) =>
    `It had slumped by ${dated(String(saw.on))}: packed stuff holds no air. Turning loosens it.`,
  'pile-recheck.after-turn': ({ saw, limit }) =>
    `It ${saw.sign} on ${dated(String(saw.on))} and was turned on ${dated(String(saw.turned))}: ${limit} days show whether ` +
    'that was enough.',
  'pile-turn.dry': ({ saw }) =>
    `It felt dry on ${dated(String(saw.on))}: a dry pile stops working. Water it as it is turned, and it heats again.`,
  'pile-turn.cooling': ({ saw, limit }) =>
    `It had fallen to ${quantity(Number(saw.tempC), 'tempC')} on ${dated(String(saw.on))}, below ` +
    `${quantity(Number(limit), 'tempC')}: turn it, and look whether it is dry.`,
  'pile-cure.no-heat': ({ saw, limit }) =>
    `After ${saw.turns} turns it was below ${quantity(Number(limit), 'tempC')} on ${dated(String(saw.on))} and no longer ` +
    'heats: what is left is ripening, not rotting.',
  'pile-cure.days': ({ saw }) =>
    `Built on ${dated(String(saw.built))}. Turned weekly, a pile heats for ${saw.daysLow} to ${saw.daysHigh} days of ` +
    `working weather, which ends about ${dated(String(saw.day))} (winter rest not counted).`,
  'pile-maturity.cured': ({ saw }) =>
    `It has cured since ${dated(String(saw.since))}; ${saw.daysLow} to ${saw.daysHigh} days is the usual time.`,
  'pile-maturity.again': ({ saw }) =>
    `It was looked at on ${dated(String(saw.on))} and was not ready. ${saw.days} days more are given before the next look.`,
  'pile-maturity.set-back': ({ saw }) =>
    `${TROUBLE[String(saw.trouble)] ?? 'Something was amiss'} on ${dated(String(saw.on))}, reckoned as answered by ` +
    `${dated(String(saw.until))}. In all it stood still for ${saw.still} days of working weather, which come on top, and ` +
    `after the last of it a working pile is given ${saw.daysLow} to ${saw.daysHigh} days more.`,
  'pile-maturity.expected': ({ saw }) =>
    `It should have done heating about ${dated(String(saw.day))}, and cures for ${saw.daysLow} to ${saw.daysHigh} days.`,
  'pile-maturity.cold': ({ saw }) => `Built on ${dated(String(saw.built))} and left alone: ready in one to two years.`,
  'pile-maturity.left-alone': ({ saw }) =>
    `Built on ${dated(String(saw.built))} as a hot pile, and not turned for so long that it rots as a cold one: ready ` +
    'in one to two years.',
  'pile-maturity.heated': heated,
  'pile-maturity.not-heated': heated,
  'pile-maturity.heated-closed': ({ saw }) =>
    `It holds manure. Its log shows ${saw.hours} hours on end at ${quantity(Number(saw.tempC), 'tempC')} in a closed bin; ` +
    `${saw.hoursWanted} make the record of a closed vessel, if all of it was mixed and heated.`,
  'pile-maturity.volume': ({ saw }) =>
    `Of ${quantity(Number(saw.litresBuilt), 'L')} built, ${saw.percentLow} to ${saw.percentHigh} % is lost on the way: ` +
    `about ${quantity(Number(saw.litres), 'L')} is left.`,
  'pile-disease.may-hold': ({ saw }) =>
    `It stood open between ${dated(String(saw.from))} and ${dated(String(saw.on))}, when the ${saw.crop} in ${saw.bed} ` +
    `grew and was found to have ${saw.disease}. Nobody wrote down whether any of it went in, so it is held back to be sure.`,
  'pile-disease.proof': ({ saw }) =>
    `${saw.daysWanted} days at ${quantity(Number(saw.tempC), 'tempC')} or more with ${saw.turnsWanted} turns among them ` +
    `is the published rule for a turned pile heated all through, taken over here; its log shows ${saw.days} and ${saw.turns}.`,
};
