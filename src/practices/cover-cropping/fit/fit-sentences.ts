/**
 * The sentences for and against a choice.
 */
import { capital } from '../../../measures/capital.ts';
import { dated, quantity } from '../../../measures/quantity.ts';
import type { Practice, Sentence } from '../../practice.ts';

/** What rules a choice out. */
const forbidding: Practice['sentences'] = {
  'cover-fit.no-dates': () =>
    'No freeze date is known for this garden, so nothing can be said about covers: a climate stated under The garden would tell.',
  'cover-fit.never-then': ({ saw }) =>
    saw.to === undefined
      ? `No time to sow ${saw.cover} lies ahead in this gap.`
      : `No time to sow ${saw.cover} lies in this gap, which ends on ${dated(String(saw.to))}.`,
  'cover-fit.too-far': ({ saw }) =>
    `The next time to sow ${saw.cover} in this gap, about ${dated(String(saw.sowOn))}, is more than two years off.`,
  'cover-fit.no-room': ({ saw, limit }) =>
    `${capital(saw.cover)} wants ${limit} days to be worth its seed, and time to be cut and settle: they do not fit ` +
    `before ${dated(String(saw.to))}.`,
  'cover-fit.disease': ({ saw }) =>
    `It would carry the ${saw.disease} found here on ${dated(String(saw.found))}` +
    (saw.until === undefined ? '.' : ` and is kept out until ${dated(String(saw.until))}.`),
  'cover-fit.cabbage-kin': ({ saw }) =>
    `${capital(saw.cover)} is of the cabbage family, as ${saw.crop} is: clubroot and flea beetles would be handed on.`,
  'cover-fit.legume-kin': ({ saw }) =>
    `${capital(saw.cover)} is a legume beside ${saw.crop}: it would keep the root rots of peas and beans alive.`,
  'cover-fit.vine-after-mustard': ({ saw }) =>
    `${capital(saw.crop)} sprouts poorly straight after ${saw.cover} that grew in spring.`,
};

const establish: Sentence = ({ saw }) =>
  `Sown about ${dated(String(saw.sowOn))} it has the heat it needs before hard cold in ${saw.of} of ${saw.among} seasons: ` +
  `it needs ${heat(saw.heatUnits, saw.baseC)}, and the middle season leaves ${quantity(Number(saw.left), 'degreeDaysC')}.`;

const winter: Sentence = ({ saw }) => {
  const meant = saw.meant === 'die' ? 'it is sown to be dead by spring' : 'it is sown to live through winter';
  if (saw.dies === saw.among) return `Every one of ${saw.among} winters on record would kill it; ${meant}.`;
  if (saw.lives === saw.among) return `It would live through every one of ${saw.among} winters on record; ${meant}.`;
  const open = saw.unsure === 0 ? '' : `, and in ${saw.unsure} nobody can say`;
  return `Of ${saw.among} winters on record it would live through ${saw.lives} and die in ${saw.dies}${open}; ${meant}.`;
};

const FATES: Readonly<Record<string, string>> = {
  lives: 'it lives through the winters of this zone',
  dies: 'the winters of this zone kill it',
  unsure: 'it may or may not live through the winters of this zone',
};

const UNKNOWN_COLD: Readonly<Record<string, string>> = {
  lives: 'but it stands winters as cold as those of zone 3',
  dies: 'but the first freezes kill it',
  unsure: 'so nobody can say whether winter kills it: look in late winter, and give the hardiness zone if you know it',
};

const winterByZone: Sentence = ({ saw }) => {
  const told =
    saw.cold === 'known'
      ? `By its zone, ${FATES[String(saw.fate)]}`
      : `How cold it gets here is not known, ${UNKNOWN_COLD[String(saw.fate)]}`;
  return `${told}; it is sown to ${saw.meant === 'die' ? 'be dead by spring' : 'live'}.`;
};

/** Whether it comes up, grows and lives. */
const living: Practice['sentences'] = {
  'cover-fit.establish': establish,
  'cover-fit.heat-left': ({ saw }) =>
    `Sown about ${dated(String(saw.sowOn))} it usually has ${quantity(Number(saw.left), 'degreeDaysC')} left before ` +
    `hard cold; it needs ${heat(saw.heatUnits, saw.baseC)}. How often is not known without a daily record.`,
  'cover-fit.no-heat-figure': () => 'No figure was found for the heat it needs before hard cold, so no odds are given.',
  'cover-fit.open-until': ({ saw }) =>
    `The bed would lie open for ${saw.days} days until it is sown about ${dated(String(saw.sowOn))}.`,
  'cover-fit.spring-short': ({ saw, limit }) =>
    `Sown about ${dated(String(saw.sowOn))} and cut about ${dated(String(saw.cutOn))}, ${saw.cover} usually has ` +
    `${quantity(Number(saw.heatUnits), 'degreeDaysC')} above ${quantity(Number(saw.baseC), 'tempC')}; it is asked for ` +
    `${quantity(Number(limit), 'degreeDaysC')} before hard cold, and has hardly grown with less.`,
  'cover-fit.after-winter': ({ saw }) =>
    `It is not sown before winter is over, about ${dated(String(saw.sowOn))}: mulch the bed until then.`,
  'cover-fit.grows-little': ({ saw, limit }) =>
    `In the warmth that is left it grows about ${saw.percent} % of a full stand; below ${limit} % it is hardly worth its seed.`,
  'cover-fit.winter': winter,
  'cover-fit.winter-zone': winterByZone,
};

