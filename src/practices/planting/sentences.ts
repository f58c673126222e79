/**
 * The sentences of the planting practice.
 */
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { firstFreezeOf } from '../freeze-words.ts';
import type { Practice } from '../practice.ts';

const day = (value: unknown): string => dated(String(value));

/** Why a window opens when it does. */
const opening: Practice['sentences'] = {
  'plant.class': ({ saw, limit }) =>
    `${capital(saw.crop)} may go in from ${weeks(saw.weeks)} the median last freeze (${day(saw.freeze)}): from ${day(limit)}.` +
    (saw.alone === undefined
      ? ''
      : ' No record of past freezes is at hand for this place, so the weeks count in its stead.'),
  'plant.odds': ({ saw, limit }) =>
    `After ${day(saw.safe)} it still freezes ${Number(saw.tempC) < 0 ? `to ${quantity(Math.round(Number(saw.tempC) * 10) / 10, 'tempC')} ` : ''}in no more than ${saw.percent} of 100 years, which is what ${saw.crop} is planned ` +
    `by${Number(saw.days) === 0 ? '' : `; its seed is under the ground for ${saw.days} days`}: from ${day(limit)}.`,
  'plant.hard-night': ({ saw, limit }) =>
    `A night of ${quantity(Number(saw.tempC), 'tempC')} checks or kills ${saw.crop} just set out; from ${day(limit)} on one ` +
    'still comes in fewer than half of the years.',
  'plant.soil': ({ saw, limit }) =>
    `${capital(saw.crop)} wants soil of ${quantity(Number(saw.tempC), 'tempC')}; in the middle year it holds that from ` +
    `${day(limit)}.`,
  'plant.soil-slow': ({ saw, limit }) =>
    `${capital(saw.crop)} wants soil of ${quantity(Number(saw.tempC), 'tempC')}. Reckoned from the air the soil holds that only ` +
    `from ${day(saw.day)}, but open beds warm sooner; its class's weeks let it in from ${day(limit)}. Measure first.`,
  'plant.this-season': ({ saw, limit }) =>
    `By past years alone the ${saw.crop} could go in from ${day(saw.past)}; with this season's weather so far it is ` +
    `${day(limit)}.`,
  'plant.garlic': ({ saw, limit }) =>
    `Garlic goes in ${saw.daysFirst} to ${saw.daysLast} days after ${firstFreezeOf(saw.limitF === 28 ? 28 : 32)} (median ${day(saw.freeze)}): by ` +
    `${day(limit)}, so that it roots and does not sprout.`,
};

/** Why a window closes when it does. */
const closing: Practice['sentences'] = {
  'plant.last': ({ saw, limit }) =>
    `To be ready in time ${saw.crop} is sown or planted by ${day(limit)}, ${about(saw.weeks)} before the median first freeze ` +
    `(${day(saw.freeze)})${saw.preferred === limit ? '' : `, and better by ${day(saw.preferred)}`}.`,
  'plant.first-only': ({ saw, limit }) =>
    `${capital(saw.crop)} goes in once, in spring: best by ${day(saw.best)} (its class's weeks end ${weeks(saw.weeks)} the ` +
    `median last freeze, ${day(saw.freeze)}), at the latest by ${day(limit)}.`,
  'plant.autumn': ({ saw, limit }) =>
    `${capital(saw.crop)} is grown towards autumn: it goes in ${saw.weeksFrom} to ${saw.weeksTo} weeks before the median first ` +
    `freeze (${day(saw.freeze)}), by ${day(limit)}. Earlier it bolts, or is over before the cool days that make it good.`,
  'plant.ground-freezes': ({ saw, limit }) =>
    `The ground is down to ${quantity(0, 'tempC')} where the roots are about ${day(saw.frozen)}; cloves want ${saw.days} days to root before that: by ${day(limit)}.`,
  'plant.short-season': ({ saw, limit }) =>
    `The season is short for ${saw.crop}: what goes in after ${day(saw.ripens)} does not ripen in the middle year, and spring ` +
    `comes ${saw.days} days later than that. An early kind, planted by ${day(limit)}, may still make it.`,
  'plant.late': ({ saw, limit }) =>
    `From ${day(saw.from)} on it is late for ${saw.crop}, which will give less or ripen through light frosts; after ` +
    `${day(limit)} it is lost.`,
  'plant.later-sowing': ({ saw }) =>
    `The best days for the first ${saw.crop} end about ${day(saw.best)}; what goes in later still ripens.`,
  'plant.early-kinds': ({ saw }) => `From ${day(saw.from)} on only early kinds of ${saw.crop} still ripen.`,
  'plant.hot-soil': ({ saw }) =>
    `${capital(saw.crop)} seed fails in soil above ${quantity(Number(saw.tempC), 'tempC')}; ` +
    (saw.cool === undefined
      ? 'it does not cool below that in time.'
      : `it is usually below that again from ${day(saw.cool)}.`),
};

