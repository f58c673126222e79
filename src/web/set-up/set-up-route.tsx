/**
 * Setting a garden up: its steps, each kept as it is told, and the garden that is made of them.
 */
import { type Context, Hono } from 'hono';
import type { Problem } from '../../garden/problem.ts';
import { nextStep, SET_UP_STEPS, type SetUpDraft, type SetUpStep } from '../../garden/set-up-draft.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { KeptDraft, ListedDraft } from '../../store/drafts.ts';
import { begunPath, GARDENS_PATH, setUpPath, weekPath } from '../addresses/addresses.ts';
import { unitsAt } from '../climate/climate-choices.ts';
import { Form, readForm } from '../requests/form.ts';
import { BY } from '../requests/garden-view.ts';
import { readerUnits } from '../requests/reader.ts';
import { notFound } from '../requests/trouble.ts';
import type { UnderWayPages } from '../under-way/under-way.tsx';
import { beds } from './beds.tsx';
import { bins } from './bins.tsx';
import { climate } from './climate.tsx';
import { garden } from './garden.tsx';
import { growing } from './growing.tsx';
import { lastYear } from './last-year.tsx';
import { lookOver } from './look-over.tsx';
import { stepBefore, TO_THE_END } from './parts.tsx';
import { inPlainPlaces } from './plain-places.ts';
import { pressedOnce, pressOf } from './presses.ts';
import { beginPage, draftName, stepPage, throwAwayPage } from './set-up.tsx';
import { type Step, type StepRead, type StepRoom, type StepShown, unchanged } from './step.ts';
import { where } from './where.tsx';

const STEPS: readonly Step[] = [where, climate, garden, beds, bins, lastYear, growing, lookOver];

/** Steps that are left for the one before whether or not what was typed can be read. */
const LEFT_GOING_BACK: ReadonlySet<SetUpStep> = new Set(['where', 'climate', 'garden', 'last-year', 'look-over']);

const DRAFT = '/set-up/:draftId';

/** The way in, the steps, and what is done with a draft as a whole. */
export function setUpRoutes(steward: Steward, underWay: UnderWayPages): Hono {
  return new Hono()
    .get('/set-up', async (c) => c.html(beginPage(await steward.drafts())))
    .post('/set-up', async (c) => c.redirect(setUpPath((await steward.beginDraft()).id, 'where'), 303))
    .use(`${DRAFT}/*`, async (c, next) => {
      const id = c.req.param('draftId');
      if (await listedDraft(steward, id)) return next();
      const kept = await steward.draft(id);
      // What has become a garden leads there, whichever of its pages is asked for; the press that made it may come twice.
      if (kept?.gardenId === undefined || c.req.path.endsWith('/make')) return next();
      return c.redirect(weekPath(kept.gardenId), 303);
    })
    .get(DRAFT, async (c) => {
      const { id, draft } = await openDraft(c, steward);
      return c.redirect(setUpPath(id, nextStep(draft)));
    })
    .get(`${DRAFT}/throw-away`, async (c) => {
      const listed = await listedDraft(steward, c.req.param('draftId'));
      if (listed === undefined) throw gone();
      return c.html(throwAwayPage(listed));
    })
    .post(`${DRAFT}/throw-away`, async (c) => {
      if (!(await steward.throwAwayDraft(c.req.param('draftId')))) throw gone();
      return c.redirect(GARDENS_PATH, 303);
    })
    .post(`${DRAFT}/make`, (c) => make(c, steward, underWay))
    .get(`${DRAFT}/:step`, async (c) => {
      const { step, room } = await opened(c, steward);
      const missing = missingBefore(step.name, room);
      if (missing !== undefined) return c.redirect(setUpPath(room.draftId, missing));
      return c.html(stepPage(STEPS, step, room, { problems: [], query: queryOf(c) }));
    })
    .post(`${DRAFT}/:step`, (c) => answer(c, steward));
}

