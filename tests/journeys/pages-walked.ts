/**
 * Every page there is: those that links lead to, those that forms lead to, and those that say what is wrong. A route that
 * none of them reaches is found by tests/journeys/pages-walked.test.ts.
 */

import { SET_UP_STEPS, type SetUpStep } from '../../src/garden/set-up-draft.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import type { PlannedTask } from '../../src/schedule/plan.ts';
import {
  bedPath,
  chooseCropPath,
  GARDENS_PATH,
  makeGardenPath,
  mixPath,
  putAwayPath,
  reportPath,
  setUpPath,
  taskPath,
  throwAwayPath,
  weekPath,
} from '../../src/web/addresses.ts';
import { standingKinds } from '../../src/web/pages/stage.tsx';
import { ONE_CLICK } from '../../src/web/pages/stop.tsx';
import { followedLinks, routeOf } from './followed-links.ts';
import { WALKED_ON, type WalkedApp, type WalkedGarden } from './walked-gardens.ts';

/** A page with what is sent to come to it. */
export interface WalkedPage {
  route: string;
  path: string;
  /** Fields of a form that is sent; without them the page is opened. */
  form?: Readonly<Record<string, string>>;
  status: number;
}

type Sent = Omit<WalkedPage, 'route'>;

/** Routes that show no page of their own, and why. */
export const NO_PAGE: Readonly<Record<string, string>> = {
  'GET /feed/:file': 'a calendar',
  'GET /health': 'a word for programs',
  'GET /robots.txt': 'a text for robots',
  'GET /style.css': 'the stylesheet',
  'GET /gardens/:gardenId/record.csv': 'a file',
  'GET /gardens/:gardenId/record.json': 'a file',
  'GET /gardens/:gardenId/household/mail/html': 'a letter, which has tests of its own',
  'GET /gardens/:gardenId/garden-file.yaml': 'a file',
  'GET /handbook/images/:file': 'a picture',
  'GET /under-way/:id': 'stands only while a work goes on, and is looked over by itself',
  'POST /api/piles/:pileId/readings': 'an answer for programs',
  'POST /gardens/:gardenId/feeds/:feedId/new-address': 'leads on to the feeds',
  'POST /gardens/:gardenId/feeds/:feedId/revoke': 'leads on to the feeds',
  'POST /gardens/:gardenId/feeds/:feedId/open-again': 'leads on to the feeds',
  'POST /gardens/:gardenId/keys/:key/revoke': 'leads on to the keys',
  'POST /set-up': 'leads on to the first step',
  'GET /set-up/:draftId': 'leads on to the step that is open',
  'POST /set-up/:draftId/throw-away': 'leads on to the gardens',
  'POST /demo': 'leads on to the demo garden',
  'POST /gardens/:gardenId/put-away': 'leads on to the gardens',
  'POST /gardens/:gardenId/give-back': 'leads on to the garden',
  'POST /gardens/:gardenId/household/feed': 'leads on to the household',
  'POST /gardens/:gardenId/household/member/leave': 'leads on to the household',
};

/** The pages of both gardens, and what is said of addresses that lead nowhere; those that change something at the end. */
export async function pagesWalked({ get, routes, gardens, drafts }: WalkedApp): Promise<WalkedPage[]> {
  const pages: WalkedPage[] = [
    { route: 'GET /', path: '/', status: 200 },
    { route: 'GET /bring-in', path: '/bring-in', status: 200 },
  ];
  for (const garden of Object.values(gardens)) {
    const within = new RegExp(`^/(?:handbook|gardens/${garden.id})(?:[/?]|$)`);
    const found = await followedLinks({ get, routes }, { from: [weekPath(garden.id)], within });
    pages.push(...found.filter(({ route }) => NO_PAGE[route] === undefined));
    pages.push(...[...taskPages(garden), ...askedOf(garden)].map((path) => opened(path, 200, routes)));
    pages.push(...sentIn(garden).map((sent) => routed(sent, routes)));
  }
  pages.push(...setUpPages(drafts).map((sent) => routed(sent, routes)));
  pages.push(...WRONG.map(({ path, status }) => opened(path, status, routes)));
  pages.push(...GONE.map((sent) => routed(sent, routes)));
  return [...pages, ...fromTheMail(gardens.demo).map((sent) => routed(sent, routes))];
}

