/**
 * Looking for regrowth after a cut, and ending what has grown again: another cut, or a sheet that is laid and lifted.
 */
import type { Bed } from '../../garden/garden.ts';
import { cautionsAt } from '../../handbook/shapes/cautions.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { type AfterCut, REGROWTH_DAYS, SHEET_DAYS } from '../after-cut.ts';
import { areaOf } from '../bed-timeline.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import { COVER_BED_MINUTES, CUT_MINUTES_PER_M2, effortOverArea, LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { cutAgainKey, cutKey, laySheetKey, liftSheetKey, regrowthKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { givesWay, nextWanted } from './gives-way.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Days within which what has grown again is cut or goes under its sheet. House default: it draws on what it has stored. */
export const ACT_DAYS = 4;
/** Metres a sheet reaches over the edge of its bed on every side, to be weighed down there. House default. */
const SHEET_OVERHANG_M = 0.3;
/** A product of metres may come out a hair above what it is. */
const ROUNDING_M2 = 1e-9;

/** What is to be done about a stand that was cut, while anything is. */
export function afterCutDrafts(input: PracticeInput, at: StandInBed, state: AfterCut): TaskDraft[] {
  const { on, look } = state;
  switch (state.is) {
    case 'watched':
      return [lookDraft(input, at, { cut: dayOnly(on), look, after: [] })];
    case 'green': {
      const cut = cutAgainDraft(input, at, state);
      const after = [{ key: cut.key, minDays: REGROWTH_DAYS.low }];
      return state.letBe ? [cut] : [cut, lookDraft(input, at, { cut: cut.window, look, after })];
    }
    case 'to-sheet': {
      const lay = laySheetDraft(input, at, state);
      return state.letBe ? [lay] : [lay, liftSheetDraft(input, at, state, lay.window)];
    }
    case 'under-sheet':
      return [liftSheetDraft(input, at, state, dayOnly(on))];
    case 'sheeted':
    case 'over':
      return [];
    default:
      return state.is satisfies never;
  }
}

function dayOnly(day: Day): Window {
  return { earliest: day, preferred: day, latest: day };
}

/** The first look for regrowth, after a cut that is still to come. */
export function firstLookDraft(input: PracticeInput, at: StandInBed, cut: Window): TaskDraft {
  const after = [{ key: cutKey(at.stand.id), minDays: REGROWTH_DAYS.low }];
  return lookDraft(input, at, { cut, look: 1, after });
}

interface LookMeant {
  cut: Window;
  look: number;
  after: TaskDraft['after'];
}

function lookDraft(input: PracticeInput, at: StandInBed, { cut, look, after }: LookMeant): TaskDraft {
  const { name } = at;
  const { low, high } = REGROWTH_DAYS;
  return {
    ...draftOfStand(input, at),
    key: regrowthKey(at.stand.id, look),
    kind: 'check-regrowth',
    job: { id: 'check-regrowth', title: 'Look for regrowth after cutting' },
    weight: 'check',
    title: `Look for regrowth of the ${name} in ${at.bed.name}`,
    steps: [
      'Nothing green in the stubble: mark this done, and the bed is free.',
      'Green shoots from the stubble: it has grown again. Do not mark this done, but say that it grew again; then it is ' +
        'cut once more, or goes under a sheet.',
    ],
    cautions: [],
    supplies: [],
    window: {
      earliest: addDays(cut.earliest, low),
      preferred: addDays(cut.preferred, low),
      latest: addDays(cut.latest, high),
    },
    ifMissed: 'drop',
    missedNote:
      'Lost is the early look: what has grown again takes water from the next crop, so cut it when you plant.',
    effortMinutes: LOOK_MINUTES,
    after,
    reasons: [{ rule: 'cover-regrowth.kind', saw: { cover: name, daysLow: low, daysHigh: high }, source: 'cover:S39' }],
    makes: [{ makes: 'regrowth-checked', standId: at.stand.id }],
  };
}