async function answer(c: Context, steward: Steward): Promise<Response> {
  const form = await readForm(c);
  const { step, room } = shownIn(form, await opened(c, steward));
  const goesBack = form.text('do') === 'back';
  const press = pressOf(form);
  const isTwice = press !== undefined && room.draft.pressed?.includes(press) === true;
  const leadsOn = ['on', TO_THE_END].includes(form.text('do')) || goesBack;
  const read: StepRead = isTwice ? { change: unchanged, leads: leadsOn ? 'on' : 'here' } : await step.read(form, room);
  if (goesBack && ('change' in read || LEFT_GOING_BACK.has(step.name))) {
    if ('change' in read) await steward.changeDraft(room.draftId, read.change);
    return c.redirect(setUpPath(room.draftId, stepBefore(step.name) ?? step.name), 303);
  }
  if ('problems' in read) {
    const shown: StepShown = { sent: form, problems: read.problems, query: queryOf(c) };
    return c.html(stepPage(STEPS, step, room, shown), 422);
  }
  const { change, leads } = read;
  const kept = await steward.changeDraft(room.draftId, (now) => {
    const next = pressedOnce(now, press, change);
    return leads === 'on' ? { ...next, passed: [...new Set([...next.passed, step.name])] } : next;
  });
  if (kept === undefined) throw gone();
  const onward = form.text('do') === TO_THE_END ? 'look-over' : stepAfter(step.name, room.draft, kept.draft.passed);
  const next = leads === 'here' ? step.name : onward;
  return c.redirect(setUpPath(room.draftId, next), 303);
}

/** What was typed is in the units it was shown in, whatever another tab has chosen meanwhile. */
function shownIn<Opened extends { room: StepRoom }>(form: Form, opened: Opened): Opened {
  const units = form.text('_units');
  return units === 'us' || units === 'metric' ? { ...opened, room: { ...opened.room, units } } : opened;
}

/** A step that was come back to leads on to what is still open; where nothing is, to the page that shows it all. */
function stepAfter(step: SetUpStep, { passed: before }: SetUpDraft, passed: readonly SetUpStep[]): SetUpStep {
  if (before.includes(step)) return nextStep({ passed: [...passed] });
  return SET_UP_STEPS[SET_UP_STEPS.indexOf(step) + 1] ?? 'look-over';
}

/** The first step that has to be told before another can be. */
function missingBefore(step: SetUpStep, { outlook: { missing } }: StepRoom): SetUpStep | undefined {
  if (step === 'look-over') return undefined;
  return missing.find((each) => SET_UP_STEPS.indexOf(each) < SET_UP_STEPS.indexOf(step));
}

async function make(c: Context, steward: Steward, underWay: UnderWayPages): Promise<Response> {
  const kept = await openDraft(c, steward);
  const back = setUpPath(kept.id, 'look-over');
  return underWay.start(c, {
    title: 'Making the garden',
    work: async (say) => {
      await say(`Planning the first year of ${draftName(kept)}`);
      const { gardenId, feedId } = await steward.makeGarden(kept.id, BY);
      return begunPath(gardenId, feedId);
    },
    failed: back,
    refused: async (problems: readonly Problem[]) => {
      const room = await roomOf(c, steward, kept);
      const shown = { problems: inPlainPlaces(problems, kept.draft, room), query: queryOf(c) };
      return c.html(stepPage(STEPS, lookOver, room, shown), 422);
    },
  });
}

async function opened(c: Context, steward: Steward): Promise<{ step: Step; room: StepRoom }> {
  const step = STEPS.find(({ name }) => name === c.req.param('step'));
  if (step === undefined) throw notFound('No page of the set-up has this address.');
  return { step, room: await roomOf(c, steward, await openDraft(c, steward)) };
}

/** A set-up that has not become a garden, be it one that cannot be read. */
async function listedDraft(steward: Steward, draftId: string): Promise<ListedDraft | undefined> {
  return (await steward.drafts()).find(({ id }) => id === draftId);
}

async function openDraft(c: Context, steward: Steward): Promise<KeptDraft> {
  const kept = await steward.draft(c.req.param('draftId') ?? '');
  if (kept === undefined) throw gone();
  return kept;
}

function gone() {
  return notFound('This set-up is not kept any more: it was thrown away, or never begun.');
}

function queryOf(c: Context): Form {
  return new Form(new Map(Object.entries(c.req.queries())));
}

/** The units of the country; before the place is told, the browser's. */
function guessedUnits(c: Context, { place }: SetUpDraft, stations: StepRoom['stations']): UnitSystem {
  if (place === undefined) return /^en-US\b/i.test(c.req.header('accept-language') ?? '') ? 'us' : 'metric';
  return unitsAt(stations, place);
}

async function roomOf(c: Context, steward: Steward, { id, draft }: KeptDraft): Promise<StepRoom> {
  const stations = await steward.stations();
  return {
    draftId: id,
    draft,
    outlook: await steward.draftOutlook(draft),
    units: readerUnits(c) ?? draft.about?.units ?? guessedUnits(c, draft, stations),
    stations,
    outlookOf: (other) => steward.draftOutlook(other),
  };
}