/** The page of gardens and every step of a set-up: of one told to its end, of one just begun, and sent wrongly. */
function setUpPages({ told, bare }: WalkedApp['drafts']): Sent[] {
  const shown = [GARDENS_PATH, setUpPath(), throwAwayPath(told), putAwayPath('lone-bed'), setUpPath(bare, 'where')];
  const wrong: Partial<Record<SetUpStep, Record<string, string>>> = {
    where: { latitude: 'north' },
    climate: { from: '' },
    garden: { name: '', timeZone: 'nowhere' },
    beds: { do: 'add', count: '0' },
    bins: { do: 'add', size: 'large' },
    'last-year': { 'past:bed-1:2026:0': 'rice' },
    growing: { do: 'add', what: '' },
  };
  return [
    ...shown.map((path) => ({ path, status: 200 })),
    ...SET_UP_STEPS.map((step) => ({ path: setUpPath(told, step), status: 200 })),
    { path: `${setUpPath(told, 'where')}?words=madison`, status: 200 },
    { path: `${setUpPath(told, 'beds')}?change=bed-1`, status: 200 },
    { path: setUpPath(bare, 'look-over'), status: 200 },
    ...Object.entries(wrong).map(([step, form]) => ({ path: setUpPath(told, step as SetUpStep), form, status: 422 })),
    { path: makeGardenPath(bare), form: {}, status: 422 },
  ];
}

function opened(path: string, status: number, routes: readonly string[]): WalkedPage {
  return { route: routeOf(path, routes) ?? 'none', path, status };
}

function routed(sent: Sent, routes: readonly string[]): WalkedPage {
  const route = routeOf(sent.path, routes, sent.form === undefined ? 'GET' : 'POST');
  return { route: route ?? 'none', ...sent };
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
    `${at}/undo`,
    `${at}/away-sheet`,
    ...files,
    ...(garden.wishes.length === 0 ? [] : [`${at}/beds?years=3`, `${at}/take-plan?years=3`]),
    ...(cover === undefined ? [] : [`${reportPath(id, 'stage')}?seen=${cover.value}&stage=first-buds&on=${WALKED_ON}`]),
    ...(planting === undefined ? [] : [`${bedPath(id, planting.bedId)}/season/drop?planting=${planting.id}`]),
  ];
}

/** Forms sent with something wrong in them, or with nothing. */
function sentIn({ id, view, feed }: WalkedGarden): Sent[] {
  const at = weekPath(id);
  const bed = bedPath(id, view.garden.beds[0]?.id ?? '');
  const [task] = view.plan.tasks.filter(({ state }) => state === 'open');
  const [member] = view.garden.household?.members ?? [];
  const refused = (path: string, form: Record<string, string> = {}): Sent => ({ path, form, status: 422 });
  return [
    refused('/reading', { units: 'ells' }),
    ...(task === undefined ? [] : [refused(taskPath(id, task.key), { do: 'pin', day: 'soon' })]),
    refused(`${at}/weather`, { day: 'Tuesday', low: 'cold' }),
    refused(reportPath(id, 'cold-night'), { day: 'Tuesday', low: 'cold' }),
    refused(reportPath(id, 'disease'), { bed: view.garden.beds[0]?.id ?? '', disease: '' }),
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

/** Pages behind links in mail. The last of them stops it. */
function fromTheMail({ answer = '', stop = '' }: WalkedGarden): Sent[] {
  return [
    { path: answer, status: 200 },
    { path: answer.replace('as=done', 'as=skip'), status: 200 },
    { path: answer, form: { answer: 'perhaps' }, status: 422 },
    { path: stop, status: 200 },
    { path: stop, form: { [ONE_CLICK.name]: ONE_CLICK.value }, status: 200 },
  ];
}

/** Files that are not held any more. */
const GONE: readonly Sent[] = ['/gardens/lone-bed/garden-file/none', '/bring-in/none'].map((path) => ({
  path,
  form: {},
  status: 404,
}));

/** Addresses that lead nowhere, and questions that cannot be answered. */
const WRONG: readonly { path: string; status: number }[] = [
  { path: '/nowhere', status: 404 },
  { path: '/gardens/nobodys', status: 404 },
  { path: '/answer/nothing', status: 404 },
  { path: '/gardens/lone-bed/year?season=fifth', status: 400 },
  { path: '/gardens/lone-bed?week=whitsun', status: 400 },
  { path: '/gardens/lone-bed/record?season=1815', status: 404 },
];
