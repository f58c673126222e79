/**
 * The sentences of the new-beds practice.
 */
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { firstFreezeOf } from '../freeze-words.ts';
import type { Practice } from '../practice.ts';

const litres = (value: unknown): string => quantity(Number(value), 'sumL');

/** Every rule of the practice, in words. */
export const newBedSentences: Practice['sentences'] = {
  'bed-mark.before-filling': ({ saw }) =>
    `It is best filled about ${dated(String(saw.fill))}; staked and covered a week before, it only wants soil then.`,
  'bed-mark.cardboard': () =>
    'Cardboard under the soil starves grass and most weeds of light and rots within the year: nothing has to be dug. Bindweed and quackgrass come through all the same: dig those out of the paths before.',
  'bed-mix.lead': ({ saw, limit }) =>
    `The bed is best filled about ${dated(String(saw.fill))}. Delivery takes two weeks and beans three more, ${saw.days} days: ordered by ${dated(String(limit))}.`,
  'bed-fill.planned-for': ({ saw }) =>
    `${saw.bed} is to be there by ${dated(String(saw.by))}` +
    `${saw.next === undefined ? '' : `; ${saw.next} is to go in on ${dated(String(saw.day))}`}. Nothing goes in sooner.`,
  'bed-fill.fit': ({ saw, limit }) =>
    `${fitWords(saw)} It is filled by ${dated(String(limit))}, on a day when a handful crumbles.`,
  'bed-fill.fit-too-late': ({ saw }) =>
    `${fitWords(saw)} That is later than ${dated(String(saw.by))}: it cannot be there by then without moving soil wet or frozen. Fill it the autumn before, or plan it later.`,
  'bed-fill.before-frost': ({ saw }) =>
    `${capital(firstFreezeOf(24))} comes about ${dated(String(saw.freeze))}, before ${dated(String(saw.by))}: it is filled ahead of that.`,
  'bed-fill.volume': ({ saw }) =>
    `${quantity(Number(saw.areaM2), 'm2')} filled ${quantity(Number(saw.depthMm), 'mm')} deep hold ${litres(saw.litres)}.`,
  'bed-fill.topsoil': ({ saw }) =>
    `${quantity(Number(saw.areaM2), 'm2')} of path${saw.measured === 'yes' ? '' : ' (nobody measured any: a path of usual width along both sides)'}, ` +
    `scooped ${quantity(Number(saw.lowMm), 'mm')} deep, give ${litres(saw.litres)} of topsoil. It counts as it lies: what it swells by it sinks by again.` +
    `${saw.spare === 'yes' ? ' The bed has room for no more.' : ''}` +
    `${Number(saw.most) > Number(saw.litres) ? ` Scooped ${quantity(Number(saw.highMm), 'mm')} deep they give ${litres(saw.most)}, and so much less is to buy.` : ''}`,
  'bed-fill.no-topsoil': () => 'No topsoil is taken from paths.',
  'bed-fill.settling': ({ saw, limit }) =>
    `That leaves ${litres(saw.rest)}. What is brought loose sinks by about ${limit} % in its first season: ${litres(saw.litres)} to bring.`,
  'bed-fill.compost-depth': ({ saw, limit }) =>
    `Of that up to ${litres(saw.litres)} may be compost: ${quantity(Number(limit), 'mm')} over ${quantity(Number(saw.areaM2), 'm2')}, given once. More sinks away, gathers salts and phosphorus, and holds crops back; from the next season on the bed gets its yearly layer like any other.`,
  'bed-fill.compost-share': ({ saw, limit }) =>
    `Of that up to ${litres(saw.litres)} may be compost: no more than ${limit} % of the ${litres(saw.volume)}. A bed of compost alone sinks away, gathers salts and phosphorus, and holds crops back.`,
  'bed-fill.phosphorus': ({ saw, limit }) =>
    `The soil test found ${saw.ppm} ppm of phosphorus, and ${limit} is very high already: no compost goes in. Ask for a mix with little of it.`,
  'bed-fill.free-compost': ({ saw }) => freeWords(Number(saw.litres), Number(saw.most)),
  'bed-fill.mix': ({ saw }) => mixWords(Number(saw.loose), Number(saw.compost), Number(saw.litres)),
};

function fitWords({ fit, years }: Readonly<Record<string, unknown>>): string {
  return Number(years) > 0
    ? `Over ${years} seasons the ground is thawed, awake and drained by ${dated(String(fit))} in the middle one.`
    : `In the middle year the soil is awake by ${dated(String(fit))}.`;
}

function freeWords(free: number, most: number): string {
  if (free <= 0)
    return 'The yard has no compost free for it by then: all that is there and to come is promised to the layers of other beds, so the mix takes its place.';
  if (free < most)
    return `The yard can spare ${litres(free)} of its own by then; the rest is promised to the layers of other beds.`;
  return `The yard can spare all of it: ${litres(free)}.`;
}

function mixWords(loose: number, compost: number, mix: number): string {
  if (mix <= 0) return 'No bed mix has to be bought.';
  if (compost <= 0) return `All ${litres(mix)} to bring are bed mix, to be bought.`;
  return `${litres(loose)} less ${litres(compost)} of compost: ${litres(mix)} of bed mix to buy, each figure rounded by itself.`;
}