/** The gardener's own plan and the bed. */
const planned: Practice['sentences'] = {
  'plant.planned': ({ saw }) => `Your plan has the ${saw.crop} on ${day(saw.wanted)}.`,
  'plant.pulled-in': ({ saw }) =>
    `Your plan has the ${saw.crop} on ${day(saw.wanted)}, outside its season here; the nearest day in it is ${day(saw.held)}.`,
  'plant.will-freeze': ({ saw }) =>
    `It will most likely freeze: from ${day(saw.from)} on, a night of ${quantity(Math.round(Number(saw.tempC) * 10) / 10, 'tempC')}, ` +
    `which takes ${saw.how === 'sow' ? `${saw.crop} just up` : `${saw.crop} just set out`}, still comes in ${saw.percent} of 100 years.`,
  'plant.unusual-how': ({ saw }) =>
    saw.how === 'sow'
      ? `${capital(saw.crop)} is raised ahead and set out as plants; sown in the bed it has a season too short, or comes late.`
      : `${capital(saw.crop)} is put straight into its bed, and not raised and set out as plants.`,
  'plant.no-dates': ({ saw }) =>
    `No freeze date is known for this place, so only your own day counts: ${day(saw.wanted)}.`,
  'plant.bed-free': ({ saw }) => `The ${saw.before} is over by ${day(saw.day)}, and the bed is free.`,
  'plant.grown-by': ({ saw, limit }) =>
    `Its plants were sown under a roof on ${day(saw.indoors)} and are ${saw.weeks} weeks old on ${day(limit)}: no younger ` +
    'are they set out, unless the season ends first.',
  'plant.after-cut': ({ saw, limit }) =>
    `The ${saw.cover} was cut on ${day(saw.cut)}; its residue settles for ${saw.days} days: from ${day(limit)}.`,
  'plant.after-regrowth': ({ saw, limit }) =>
    `The ${saw.cover} was seen to have grown again on ${day(saw.seen)}; cut once more, it settles for ${saw.days} days: ` +
    `from ${day(limit)}.`,
  'plant.after-sheet': ({ saw, limit }) =>
    (saw.laid === undefined
      ? `The ${saw.cover} grew again, seen on ${day(saw.seen)}, and goes under a sheet`
      : `The sheet on the ${saw.cover} was laid on ${day(saw.laid)} and lies`) +
    ` for ${saw.days} days at the least: from ${day(limit)}.`,
  'plant.must-ripen': ({ saw, limit }) =>
    `The bed is wanted, or the harvest planned, for ${day(saw.end)}; ${saw.crop} takes ${saw.days} days at the least: by ` +
    `${day(limit)}.`,
  'plant.short-of-days': ({ saw, limit }) =>
    `Planted on ${day(saw.day)}, the ${saw.crop} has ${saw.left} days until ${day(saw.end)}, when its bed is wanted or its harvest ` +
    `planned to be over; it takes ${saw.days} at the least: leave it to stand past ${day(limit)}, or choose a quicker crop.`,
  'plant.no-season': ({ saw }) =>
    `${capital(saw.crop)}, planned for ${day(saw.wanted)}, does not ripen here in the middle year: the season is too short or ` +
    'its soil too cold.',
  'plant.not-then': ({ saw }) =>
    `${capital(saw.crop)}, planned for ${day(saw.wanted)}, goes in here from ${day(saw.from)} to ${day(saw.to)}; your day is ` +
    'too far from that to be moved.',
  'plant.again-late': ({ saw }) =>
    `${capital(saw.crop)}, planned for ${day(saw.wanted)}, is ready in time only if it is planted by ${day(saw.to)}; the sowing of ` +
    `${day(saw.sown)} is near enough to that to be the last.`,
  'plant.bed-taken': ({ saw }) =>
    `The bed is not free for the ${saw.crop} before ${day(saw.free)}, and its season closes on ${day(saw.to)}.`,
};

/** Every rule of the practice, in words. */
export const plantingSentences: Practice['sentences'] = {
  ...opening,
  ...closing,
  ...planned,
  'raise.indoors': ({ saw, limit }) =>
    `${capital(saw.crop)} is raised for ${range(saw.weeksLow, saw.weeksHigh)} weeks and set out about ${day(saw.day)}: started ` +
    `by ${day(limit)}.`,
  'raise.harden': ({ saw, limit }) =>
    `Plants are hardened off for ${saw.daysLow} to ${saw.daysHigh} days; the ${saw.crop} is set out about ${day(saw.day)}: begun ` +
    `by ${day(limit)}.`,
  'up.expected': ({ saw }) =>
    `Sown about ${day(saw.sown)}, the ${saw.crop} takes ${saw.days} days at the soil's usual warmth: it is up about ${day(saw.up)}.`,
  'up.dries': ({ saw }) =>
    `The rows are reckoned dry by ${day(saw.day)}: in half of ${saw.years} seasons, with this one's weather so far, ` +
    `${quantity(Number(saw.goneMm), 'mm')} of water have gone since the rows were watered in.`,
  'ideas.open': ({ saw, limit }) =>
    `No crop is planned in the garden; ${saw.kinds} easy kinds can be sown between ${day(saw.opens)} and ${day(limit)}.`,
};

function weeks(value: unknown): string {
  const count = Number(value);
  if (count === 0) return 'the day of';
  return `${Math.abs(count)} ${Math.abs(count) === 1 ? 'week' : 'weeks'} ${count < 0 ? 'before' : 'after'}`;
}

/** Weeks as a gardener counts them: whole ones. */
function about(value: unknown): string {
  const count = Math.round(Number(value));
  return `about ${count} ${count === 1 ? 'week' : 'weeks'}`;
}

function range(low: unknown, high: unknown): string {
  return low === high ? String(low) : `${low} to ${high}`;
}
