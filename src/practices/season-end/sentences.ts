/**
 * The sentences of the season-end practice.
 */
import { dated, quantity } from '../../measures/quantity.ts';
import type { Practice, Sentence } from '../practice.ts';

const holds: Sentence = ({ saw, limit }) =>
  `That is ${quantity(Number(saw.litres), 'L')} in all, reckoned as if nothing sinks while it is cold; ${saw.bin} holds ` +
  `${quantity(Number(limit), 'L')}, ${Number(saw.litres) <= Number(limit) ? 'which is enough' : 'which is too little'}.`;

/** A person's scraps by the published band: its middle is a choice of the house. */
const band: Sentence = ({ saw }) =>
  `${quantity(Number(saw.gramsLow), 'g')} to ${quantity(Number(saw.gramsHigh), 'g')} a person a day are published, ` +
  'and the middle is taken until you have weighed your own';

const people: Sentence = ({ saw }) => (saw.people === 1 ? 'one person brings' : `${saw.people} people bring`);

/** Every rule of the practice, in words. */
export const seasonEndSentences: Practice['sentences'] = {
  'close-down.freeze': ({ saw, limit }) =>
    `By ${dated(String(saw.day))} the first freeze of ${quantity(Number(saw.tempC), 'tempC')} has come in ${saw.percent} ` +
    `years of a hundred; water left in a hose then splits it. Done by ${dated(String(limit))}.`,
  'close-down.slugs': () =>
    'Slugs winter under residue and lay their eggs there: fewer now are fewer among the seedlings of spring.',
  'leaves.fall': ({ saw, limit }) =>
    `Most trees let go in the weeks after the first freeze (half of the years by ${dated(String(saw.freeze))}); ` +
    `after ${dated(String(limit))} they lie wet or under snow.`,
  'leaves.stock': (reason) =>
    `In a year ${people(reason)} about ${quantity(Number(reason.saw.scraps), 'L')} of kitchen scraps (${band(reason)}), ` +
    `and two of browns go with one of all greens: ${quantity(Number(reason.saw.litres), 'L')}.`,
  'leaves.clippings': ({ saw }) =>
    `Mowing brings ${quantity(Number(saw.clippings), 'L')} of clippings to the pile, in the ${saw.weeks} weeks of a usual year in ` +
    'which grass grows.',
  'leaves.covers': ({ saw }) =>
    `Cut covers carried to the pile come to ${quantity(Number(saw.coverCuts), 'L')} a year.`,
  'winter-bin.frozen': ({ saw, limit }) =>
    `From ${dated(String(saw.from))} to ${dated(String(saw.thaw))} the usual day is below ` +
    `${quantity(Number(saw.tempC), 'tempC')} on average: ${saw.days} days in which nothing in a bin shrinks. Room is made ` +
    `by ${dated(String(limit))}.`,
  'winter-bin.scraps': (reason) =>
    `At ${quantity(Number(reason.saw.litresAWeek), 'L')} a week each, ${people(reason)} in ${reason.saw.days} days ` +
    `about ${quantity(Number(reason.saw.scraps), 'L')} of kitchen scraps: ${band(reason)}.`,
  'winter-bin.browns': ({ saw, limit }) =>
    `${limit} of browns to one of greens: ${quantity(Number(saw.browns), 'L')} of leaves.`,
  'winter-bin.holds': holds,
  'winter-bin.rest': () => 'Freezing does a pile no harm, but turning one in winter lets out the heat it has.',
};