const HOW: Readonly<Record<string, string>> = {
  'through residue': 'set through the residue',
  'residue pulled aside': 'sown with the residue pulled aside one to two weeks before',
  'after the wait': 'put in once the wait is over',
};

/** What follows it, and what it leaves. */
const leaving: Practice['sentences'] = {
  'cover-fit.next-met': ({ saw }) =>
    `The bed is free by ${dated(String(saw.freeOn))}, in time for ${saw.next} on ${dated(String(saw.wantedOn))}, ` +
    `${HOW[String(saw.how)]}. The waits are measured for cover that is worked in.`,
  'cover-fit.next-short': ({ saw }) =>
    `With its full wait the bed would be free on ${dated(String(saw.freeOn))}, after ${saw.next} goes in on ` +
    `${dated(String(saw.wantedOn))}.`,
  'cover-fit.next-not-met': ({ saw }) =>
    `The bed is not free before ${dated(String(saw.freeOn))}, too late for ${saw.next} on ${dated(String(saw.wantedOn))}.`,
  'cover-fit.ends-early': ({ saw }) =>
    `It is over ${saw.days} days before what follows: until then only what is left of it keeps the ground covered.`,
  'cover-fit.binds-next': () =>
    'Nothing is planned after it, and none of the cabbage family should follow it: they share clubroot and flea beetle.',
  'cover-fit.wait-given-up': ({ saw }) => `The wait after the cut would be ${saw.days} days too short.`,
  'cover-fit.growth-given-up': ({ saw }) =>
    `What follows asks for its cut ${saw.days} days before its own time` +
    (saw.gPerM2 === undefined
      ? ': that growth is given up.'
      : `: that growth, with about ${quantity(Number(saw.gPerM2), 'gPerM2')} of nitrogen, is given up.`),
  'cover-fit.nitrogen': ({ saw }) =>
    `The next crop may find ${quantity(Number(saw.low), 'gPerM2')} to ${quantity(Number(saw.high), 'gPerM2')} of its ` +
    `nitrogen: the low end for residue left lying in the cold, the high end measured for cover that is worked in ` +
    `(weight of the stand ${saw.known}).`,
  'cover-fit.ties-up': ({ saw }) =>
    `Cut as late as that its residue may tie up as much as ${quantity(Number(saw.gPerM2), 'gPerM2')} of nitrogen while it rots.`,
  'cover-fit.ends-itself': () => 'Winter ends it: there is nothing to cut in spring, and nothing to wait for.',
  'cover-fit.grows-again': ({ saw }) =>
    `A cut before its flowers does not end it: ${saw.regrowthDays} days to see it grow again, and ${saw.sheetDays} under a sheet.`,
  'cover-fit.stays-on': ({ saw }) =>
    `${capital(saw.cover)} stays or spreads where it is not wanted, and is hard to end.`,
  'cover-fit.no-bloom-figure': ({ saw }) =>
    `There is no published figure for ${saw.cover === undefined ? 'its flowers' : `the flowers of its ${saw.cover}`}: look for buds every week from ${dated(String(saw.lookFrom))}.`,
};

/** What it asks for, and mulch. */
const asking: Practice['sentences'] = {
  'cover-fit.inoculant': ({ saw }) => `Its seed wants the inoculant for ${saw.group}.`,
  'cover-fit.dry': ({ saw }) =>
    `The top of the bed is dry then in ${saw.of} of ${saw.among} seasons: it may have to be watered until it is up.`,
  'cover-fit.mulch-always': () => 'It serves in any gap and asks nothing of the season: nothing has to grow or be cut.',
  'cover-fit.mulch-feeds-less': () =>
    'No roots hold the soil and nothing is gathered: a cover does more where one fits.',
};

/** Every sentence for and against. */
export const fitSentences: Practice['sentences'] = { ...forbidding, ...living, ...leaving, ...asking };

function heat(units: unknown, baseC: unknown): string {
  return `${quantity(Number(units), 'degreeDaysC')} above ${quantity(Number(baseC), 'tempC')}`;
}
