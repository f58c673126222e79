/**
 * The pages of the compost yard: what is there and to come, a mix worked out, and the fill of a new bed.
 */
import { Hono } from 'hono';
import { fillSheet } from '../../digest/fill-sheet.ts';
import { mixSheet } from '../../digest/mix-sheet.ts';
import { yardSheet } from '../../digest/yard-sheet.ts';
import type { Problem } from '../../garden/problem.ts';
import { compostBalance } from '../../practices/catalogue.ts';
import { roomOf } from '../../practices/composting/mix/layers.ts';
import { readMaterial, readPortion, type TypedPortion } from '../../practices/composting/mix/read-portion.ts';
import type { AtHand } from '../../practices/composting/mix/what-to-add.ts';
import { askedFill, type FillTyped } from '../../practices/new-beds/read-fill.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { gardenView } from '../requests/garden-view.ts';
import { fillPage } from './fill.tsx';
import { type MixAsked, mixPage } from './mix.tsx';
import { yardPage } from './yard.tsx';

const PATH = '/gardens/:gardenId/compost';

export function compostRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(steward, c);
      const { garden, climate, plan } = view;
      return c.html(yardPage(view, yardSheet(compostBalance({ garden, climate, today: plan.today }), plan.today)));
    })
    .get(`${PATH}/mix`, async (c) => {
      const view = await gardenView(steward, c);
      const asked = askedIn(c.req.queries());
      const { status, ...answer } = answerTo(view, asked);
      return c.html(mixPage({ view, asked, ...answer }), status);
    })
    .get(`${PATH}/fill`, async (c) => {
      const view = await gardenView(steward, c);
      const typed = fillTyped(c.req.queries());
      const { status, ...answer } = fillAnswer(typed);
      return c.html(fillPage({ view, typed, ...answer }), status);
    });
}

/** What a form asks about a bed; nothing is worked out before anything is typed. */
function fillAnswer(typed: FillTyped) {
  if (Object.values(typed).every((text) => text === '')) return { problems: [], status: 200 as const };
  const read = askedFill(typed);
  if ('problems' in read) return { problems: read.problems, status: 422 as const };
  return { sheet: fillSheet(read.asked), problems: [], status: 200 as const };
}

function fillTyped(queries: Readonly<Record<string, string[]>>): FillTyped {
  const text = (name: string): string => (queries[name]?.[0] ?? '').trim().slice(0, 40);
  const [length, width, depth] = [text('length'), text('width'), text('depth')];
  return { length, width, depth, paths: text('paths'), compost: text('compost'), phosphorus: text('phosphorus') };
}

/** Rows that a form may send at most; more are not read. */
const MOST_ROWS = 8;

/** What a form asks: each row a material and its amount, rows left empty among them. */
function askedIn(queries: Readonly<Record<string, string[]>>): MixAsked {
  const rowsOf = (materials: string, amounts: string) =>
    (queries[materials] ?? []).slice(0, MOST_ROWS).map((material, at) => ({
      material: material.trim(),
      amount: (queries[amounts]?.[at] ?? '').trim().slice(0, 40),
    }));
  return { rows: rowsOf('material', 'amount'), have: rowsOf('have', 'most'), bin: queries.bin?.[0] ?? '' };
}

function answerTo({ garden }: GardenView, { rows, have, bin }: MixAsked) {
  const read = rows
    .filter(({ material, amount }) => material !== '' || amount !== '')
    .map(({ material, amount }) => readPortion(material, amount));
  const things = have
    .filter(({ material }) => material !== '')
    .map(({ material, amount }) => thingOf(material, amount));
  const problems = [...read, ...things].flatMap((each) => (Array.isArray(each) ? each : []));
  if (problems.length > 0) return { problems, status: 422 as const };
  const portions = read.filter((each): each is TypedPortion => !Array.isArray(each));
  const atHand = things.filter((each): each is AtHand => !Array.isArray(each));
  const chosen = garden.bins.find(({ id }) => id === bin);
  const sheet = mixSheet(portions, atHand.length > 0 ? atHand : undefined, chosen && roomOf(chosen.volumeL));
  const nothing = sheet === undefined && portions.length > 0;
  return nothing ? { problems: [NO_RATIO], status: 422 as const } : { sheet, problems: [], status: 200 as const };
}

const NO_RATIO: Problem = {
  where: 'The mix',
  what: 'None of it has a ratio to reckon with.',
  mend: 'Add something that has, such as leaves.',
};

/** Something there to add: all that is wanted of it where no amount is written. */
function thingOf(word: string, amount: string): AtHand | Problem[] {
  if (amount === '') {
    const material = readMaterial(word);
    return 'mend' in material ? [material] : { material };
  }
  const portion = readPortion(word, amount);
  return Array.isArray(portion) ? portion : { material: portion.material, most: portion.amount };
}