function cutAgainDraft(input: PracticeInput, at: StandInBed, state: AfterCut): TaskDraft {
  const { stand, bed, parts, name } = at;
  return {
    ...draftOfStand(input, at),
    key: cutAgainKey(stand.id, state.regrowths),
    kind: 'cut-again',
    job: { id: 'cut-again', title: 'Cut again what has grown again' },
    weight: 'work',
    title: `Cut the ${name} in ${bed.name} again`,
    steps: [
      'Cut at the soil line, every shoot: what it has stored in its roots is spent by cutting it while it is short.',
      'Let it lie, and dig nothing in. It is looked at again in ten days.',
      ...[givesWay(input, at, state)].flatMap((words) => words ?? []),
      'Rather be done with it? Say that you lay an opaque sheet instead.',
    ],
    cautions: [
      'Blades and bent backs: gloves and stout shoes, small bites.',
      ...parts.flatMap(({ cover }) => cautionsAt(cover.cautions, 'always', 'ended')),
    ],
    supplies: [{ what: 'shears or sickle' }],
    window: soonAfter(state.on),
    ifMissed: 'still do',
    missedNote: 'It has grown on: cut it at once, and before it flowers.',
    minder: `Cut what is green of the ${name} in ${bed.name} off at the ground, and leave it lying on the bed.`,
    effortMinutes: effortOverArea(areaOf(bed), CUT_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['dry-day'],
    reasons: [seenReason(name, state)],
    makes: [{ makes: 'regrowth-worked', standId: stand.id, what: 'cut-again' }],
  };
}

function laySheetDraft(input: PracticeInput, at: StandInBed, state: AfterCut): TaskDraft {
  const { stand, bed, name } = at;
  return {
    ...draftOfStand(input, at),
    key: laySheetKey(stand.id, state.sheet),
    kind: 'lay-sheet',
    job: { id: 'lay-sheet', title: 'Lay an opaque sheet' },
    weight: 'work',
    title: `Lay an opaque sheet over the ${name} in ${bed.name}`,
    steps: [
      'Cut it low first, so that the sheet lies close and nothing holds it up.',
      'Spread the sheet over the whole bed and over its edges, and weigh it down all round, so that no light comes in.',
      `Leave it for ${SHEET_DAYS.low} to ${SHEET_DAYS.high} days; one week is not enough.`,
      ...[givesWay(input, at, state)].flatMap((words) => words ?? []),
    ],
    cautions: ['A loose sheet is a sail: weigh every edge with stones or boards, and walk round it after wind.'],
    supplies: [{ what: 'opaque sheet', amount: { value: sheetM2(bed), unit: 'm2' } }, { what: 'stones or boards' }],
    window: soonAfter(state.on),
    ifMissed: 'still do',
    missedNote: 'It is growing on, and the bed is free so much later: cut it low and lay the sheet now.',
    effortMinutes: START_UP_MINUTES + COVER_BED_MINUTES,
    onceMinutes: START_UP_MINUTES,
    needs: ['calm-day'],
    reasons: [seenReason(name, state), sheetReason()],
    makes: [{ makes: 'regrowth-worked', standId: stand.id, what: 'sheet-laid' }],
  };
}

/** Lift the sheet, by the days it was laid or may be laid. */
function liftSheetDraft(input: PracticeInput, at: StandInBed, state: AfterCut, laid: Window): TaskDraft {
  const { stand, bed } = at;
  const isLaid = state.is === 'under-sheet';
  const { low, high } = SHEET_DAYS;
  const next = nextWanted(input, at, state);
  return {
    ...draftOfStand(input, at),
    key: liftSheetKey(stand.id, state.sheet),
    kind: 'lift-sheet',
    job: { id: 'lift-sheet', title: 'Lift the sheet' },
    weight: 'work',
    title: `Lift the sheet off ${bed.name}`,
    steps: [
      'Lift a corner first. Shoots that stand firm, white or green, want it a week longer.',
      'Look for slugs beneath it and pick them off. Leave what is dead lying on the bed; dig nothing in.',
      ...(next === undefined ? [] : [`The bed is free then. Next here: ${next.what}, planned for ${dated(next.day)}.`]),
    ],
    cautions: [],
    supplies: [],
    window: {
      earliest: addDays(laid.earliest, low),
      preferred: addDays(laid.preferred, low),
      latest: addDays(laid.latest, high),
    },
    ifMissed: 'still do',
    missedNote: 'A sheet that lies longer does no harm to the soil, but the bed stands idle and slugs gather: lift it.',
    effortMinutes: START_UP_MINUTES,
    onceMinutes: START_UP_MINUTES,
    after: isLaid ? [] : [{ key: laySheetKey(stand.id, state.sheet), minDays: low }],
    reasons: [sheetReason(isLaid ? state.on : undefined)],
    makes: [{ makes: 'regrowth-worked', standId: stand.id, what: 'sheet-lifted' }],
  };
}

function soonAfter(seen: Day): Window {
  return { earliest: seen, preferred: seen, latest: addDays(seen, ACT_DAYS) };
}

function seenReason(name: string, { on, regrowths }: AfterCut): Reason {
  const saw = { cover: name, on, times: regrowths };
  return { rule: 'cover-regrowth.seen', saw, limit: addDays(on, ACT_DAYS), source: 'house default' };
}

function sheetReason(laid?: Day): Reason {
  const { low, high } = SHEET_DAYS;
  const saw = { daysLow: low, daysHigh: high, ...(laid === undefined ? {} : { laid }) };
  return { rule: 'cover-sheet.days', saw, source: 'cover:S39' };
}

/** Square metres of sheet that cover a bed and its edges, rounded up to a tenth. */
function sheetM2({ lengthM, widthM }: Bed): number {
  const area = (lengthM + 2 * SHEET_OVERHANG_M) * (widthM + 2 * SHEET_OVERHANG_M);
  return Math.ceil(area * 10 - ROUNDING_M2) / 10;
}
