/**
 * The sentences of the cover-cropping practice.
 */
import { capital } from '../../measures/capital.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { Reason } from '../draft.ts';
import type { Practice, Sentence } from '../practice.ts';
import { fitSentences } from './fit/fit-sentences.ts';
import { rateWords } from './sown-density.ts';

const suggested: Sentence = ({ saw }) => {
  const next = saw.next === undefined ? '' : ` before ${saw.next} on ${dated(String(saw.to))}`;
  return `Nothing is planned for the bed${next}. Of every cover, mix and mulch held against the gap, ${saw.cover} serves best.`;
};

/** A plant's event as the end of "the middle year has the … of the rye". */
const EVENTS: Readonly<Record<string, string>> = {
  anthesis: 'flowering',
  heading: 'heading',
  boot: 'swelling of the heads',
  'first flowers': 'first flowers',
  bud: 'buds',
};

/** From when the heat is counted: a day, or, of a cover sown then, when it is up. */
const countedFrom = (saw: Reason['saw']): string => {
  const from = dated(String(saw.from));
  if (saw.upUnits === undefined) return `from ${from}`;
  const up = `${quantity(Number(saw.upUnits), 'degreeDaysC')} above ${quantity(Number(saw.upBaseC), 'tempC')}`;
  return `from its coming up (${up} after ${from})`;
};

/** When a plant reaches its event, and how far the years and the reckoning scatter. */
const reckoned: Sentence = ({ saw }) =>
  `The middle year has the ${EVENTS[String(saw.event)]} of the ${saw.cover} about ${dated(String(saw.median))}, when ` +
  `${countedFrom(saw)} on ${quantity(Number(saw.heatUnits), 'degreeDaysC')} above ` +
  `${quantity(Number(saw.baseC), 'tempC')} have added up (figure ${saw.known}). Years differ by ` +
  `${saw.yearSpreadDays} days and the reckoning by ${saw.modelErrorDays}`;

const deadCheck: Sentence = ({ saw }) => {
  const kill =
    saw.killC === undefined
      ? ''
      : saw.aliveC === undefined
        ? `What kills ${saw.cover} is about ${quantity(Number(saw.killC), 'tempC')}`
        : `Down to ${quantity(Number(saw.aliveC), 'tempC')} ${saw.cover} is mostly alive, below ` +
          `${quantity(Number(saw.killC), 'tempC')} dead`;
  const cold =
    saw.yearlyMinimumC === undefined
      ? '; how cold it gets here is not known: a hardiness zone stated under The garden would tell'
      : `; winters here reach ${quantity(Number(saw.yearlyMinimumC), 'tempC')} on average`;
  const counted = saw.winters === undefined ? '' : ` and got so cold in ${saw.cold} of ${saw.winters} on record`;
  return kill === ''
    ? `Nobody can say whether ${saw.cover} will live through a winter here` +
        (saw.yearlyMinimumC === undefined ? ': a hardiness zone stated under The garden would tell.' : '.')
    : `${kill}${cold}${counted}.`;
};

