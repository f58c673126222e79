/**
 * Every way a request comes in: the pages with their questions, and the forms that are on them. Found as a reader finds
 * them, and where no link leads, told here.
 */
import { SET_UP_STEPS } from '../../src/garden/set-up-draft.ts';
import { followedLinks, routeOf } from '../journeys/followed-links.ts';
import { TODAY } from '../web/sample-garden.ts';
import { filledFor } from './filled.ts';
import { type Household, type Laid, sharedHousehold } from './household.ts';
import { type FoundForm, formsOn } from './page-forms.ts';
import { HITHER, NEW_FILE } from './two-gardens.ts';

/** A page: its path, or what leads to it. */
type Reach = string | ((household: Household) => Promise<string>);

/** A form by the page it is on. */
export interface WayIn {
  /** What it is called where something is wrong. */
  name: string;
  route: string;
  page: Reach;
  /** Which of the forms of its route on that page. */
  at: number;
  /** As it was found. */
  form: FoundForm;
}

/** All that was found. */
export interface WaysIn {
  /** Paths of pages with their routes, each set of questions once. */
  pages: readonly { route: string; path: string }[];
  forms: readonly WayIn[];
}

const AT = `/gardens/${HITHER}`;

/** Pages that no link leads to: what forms lead to that ask something. */
const ASKED = [
  `${AT}/weather?kind=observed&day=2027-04-19&low=30&snow-lying=6`,
  `${AT}/report/away?from=2027-06-01&to=2027-06-20`,
  `${AT}/report/disease?bed=north&crop=snap-bean&disease=white mold&on=${TODAY}`,
  `${AT}/compost/mix?material=leaves&amount=400+l&material=grass+clippings&amount=200+l&bin=`,
  `${AT}/compost/fill?length=2.4+m&width=1.2+m&depth=30+cm&paths=&compost=200+l&phosphorus=`,
  `${AT}/beds?years=2`,
  `${AT}/take-plan?years=2`,
  `${AT}/beds/wall/drop?stand=oats-wall`,
  `${AT}/beds/south/season/drop?planting=crop-2`,
  `${AT}/report/stage?seen=rye-north%2Fcereal_rye&stage=first-buds&on=${TODAY}`,
  `${AT}/undo?entry=2`,
  `${AT}/history?about=bed%3Anorth&before=4`,
  `${AT}/record?season=2027`,
  `${AT}/away-sheet?day=2027-07-03`,
  `${AT}/household/mail/html?person=Ida`,
  `${AT}/weather/record/now.csv`,
  '/',
  '/robots.txt',
  '/health',
  '/style.css',
  '/who-gets-in',
  '/sign-in',
  '/handbook/sources',
  '/handbook/sowing',
  `/handbook/images/bed-desk.png`,
  '/under-way/none',
];

/** A place where work that was handed over is looked at. */
const sent =
  (path: string, fields: Record<string, string>) =>
  async ({ send }: Household): Promise<string> => {
    const { status, location, body } = await send(path, Object.entries(fields));
    if (location === undefined) throw new Error(`${path} leads nowhere: ${status} ${body.slice(0, 2000)}`);
    return location;
  };

/** Pages that stand only after something was sent to a garden. */
export const afterAForm = (at: string): ((household: Household) => Promise<string>)[] => [
  sent(`${at}/weather/days`, { kind: 'observed', rows: 'date,tmin_c,tmax_c\n2027-04-18,2,15' }),
  sent(`${at}/weather/record/offer`, { which: 'former' }),
  async (household) => {
    const { body } = await household.ask(`${at}/garden-file.yaml`);
    return sent(`${at}/garden-file`, { text: body.replace('Mill Row', 'Mill Lane'), prefer: 'file' })(household);
  },
];

/** The same of the household. */
const AFTER_OTHER_FORMS: readonly ((household: Household) => Promise<string>)[] = [
  sent('/bring-in', { text: NEW_FILE }),
  async (household) => {
    await household.send(`${AT}/put-away`, []);
    return '/gardens';
  },
];

let shared: Promise<WaysIn> | undefined;

/** All ways into the household that is shared, walked once in a process. */
export function sharedWays(): Promise<WaysIn> {
  shared ??= sharedHousehold().then(waysIn);
  return shared;
}

