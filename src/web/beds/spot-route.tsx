/**
 * Editing the plan of the beds: the crops that could stand in a bed for a season, and choosing one or taking one out.
 */
import { type Context, Hono } from 'hono';
import type { Bed, Garden } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import type { Problem } from '../../garden/problem.ts';
import { vegetableById, vegetables } from '../../handbook/vegetables.ts';
import { cropYear } from '../../practices/bed-timeline.ts';
import type { Reason } from '../../practices/draft.ts';
import { offSeason, unusualHow } from '../../practices/planting/off-season.ts';
import { plantingsIn, startWord } from '../../practices/planting/planting-in-bed.ts';
import { seasonName } from '../../practices/seasons.ts';
import { type BrokenBy, brokenBy } from '../../steward/bed-plan/broken-by.ts';
import { type CropChoice, cropChoice, plannedAt } from '../../steward/bed-plan/crop-choices.ts';
import { type CropPlan, plantingId } from '../../steward/bed-plan/taken-plan.ts';
import type { GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { bedsPath, chooseCropPath, dropCropPath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { areaIn } from '../fields/areas.ts';
import { Form, readForm, SHOWN_CHARACTERS } from '../requests/form.ts';
import { BY, gardenView, wholeNumber } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { type ChosenCrop, cropPlanPage } from './crop-plan.tsx';
import { spotPage } from './spot.tsx';
import { wishSeasons } from './wishes.tsx';

const SPOT = '/gardens/:gardenId/beds/:bedId/season';

/** The list of a bed and season, the previews, and what takes them in. */
export function spotRoutes(steward: Steward): Hono {
  return new Hono()
    .get(SPOT, async (c) => {
      const { view, bed } = await bedOf(steward, c);
      const season = seasonIn(queryOf(c), view);
      if (season === undefined) throw notFound('No season of this bed that can be planned has this address.');
      const planned = plannedAt(planningInput(view), bed.id, season);
      const choices = await steward.cropChoices(view, { bedId: bed.id, season });
      const name = seasonName(view.climate, season);
      return c.html(spotPage({ view, bed, season, seasonName: name, planned, choices }));
    })
    .get(`${SPOT}/crop`, (c) => choosing(c, steward, queryOf(c), false))
    .post(`${SPOT}/crop`, async (c) => choosing(c, steward, await readForm(c), true))
    .get(`${SPOT}/drop`, (c) => dropping(c, steward, queryOf(c), false))
    .post(`${SPOT}/drop`, async (c) => dropping(c, steward, await readForm(c), true));
}

function queryOf(c: Context): Form {
  return new Form(new Map(Object.entries(c.req.queries())));
}

async function bedOf(steward: Steward, c: Context): Promise<{ view: GardenView; bed: Bed }> {
  const view = await gardenView(steward, c);
  const bed = view.garden.beds.find(({ id }) => id === c.req.param('bedId'));
  if (bed === undefined) throw notFound('No bed of this garden has this address.');
  return { view, bed };
}

function seasonIn(form: Form, view: GardenView): number | undefined {
  const season = wholeNumber(form.text('season'));
  return season !== undefined && wishSeasons(view).includes(season) ? season : undefined;
}

/** The preview of a plan, or what speaks against it. */
async function previewed(steward: Steward, view: GardenView, fact: CropPlan) {
  let preview: ReportPreview | undefined;
  const problems = await refusalsOf(async () => {
    preview = await steward.previewReport(view.garden.id, fact);
  });
  return {
    problems,
    plan: preview && { fact, preview },
    changed: preview && brokenBy(planningInput(view), preview.garden),
  };
}

async function choosing(c: Context, steward: Steward, form: Form, take: boolean) {
  const { view, bed } = await bedOf(steward, c);
  const read = chosenIn(form, view, bed);
  const action = chooseCropPath(view.garden.id, bed.id);
  if (read === undefined)
    return c.html(cropPlanPage({ view, problems: form.problems, action, fields: {}, button: '' }), 422);
  const { fact, chosen } = read;
  if (take && form.problems.length === 0) {
    const { problems, path } = await kept(steward, view, fact);
    if (problems.length === 0) return c.redirect(path, 303);
    return c.html(cropPlanPage({ view, problems, action, fields: {}, button: '', chosen }), 422);
  }
  const { problems, plan, changed } =
    form.problems.length > 0
      ? { problems: form.problems, plan: undefined, changed: undefined }
      : await previewed(steward, view, fact);
  const warned = plan === undefined ? [] : warnings(view, plan.preview.garden, fact);
  const elsewhere = changed && notToldOf(changed, chosen.choice);
  const page = cropPlanPage({
    view,
    problems,
    plan,
    action,
    fields: {},
    button: 'Plan it',
    chosen: { ...chosen, warned },
    changed: elsewhere,
  });
  return c.html(page, problems.length > 0 ? 422 : 200);
}

/** Takes a plan in, and gives the path of the beds that says so; or what speaks against it. */
async function kept(steward: Steward, { garden }: GardenView, fact: CropPlan) {
  let path = bedsPath(garden.id);
  const problems = await refusalsOf(async () => {
    path = await keptChange(steward, garden.id, path, () => steward.report(garden.id, fact, BY));
  });
  return { problems, path };
}

/** What is to be known of the days and ways of what is planned, where it is in the plan. */
function warnings(view: GardenView, garden: Garden, { plantings }: CropPlan): Reason[] {
  const input = { ...planningInput(view), garden };
  const isNew = (id: string): boolean => plantings.some((row) => row.id === id);
  return garden.beds
    .flatMap((bed) => plantingsIn(input, bed))
    .filter(({ planting }) => isNew(planting.id))
    .flatMap((at) => {
      const how = unusualHow(at);
      return [...offSeason(input, at).warned, ...(how === undefined ? [] : [how])];
    });
}

/** What a choice breaks and mends besides what is told of the choice itself. */
function notToldOf({ breaks, mends }: BrokenBy, { broken }: CropChoice): BrokenBy {
  const told = new Set(broken.map(({ bedId, season, reason }) => JSON.stringify([bedId, season, reason])));
  return { breaks: breaks.filter((each) => !told.has(JSON.stringify([each.bedId, each.season, each.reason]))), mends };
}

/** Reads a crop that is chosen off a form; nothing where not even the crop and season are there. */
function chosenIn(form: Form, view: GardenView, bed: Bed): { fact: CropPlan; chosen: ChosenCrop } | undefined {
  const season = seasonIn(form, view);
  const crop = vegetables.find(({ id }) => id === form.text('crop'));
  if (season === undefined)
    form.refuse({ where: 'The season', what: 'It is none that can be planned.', mend: 'Choose one from the table.' });
  if (crop === undefined) form.refuse(unknownCrop(form.text('crop')));
  if (season === undefined || crop === undefined) return undefined;
  const input = planningInput(view);
  const planned = plannedAt(input, bed.id, season);
  const keep = form.list('keep');
  const instead = planned.filter(({ id }) => !keep.includes(id));
  const choice = cropChoice(input, { bed, season, instead }, crop);
  const { days } = choice;
  const how = howIn(form, crop.id) ?? days?.how ?? (crop.establish === 'transplant' ? 'set-out' : 'sow');
  const asked =
    form.text('on') === '' && days !== undefined ? days.day : form.day('on', 'Goes in about', view.plan.today);
  const areaM2 = areaIn(form, 'share', 'Share of the bed', view.garden.place.units);
  const day = asked ?? view.plan.today;
  if (asked !== undefined && cropYear({ crop, from: day }, view.climate) !== season)
    form.refuse(otherSeason(view, day, season, cropYear({ crop, from: day }, view.climate)));
  const taken = new Set(view.garden.plantings.filter((row) => !instead.includes(row)).map(({ id }) => id));
  const row = {
    id: plantingId({ bedId: bed.id, cropId: crop.id, day }, taken),
    bedId: bed.id,
    cropId: crop.id,
    start: { how, day },
    ...(areaM2 === undefined ? {} : { areaM2 }),
  };
  const dropped = instead.map(({ id, bedId, cropId }) => ({ id, bedId, cropId }));
  const on = asked ?? (form.text('on') === '' ? day : form.text('on').slice(0, SHOWN_CHARACTERS));
  const fields = { season, crop: crop.id, on, how, share: form.text('share'), keep };
  const chosen = { fields, choice, planned, warned: [] };
  return { fact: { kind: 'plantings-planned', plantings: [row], dropped }, chosen };
}

const HOWS = ['sow', 'set-out'] as const;

/** How a crop is to go in, where it is told. */
function howIn(form: Form, cropId: string): (typeof HOWS)[number] | undefined {
  const word = form.text('how');
  const how = HOWS.find((each) => each === word);
  if (how === undefined && word !== '') {
    const what = `"${word.slice(0, SHOWN_CHARACTERS)}" is no way of putting a crop in.`;
    form.refuse({
      where: 'How',
      what,
      mend: `Choose "${startWord(cropId, 'sow')} in the bed" or "set out as plants".`,
    });
  }
  return how;
}

function unknownCrop(word: string): Problem {
  const shown = word.slice(0, SHOWN_CHARACTERS);
  const mend = suggestion(
    shown,
    vegetables.map(({ id }) => id),
  );
  return { where: 'The crop', what: `"${shown}" is not a known crop.`, mend };
}

function otherSeason(view: GardenView, day: string, season: number, counted: number): Problem {
  const name = (each: number): string => seasonName(view.climate, each);
  return {
    where: 'Goes in about',
    what: `What goes in on ${day} counts to ${name(counted)}, and this is ${name(season)}.`,
    mend: 'Give another day, or choose the other season in the table.',
  };
}

async function dropping(c: Context, steward: Steward, form: Form, take: boolean) {
  const { view, bed } = await bedOf(steward, c);
  const action = dropCropPath(view.garden.id, bed.id);
  const planting = view.garden.plantings.find(({ id, bedId }) => id === form.text('planting') && bedId === bed.id);
  if (planting === undefined) {
    const problems = [
      { where: 'The crop', what: 'It is not in the plan of this bed.', mend: 'Look at the beds once more.' },
    ];
    return c.html(cropPlanPage({ view, problems, action, fields: {}, button: '' }), 422);
  }
  const { id, bedId, cropId } = planting;
  const fact: CropPlan = { kind: 'plantings-planned', plantings: [], dropped: [{ id, bedId, cropId }] };
  if (take) {
    const { problems, path } = await kept(steward, view, fact);
    if (problems.length === 0) return c.redirect(path, 303);
    return c.html(cropPlanPage({ view, problems, action, fields: {}, button: '' }), 422);
  }
  const { problems, plan, changed } = await previewed(steward, view, fact);
  const button = `Take the ${vegetableById(cropId).name.toLowerCase()} out of the plan`;
  const page = cropPlanPage({ view, problems, plan, action, fields: { planting: id }, button, changed });
  return c.html(page, problems.length > 0 ? 422 : 200);
}