/** Why a stand is sown when it is. */
const sowing: Practice['sentences'] = {
  'cover-sow.planned': ({ saw }) =>
    saw.wanted === saw.held
      ? `The plan has ${saw.cover} here on ${dated(String(saw.wanted))}.`
      : `The plan asks for ${saw.cover} on ${dated(String(saw.wanted))}; held inside what the bed and the season allow.`,
  'cover-sow.suggested': suggested,
  'cover-sow.gap': ({ saw }) =>
    `The ${saw.before} is over about ${dated(String(saw.from))}` +
    (saw.next === undefined ? '.' : `, and ${saw.next} goes in on ${dated(String(saw.to))}.`),
  'cover-sow.after-cover': ({ saw, limit }) =>
    `The ${saw.cover} before it was cut on ${dated(String(saw.cut))}` +
    (saw.sheetDays === undefined
      ? `, and the bed is free of it by ${dated(String(limit))} where nothing has grown again.`
      : ` and grew again; a sheet of ${saw.sheetDays} days keeps the bed until ${dated(String(limit))}.`),
  'cover-sow.autumn': ({ saw, limit }) =>
    `The time to sow ${saw.cover} is ${saw.weeksEarliest} to ${saw.weeksLatest} weeks before the first freeze, which ` +
    `half of the years have seen by ${dated(String(saw.freeze))}: ${dated(String(limit))} at the latest.`,
  'cover-sow.spring': ({ saw, limit }) =>
    `The time to sow ${saw.cover} is from ${weeks(saw.weeksFrom)} to ${weeks(saw.weeksTo)} the last freeze, which half ` +
    `of the years are done with by ${dated(String(saw.freeze))}: ${dated(String(limit))} at the latest.`,
  'cover-sow.warm': ({ saw, limit }) =>
    `${capital(saw.cover)} stands no freeze. After ${dated(String(saw.safe))} only ${saw.percent} years in 100 still ` +
    `freeze, and it needs ${saw.days} days before the first freeze of autumn (${dated(String(saw.freeze))} in half of ` +
    `the years): ${dated(String(limit))} at the latest.`,
  'cover-sow.soil': ({ saw }) =>
    `For ${saw.cover} to sprout the soil must have ${quantity(Number(saw.tempC), 'tempC')}, reached about ` +
    `${dated(String(saw.day))} in the middle year.`,
  'cover-sow.soil-warm': ({ saw }) =>
    `For ${saw.cover} to sprout the soil must have ${quantity(Number(saw.tempC), 'tempC')}: in the middle year it is ` +
    'warm enough already at midwinter.',
  'cover-sow.no-dates': ({ saw }) =>
    `No freeze date is known for this garden, so your own day, ${dated(String(saw.wanted))}, stands. Look at what the ` +
    'gardens around you do.',
  'cover-sow.rate': ({ saw }) =>
    `${capital(saw.cover)}: ${quantity(Number(saw.gPerM2), 'gPerM2')} broadcast over ` +
    `${quantity(Number(saw.areaM2), 'm2')} makes ${quantity(Number(saw.grams), 'g')}.`,
  'cover-order.lead': ({ saw, limit }) =>
    `It is to be sown about ${dated(String(saw.sow))}; seed is ordered ${saw.weeksFirst} to ${saw.weeksLast} weeks ahead, ` +
    (saw.last === undefined
      ? `by ${dated(String(limit))}.`
      : `best by ${dated(String(limit))}. Ordered after that, by ${dated(String(saw.last))} at the latest, it may come ` +
        'late: each day the sowing waits for it is lost to growth, and past the last day to sow the seed is of no use.'),
  'cover-order.left': ({ saw }) =>
    `It takes ${quantity(Number(saw.needGrams), 'g')} of ${saw.cover}, and ${quantity(Number(saw.leftGrams), 'g')} of what was ` +
    'bought before was not sown.',
  'cover-order.old': ({ saw, limit }) =>
    `The ${saw.cover} seed from ${saw.packedYear} is ${saw.ageYears} years old when it would be sown; it keeps ${limit} years ` +
    'before it wants a test, and is not counted from then on.',
  'cover-check.density': ({ saw }) =>
    `${capital(saw.cover)} went in at ${quantity(Number(saw.gPerM2), 'gPerM2')}; broadcast it is sown at ` +
    `${rateWords(Number(saw.lowGPerM2), Number(saw.highGPerM2))}.`,
  'cover-check.emergence': ({ saw }) =>
    `${saw.sown === undefined ? `To be sown about ${dated(String(saw.meant))}` : `Sown ${dated(String(saw.sown))}`}; a cover is up within ${saw.daysLow} to ${saw.daysHigh} days, and then there may ` +
    'still be time to sow again.',
};

/** What was seen of a young stand, and what follows from it. */
const looking: Practice['sentences'] = {
  'cover-look.seen': ({ saw }) =>
    `On ${dated(String(saw.on))} ${saw.covered} of the ground showed green` +
    `${saw.weeds === 'many' ? ', with weeds among it' : ', with few weeds'}: counted as ${saw.percent} parts in 100.`,
  'cover-again.own': ({ saw, limit }) =>
    `The time to sow ${saw.cover} here goes on until ${dated(String(limit))}, so that the same is sown again.`,
  'cover-again.later': ({ saw, limit }) =>
    `The time to sow ${saw.first} is over, or its odds no longer hold. Of what can still be sown here ${saw.cover} serves ` +
    `best, until ${dated(String(limit))}.`,
  'cover-thin.too-late': () =>
    'Nothing that would still grow can be sown into it now, so that what is bare is mulched.',
  'cover-thin.not-sown': ({ saw, limit }) =>
    `It was not sown again with ${saw.cover}, for which there was time until ${dated(String(limit))}: what is bare is ` +
    'mulched.',
  'cover-weeds.seed': ({ saw, limit }) =>
    `The quickest weeds seed five to six weeks after they come up: within ${saw.days} days of the look they are cut, by ` +
    `${dated(String(limit))}.`,
  'cover-cut.weedy': ({ limit }) =>
    `The weeds among it would seed soon after ${dated(String(limit))}: this cut takes them too, so that it comes by then.`,
  'cover-cut.holds': ({ saw }) =>
    `Cut about ${dated(String(saw.day))}, what stands in the bed weighs some ${quantity(Number(saw.dryLowKg), 'kg')} to ` +
    `${quantity(Number(saw.dryHighKg), 'kg')} dry (figure ${saw.known}). ${nitrogenWords(Number(saw.lowGPerM2), Number(saw.highGPerM2))}`,
};

