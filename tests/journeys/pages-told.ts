/**
 * Pages that no link leads to: what forms show when they are asked or sent, what stands behind links in mail, the steps of
 * a set-up, and what is said of addresses that lead nowhere.
 */
import { SET_UP_STEPS, type SetUpStep } from '../../src/garden/set-up-draft.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import type { PlannedTask } from '../../src/schedule/plan.ts';
import {
  bedPath,
  chooseCropPath,
  deletePath,
  editPath,
  loggedDaysPath,
  longRecordPath,
  makeGardenPath,
  mixPath,
  offerKeptPath,
  putAwayPath,
  reportPath,
  setUpPath,
  taskPath,
  throwAwayPath,
  weekPath,
} from '../../src/web/addresses/addresses.ts';
import { ONE_CLICK } from '../../src/web/mail-links/stop.tsx';
import { standingKinds } from '../../src/web/report/stage.tsx';
import { WALKED_ON, type WalkedApp, type WalkedGarden } from './walked-gardens.ts';

/** A page that is asked for, or a form that is sent, and the status that answers. */
export interface Told {
  path: string;
  /** Fields of a form that is sent; without them the page is opened. */
  form?: Readonly<Record<string, string>>;
  status: number;
  /** The route whose page a sent form leads to, where it leads on. */
  leadsTo?: string;
}

/** The pages of a garden that no link leads to, forms that come back apart. */
export function askedIn(garden: WalkedGarden): Told[] {
  return [...taskPages(garden), ...askedOf(garden)].map((path) => ({ path, status: 200 }));
}

/** A task's page differs by what can be told there. */
function taskPages({ id, view: { plan } }: WalkedGarden): string[] {
  const byWork = new Map(plan.tasks.map((task) => [workOf(task), task.key]));
  return [...byWork.values()].map((key) => taskPath(id, key));
}

function workOf({ kind, state, makes }: PlannedTask): string {
  const asked = ['check-stand', 'check-regrowth', 'cut-again'].includes(kind) ? kind : '';
  const looks = makes
    .map(({ makes: what }) => what)
    .filter((what) => what === 'soil-squeezed' || what === 'pile-finished');
  return [state, asked, ...looks].join(' ');
}

const inDays = (days: number): Day => addDays(WALKED_ON, days);

/** What the pages with forms that ask something show when they are asked. */
function askedOf({ id, view, files }: WalkedGarden): string[] {
  const { garden } = view;
  const at = weekPath(id);
  const bed = garden.beds[0]?.id ?? '';
  const old = garden.stands.find(({ sow, cutOn, deadOn }) => sow.day < inDays(-60) && (cutOn ?? deadOn) === undefined);
  const cover = standingKinds(view).find(({ value }) => value.startsWith(`${old?.id}/`));
  const planting = garden.plantings.find(({ start }) => start.day > WALKED_ON);
  return [
    `${at}/weather?kind=observed&day=${WALKED_ON}&low=30&snow-lying=6`,
    `${reportPath(id, 'away')}?from=${inDays(10)}&to=${inDays(40)}`,
    `${reportPath(id, 'disease')}?bed=${bed}&crop=tomato&disease=blight&on=${WALKED_ON}`,
    `${mixPath(id)}?material=leaves&amount=400+l&material=grass+clippings&amount=200+l&bin=`,
    `${at}/compost/fill?length=2.4+m&width=1.2+m&depth=30+cm&paths=&compost=200+l&phosphorus=`,
    chooseCropPath(id, bed, { season: 2028, crop: 'tomato' }),
    putAwayPath(id),
    `${at}/undo`,
    `${at}/away-sheet`,
    ...files,
    ...(garden.wishes.length === 0 ? [] : [`${at}/beds?years=3`, `${at}/take-plan?years=3`]),
    ...(cover === undefined ? [] : [`${reportPath(id, 'stage')}?seen=${cover.value}&stage=first-buds&on=${WALKED_ON}`]),
    ...(planting === undefined ? [] : [`${bedPath(id, planting.bedId)}/season/drop?planting=${planting.id}`]),
  ];
}

/** Pasted days of the weather log. */
const ROWS = { kind: 'observed', rows: 'date,tmin_c,tmax_c\n2027-05-03,2,15' };