async function waysIn(laid: Laid): Promise<WaysIn> {
  const { handles, draft, routes } = laid;
  const shown = new Map<string, { reach: Reach; html: string }>();
  const household = await laid.open();
  const get = async (path: string, reach: Reach = path) => {
    const { status, body, isPage, location } = await household.ask(path);
    shown.set(path, { reach, html: isPage ? body : '' });
    const headers = location === undefined ? { 'content-type': isPage ? 'text/html' : 'text/plain' } : { location };
    return new Response(location === undefined ? body : null, { status, headers });
  };
  const within = new RegExp(`^/(?:gardens/${HITHER}|gardens|set-up/${draft})(?:[/?]|$)`);
  const from = [AT, '/gardens', '/set-up', '/bring-in', '/handbook'];
  const found = await followedLinks({ get, routes }, { from, within });
  const { plan } = await household.steward.view(HITHER);
  // The first of each kind: what a later one looks at is often not there yet.
  const works = new Map(plan.tasks.toReversed().map(({ kind, state, key }) => [`${kind} ${state}`, key]));
  const tasks = [...works.values()].map((key) => `${AT}/tasks/${key}`);
  const steps = [`/set-up/${draft}`, ...SET_UP_STEPS.map((step) => `/set-up/${draft}/${step}`)];
  const mail = [handles.hither.answer, handles.hither.stop];
  const feed = `/feed/${handles.hither.feeds[0]?.token}.ics`;
  const told = [...ASKED, ...tasks, ...steps, ...mail, feed];
  for (const path of told) if (!shown.has(path)) await get(path);
  const pages = [...found.map(({ path }) => path), ...told];
  for (const reach of [...afterAForm(AT), ...AFTER_OTHER_FORMS]) {
    const path = await reach(household);
    await get(path, reach);
    pages.push(path);
  }
  await household.close();
  return {
    pages: pages.map((path) => ({ path, route: routeOf(path, routes) ?? path })),
    forms: [...handMade(laid), ...formsOf(shown, routes)],
  };
}

function formsOf(shown: ReadonlyMap<string, { reach: Reach; html: string }>, routes: readonly string[]): WayIn[] {
  const ways = new Map<string, WayIn>();
  for (const [path, { reach, html }] of shown) {
    const counts = new Map<string, number>();
    for (const form of formsOn(path, html)) {
      const route = routeOf(form.action, routes, form.method) ?? `${form.method} ${form.action}`;
      const at = counts.get(route) ?? 0;
      counts.set(route, at + 1);
      const name = nameOf(route, form);
      if (!ways.has(name)) ways.set(name, { name, route, page: reach, at, form });
    }
  }
  return [...ways.values()];
}

/** What tells a form from others of its route: the list it is about, what it does, and which fields it has. */
function nameOf(route: string, { action, fields, presses }: FoundForm): string {
  const list = /\/edit\/([^/]+)\//.exec(action)?.[1] ?? /\/set-up\/[^/]+\/([^/?]+)/.exec(action)?.[1] ?? '';
  const does = fields.filter(([name]) => name === 'do' || name === 'answer').map(([, value]) => value);
  const presses_ = presses.map(([name, value]) => `${name}=${value}`);
  const names = new Set(fields.map(([name]) => name.replace(/\d+/g, '#')));
  return [route, list, ...does, ...presses_.slice(0, 3), `(${[...names].slice(0, 12).join(' ')})`].join(' ');
}

/** Forms of pages that stand only in mail, or while mail waits. */
function handMade({ handles }: Laid): WayIn[] {
  const form = (action: string, fields: Record<string, string>): FoundForm => ({
    page: action,
    action,
    method: 'POST',
    withFiles: false,
    fields: Object.entries(fields),
    offers: new Map(),
    types: new Map(),
    presses: [],
  });
  const way = (route: string, made: FoundForm): WayIn => ({ name: route, route, page: '', at: -1, form: made });
  return [
    way(
      'POST /gardens/:gardenId/household/mail/again',
      form(`${AT}/household/mail/again`, { person: 'Ida', monday: '2027-04-19' }),
    ),
    way('POST /stop/:token', form(handles.hither.stop, { 'List-Unsubscribe': 'One-Click' })),
  ];
}

/** The form of a way in, as it stands now. */
export async function formNow(household: Household, way: WayIn, routes: readonly string[]): Promise<FoundForm> {
  if (way.at < 0) return way.form;
  const path = typeof way.page === 'string' ? way.page : await way.page(household);
  let shown = await household.ask(path);
  // A page that takes a while is come back to.
  for (let more = 0; shown.location !== undefined && more < 20; more += 1) shown = await household.ask(shown.location);
  const { body } = shown;
  const forms = formsOn(path, body).filter(
    ({ action, method }) => (routeOf(action, routes, method) ?? `${method} ${action}`) === way.route,
  );
  const form = forms[way.at];
  if (form === undefined) throw new Error(`${way.name} is on ${path} no more.`);
  const filled = filledFor(way.name);
  const kept = form.fields.filter(([name]) => filled[name] === undefined);
  return { ...form, fields: [...kept, ...Object.entries(filled)] };
}