/** Why a planned stand is not sown at all. */
const refusing: Practice['sentences'] = {
  'cover-sow.not-then': ({ saw }) =>
    `No time to sow ${saw.cover} lies anywhere near ${dated(String(saw.wanted))} here.`,
  'cover-sow.no-window': ({ saw }) =>
    `No day is left for ${saw.cover}: its sowing window, and the time it needs to grow and settle, do not fit between ` +
    'the crops.',
  'cover-sow.closed': ({ saw }) =>
    `The time to sow ${saw.cover} was over on ${dated(String(saw.closed))}, before the planned day of ` +
    `${dated(String(saw.wanted))}.`,
};

/** Why a bed is left without a cover. */
const leaving: Practice['sentences'] = {
  'cover-none.too-short': ({ saw, limit }) =>
    `The bed is free for ${saw.days} days, and a cover wants ${limit} to be worth its seed.`,
  'cover-none.too-late': ({ saw }) =>
    `The bed is free from ${dated(String(saw.from))}: too late to sow any cover before the first freeze, about ` +
    `${dated(String(saw.freeze))}.`,
  'cover-none.lapsed': ({ saw, limit }) =>
    `${capital(saw.cover)} could have been sown here until ${dated(String(limit))}; now it is too late for it.`,
  'cover-none.none-fits': () =>
    'No cover that is suggested here can be sown, grow and be out of the way while the bed is free.',
  'cover-none.mulch-chosen': ({ saw }) =>
    `You chose ${saw.mulch === 'leaves' ? 'a mulch of leaves' : 'a mulch of straw'} for this bed in place of a cover.`,
  'cover-none.failed': ({ saw }) =>
    `Hardly any of the ${saw.cover} was up on ${dated(String(saw.on))}, so that the bed counts as bare.`,
  'cover-none.skipped': ({ saw }) => `The ${saw.cover} meant for this bed was skipped, so the ground lies bare.`,
};