/** Forms sent with something wrong in them, or with nothing. */
export function sentIn({ id, view, feed }: WalkedGarden): Told[] {
  const at = weekPath(id);
  const bedId = view.garden.beds[0]?.id ?? '';
  const bed = bedPath(id, bedId);
  const [task] = view.plan.tasks.filter(({ state }) => state === 'open');
  const [member] = view.garden.household?.members ?? [];
  const refused = (path: string, form: Record<string, string> = {}): Told => ({ path, form, status: 422 });
  return [
    refused('/reading', { units: 'ells' }),
    ...(task === undefined ? [] : [refused(taskPath(id, task.key), { do: 'pin', day: 'soon' })]),
    refused(`${at}/weather`, { day: 'Tuesday', low: 'cold' }),
    refused(loggedDaysPath(id), {}),
    { path: loggedDaysPath(id), form: ROWS, status: 200, leadsTo: 'GET /gardens/:gardenId/weather/days/:offer' },
    { path: `${at}/weather/day`, form: { day: WALKED_ON, kind: 'observed', low: 'cold' }, status: 409 },
    { path: `${at}/weather/day/gone`, form: { day: 'Tuesday' }, status: 404 },
    refused(reportPath(id, 'cold-night'), { day: 'Tuesday', low: 'cold' }),
    refused(reportPath(id, 'disease'), { bed: bedId, disease: '' }),
    refused(reportPath(id, 'stage')),
    refused(reportPath(id, 'pile'), { on: 'today', temp: 'hot' }),
    refused(reportPath(id, 'away'), { from: 'May', to: '' }),
    refused(`${at}/wishes`, { crop: 'rice', amount: 'much' }),
    refused(`${at}/take-plan`, { years: '9' }),
    refused(`${bed}/season/crop`, { season: '1900', crop: 'rice' }),
    refused(`${bed}/season/drop`),
    refused(`${bed}/choose`),
    refused(`${bed}/drop`),
    refused(`${at}/undo`, { entry: 'last' }),
    refused(`${at}/feeds`, { label: '' }),
    ...(feed === undefined ? [] : [refused(`${at}/feeds/${feed.id}/change`, { label: '' })]),
    refused(longRecordPath(id), { origin: '' }),
    refused(editPath(id, 'beds'), { name: '' }),
    { path: editPath(id, 'beds', bedId), form: {}, status: 409 },
    { path: deletePath(id, 'beds', bedId), form: {}, status: view.garden.beds.length > 1 ? 409 : 422 },
    refused(`${at}/keys`, { label: '' }),
    { path: `${at}/keys`, form: { label: 'pile probe' }, status: 200 },
    refused(`${at}/garden-file`, { text: 'beds: [' }),
    refused('/bring-in', { text: 'beds: 3' }),
    refused(`${at}/household`, { name: '' }),
    refused(`${at}/household/people`, { people: 'many' }),
    ...(member === undefined
      ? []
      : [
          refused(`${at}/household/member/change?${new URLSearchParams({ name: member.name })}`, { name: '' }),
          refused(`${at}/household/mail/again`, { person: member.name }),
        ]),
  ];
}

/** A record looked at before it is put behind the garden: here the one that stands there. */
export function recordLookedAt({ id }: WalkedGarden): Told {
  const leadsTo = 'GET /gardens/:gardenId/weather/record/offer/:offer';
  return { path: offerKeptPath(id), form: { which: 'now' }, status: 200, leadsTo };
}

/** Pages behind links in mail. The last of them stops it. */
export function fromTheMail({ answer = '', stop = '' }: WalkedGarden): Told[] {
  return [
    { path: answer, status: 200 },
    { path: answer.replace('as=done', 'as=skip'), status: 200 },
    { path: answer, form: { answer: 'perhaps' }, status: 422 },
    { path: stop, status: 200 },
    { path: stop, form: { [ONE_CLICK.name]: ONE_CLICK.value }, status: 200 },
  ];
}

/** Addresses that lead nowhere, and questions that cannot be answered. */
export const WRONG: readonly Told[] = [
  { path: '/nowhere', status: 404 },
  { path: '/gardens/nobodys', status: 404 },
  { path: '/answer/nothing', status: 404 },
  { path: '/gardens/lone-bed/year?season=fifth', status: 400 },
  { path: '/gardens/lone-bed?week=whitsun', status: 400 },
  { path: '/gardens/lone-bed/record?season=1815', status: 404 },
];

/** Files that are not held any more. */
export const GONE: readonly Told[] = ['/gardens/lone-bed/garden-file/none', '/bring-in/none'].map((path) => ({
  path,
  form: {},
  status: 404,
}));

/** Every step of a set-up: of one told to its end, of one just begun, and sent wrongly. */
export function setUpPages({ told, bare }: WalkedApp['drafts']): Told[] {
  const shown = [
    ...[setUpPath(), throwAwayPath(told), setUpPath(bare, 'where'), setUpPath(bare, 'look-over')],
    ...SET_UP_STEPS.map((step) => setUpPath(told, step)),
    `${setUpPath(told, 'where')}?words=madison`,
    `${setUpPath(told, 'beds')}?change=bed-1`,
  ];
  return [
    ...shown.map((path) => ({ path, status: 200 })),
    ...SENT_WRONG.map(([step, form]) => ({ path: setUpPath(told, step), form, status: 422 })),
    { path: makeGardenPath(bare), form: {}, status: 422 },
  ];
}

const SENT_WRONG: readonly [SetUpStep, Record<string, string>][] = [
  ['where', { latitude: 'north' }],
  ['climate', { from: '' }],
  ['garden', { name: '', timeZone: 'nowhere' }],
  ['beds', { do: 'add', count: '0' }],
  ['bins', { do: 'add', size: 'large' }],
  ['last-year', { 'past:bed-1:2026:0': 'rice' }],
  ['growing', { do: 'add', what: '' }],
];