/** Why a stand is cut, or looked at, when it is. */
const ending: Practice['sentences'] = {
  'cover-cut.bloom-heat': (reason) =>
    `${reckoned(reason)}, so ${dated(String(reason.limit))} is the last day with ${chancesOf(reason)} that nothing has ` +
    'flowered.',
  'cover-cut.bloom-recalled': ({ saw, limit }) =>
    `No figure is published for the ${EVENTS[String(saw.event)]} of the ${saw.cover}, so no odds are given. As far as ` +
    `memory goes it is about ${dated(String(saw.median))}, when from ${dated(String(saw.from))} on ` +
    `${quantity(Number(saw.heatUnits), 'degreeDaysC')} above ${quantity(Number(saw.baseC), 'tempC')} have added up in ` +
    `the middle year: with time in hand, cut by ${dated(String(limit))}, or as soon as it shows.`,
  'cover-cut.seed-heat': (reason) =>
    `${reckoned(reason)}. Its seed is viable ${reason.saw.graceDays} days later, so ${dated(String(reason.limit))} is ` +
    `the last day with ${chancesOf(reason)} that nothing has seeded.`,
  'cover-cut.heads': ({ saw }) =>
    `The heads of the ${saw.cover} show about ${dated(String(saw.day))} in the middle year: a last sign to cut by.`,
  'cover-cut.bloom-days': ({ saw, limit }) =>
    `Sown on ${dated(String(saw.sown))}, the ${EVENTS[String(saw.event)]} of the ${saw.cover} can be looked for ` +
    `${saw.daysLow} to ${saw.daysHigh} days later (figure ${saw.known}): from ${dated(String(limit))} on.`,
  'cover-cut.bloom-zone': ({ saw, limit }) =>
    `The ${EVENTS[String(saw.event)]} of the ${saw.cover} go by the length of the day: about ` +
    `${dated(String(saw.median))} in zone ${saw.zone} (figure ${saw.known}, give or take ${saw.modelErrorDays} days), ` +
    `so cut by ${dated(String(limit))}.`,
  'cover-cut.seen': ({ saw, limit }) =>
    `${saw.stage === 'in-bloom' ? 'Flowers were' : 'Buds were'} seen on the ${saw.cover} on ${dated(String(saw.on))}` +
    (saw.modelled === undefined
      ? ''
      : ` (the figures had its ${EVENTS[String(saw.event)]} about ${dated(String(saw.modelled))})`) +
    `. The plant outranks the reckoning: cut by ${dated(String(limit))}.`,
  'cover-cut.seen-before': ({ saw, limit }) =>
    `Here ${saw.stage === 'first-buds' ? 'buds or heads' : 'flowers'} were last seen on the ${saw.cover} on ` +
    `${dated(String(saw.on))}, ${offWords(Number(saw.offDays))} the figures; ${believedWords(saw)}: cut by ` +
    `${dated(String(limit))}.`,
  'cover-cut.next-wait': ({ saw, limit }) =>
    `${capital(saw.next)} is ${saw.how} here on ${dated(String(saw.day))}, and fresh residue wants ${saw.waitDays} days ` +
    `to settle first: cut by ${dated(String(limit))}. The wait was measured where the cover was worked in; on the ` +
    'surface it is the cautious figure.',
  'cover-cut.next-sheet': ({ saw, limit }) =>
    `${capital(saw.next)} is ${saw.how} here on ${dated(String(saw.day))}. This cover grows again after a cut before ` +
    `bloom: ${saw.regrowthDays} days to see it and ${saw.sheetDays} under a sheet to finish it, so cut by ` +
    `${dated(String(limit))}.`,
  'cover-cut.next-cover': ({ saw, limit }) =>
    `${capital(saw.next)} is to be sown here on ${dated(String(saw.day))}, and this cover has to be cut ${saw.days} days ` +
    `before that to be out of the way: by ${dated(String(limit))}.`,
  'cover-cut.decides': ({ saw }) =>
    `Of the two limits, ${saw.decides} decides (the plant's own ${dated(String(saw.bloom))}, that of what follows ` +
    `${dated(String(saw.next))}).`,
  'cover-cut.short': ({ saw, limit }) =>
    `That would be ${dated(String(saw.asked))}, before there is anything to cut. It is cut by ${dated(String(limit))} ` +
    'instead; what follows waits for its residue, plants less long than seed.',
  'cover-cut.little-growth': ({ saw, limit }) =>
    `The bed is wanted so early that this cover must go by ${dated(String(limit))}, before it has grown much (hard ` +
    `freezes end about ${dated(String(saw.freeze))}). A cover that winter kills, or a later crop, would suit better.`,
  'cover-buds.no-figure': ({ saw }) =>
    `No figure is published for when ${saw.cover} flowers, so no odds are given: from ${dated(String(saw.from))} on it is ` +
    'looked at once a week, until it is cut.',
  'cover-regrowth.kind': ({ saw }) =>
    `A cut before bloom does not end ${saw.cover}: what grows again shows within ${saw.daysLow} to ${saw.daysHigh} days.`,
  'cover-regrowth.seen': ({ saw, limit }) =>
    `Green shoots of the ${saw.cover} were seen on ${dated(String(saw.on))}, for the ${saw.times === 1 ? 'first' : saw.times === 2 ? 'second' : `${saw.times}th`} time after its cut: seen to by ` +
    `${dated(String(limit))}, before they feed the roots again.`,
  'cover-sheet.days': ({ saw }) =>
    (saw.laid === undefined ? '' : `The sheet was laid on ${dated(String(saw.laid))}. `) +
    `Without light regrowth is finished in ${saw.daysLow} to ${saw.daysHigh} days; one week was not enough.`,
  'cover-dead-check.cold': deadCheck,
};

/** Every rule of the practice, in words. */
export const coverSentences: Practice['sentences'] = {
  ...sowing,
  ...looking,
  ...refusing,
  ...leaving,
  ...ending,
  ...fitSentences,
};

/** The chance that all goes well at the garden's own risk. */
function chancesOf({ saw }: Reason): string {
  const well = 100 - Number(saw.riskPercent);
  return well === 90 ? 'nine chances in ten' : `${well} chances in 100`;
}

/** Nitrogen from which a low end is worth naming, g/m². House default. */
const NAMED_G_PER_M2 = 0.5;

function nitrogenWords(low: number, high: number): string {
  if (low < 0) return `While it rots it may tie up as much as ${quantity(-low, 'gPerM2')} of nitrogen.`;
  const from = low < NAMED_G_PER_M2 ? 'up to' : `${quantity(low, 'gPerM2')} to`;
  return `The next crop may find ${from} ${quantity(high, 'gPerM2')} of its nitrogen.`;
}

/** How far the figures are moved by what was seen. */
function believedWords({ years, heldToDays }: Reason['saw']): string {
  if (heldToDays !== undefined) return `one year moves them no further than they err, by ${heldToDays} days`;
  const showed = years === 1 ? 'that year' : `${years} years`;
  return `of what ${showed} showed, ${years} ${years === 1 ? 'part' : 'parts'} in ${Number(years) + 1} is believed`;
}

function offWords(days: number): string {
  if (days === 0) return 'on the day of';
  return `${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'} ${days < 0 ? 'before' : 'after'}`;
}

function weeks(value: unknown): string {
  const count = Number(value);
  if (count === 0) return 'the day of';
  return `${Math.abs(count)} weeks ${count < 0 ? 'before' : 'after'}`;
}
