/**
 * The Household page: who eats from the garden, who works in it, and the feeds and mail of each.
 */
import { type Context, Hono } from 'hono';
import { PLAIN_SHAPE } from '../../calendar/feed-shape.ts';
import { LABEL_CHARACTERS } from '../../calendar/typed-shape.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Member } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { MOST_PEOPLE } from '../../garden/household-file.ts';
import type { Problem } from '../../garden/problem.ts';
import type { GardenView, Report, Steward } from '../../steward/doings/steward.ts';
import { householdPath } from '../addresses/addresses.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { type Form, readForm, SHOWN_CHARACTERS } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { enteredIn, enteredOf, memberEntered } from './entered-member.ts';
import { feedsOf } from './feeds-of-member.ts';
import { type HouseholdPageProps, householdPage } from './household.tsx';
import { leavePage, memberPage } from './member.tsx';

const PATH = '/gardens/:gardenId/household';

/** The Household page and what is changed from it. */
export function householdRoutes(steward: Steward, settings: WebSettings): Hono {
  const app = new Hono();
  // The page shows secret addresses, so no copy of it is left in a browser's cache.
  for (const path of [PATH, `${PATH}/*`]) {
    app.use(path, async (c, next) => {
      await next();
      c.header('Cache-Control', 'no-store');
    });
  }
  const shown = async (c: Context, back: Partial<HouseholdPageProps> = {}) => {
    const view = await gardenView(steward, c);
    const { garden } = view;
    const feeds = (await steward.feeds(garden.id)).filter(({ revokedAt }) => revokedAt === undefined);
    const people = String(garden.household?.people ?? '');
    const mail = { standings: await steward.mailStandings(garden.id), way: steward.mailWay() };
    const happened = happenedTo(garden, c.req.query('told'), c.req.query('name'));
    const props = { view, feeds, mail, settings, people, happened, entered: enteredOf(), ...back };
    return c.html(householdPage(props), back.problems === undefined ? 200 : 422);
  };
  return app
    .get(PATH, (c) => shown(c))
    .post(PATH, async (c) => {
      const entered = enteredIn(await readForm(c));
      const view = await gardenView(steward, c);
      const read = memberEntered(entered, view);
      if ('problems' in read) return shown(c, { entered, problems: read.problems });
      const fact = { kind: 'member-kept', member: read.member } as const;
      const problems = await refusalsOf(() => steward.report(view.garden.id, fact, BY));
      if (problems.length > 0) return shown(c, { entered, problems });
      return c.redirect(toldPath(view.garden, 'added', read.member.name), 303);
    })
    .post(`${PATH}/people`, async (c) => {
      const form = await readForm(c);
      const { garden } = await gardenView(steward, c);
      const people = peopleIn(form);
      const back = (problems: readonly Problem[]) => shown(c, { people: form.text('people'), problems });
      if (people === undefined) return back(form.problems);
      if (people === garden.household?.people) return c.redirect(householdPath(garden.id), 303);
      return told(steward, c, garden, { kind: 'people-told', people }, back);
    })
    .post(`${PATH}/feed`, async (c) => {
      const form = await readForm(c);
      const { garden } = await gardenView(steward, c);
      const member = memberNamed(garden, form.text('member'));
      const { name } = member;
      const own = form.text('tasks') !== 'all';
      const there = feedsOf(await steward.feeds(garden.id), member).some(
        ({ shape }) => (shape.person === name) === own,
      );
      if (there) return c.redirect(toldPath(garden, 'feed-there', name), 303);
      const label = `${name}: ${own ? 'own work' : 'all the work'}`.slice(0, LABEL_CHARACTERS);
      await steward.addFeed(garden.id, label, { ...PLAIN_SHAPE, ...(own ? { person: name } : { reader: name }) });
      return c.redirect(toldPath(garden, 'feed-made', name), 303);
    })
    .route(`${PATH}/member`, memberRoutes(steward));
}

/** What came of a press, in words about whom it was for. */
const HAPPENED: Readonly<Record<string, (name: string) => string>> = {
  'feed-made': (name) => `A feed for ${name} is made. Its address stands below, with them.`,
  'feed-there': (name) =>
    `There is such a feed for ${name} already, so none was made. Its address stands below, with them.`,
  added: (name) => `${name} is of the household now.`,
  changed: (name) => `What was changed of ${name} is kept.`,
};

function toldPath({ id }: Garden, what: string, name: string): string {
  return `${householdPath(id)}?${new URLSearchParams({ told: what, name })}`;
}

/** The words of a redirect; nothing about whom the household has not. */
function happenedTo(garden: Garden, what = '', name = ''): string {
  const isMember = membersOf(garden).some((member) => member.name === name);
  return isMember && Object.hasOwn(HAPPENED, what) ? (HAPPENED[what]?.(name) ?? '') : '';
}

/** Changing somebody, and their leaving. */
function memberRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/change', async (c) => {
      const { garden, member } = await asked(steward, c);
      return c.html(memberPage({ garden, member, entered: enteredOf(member) }));
    })
    .post('/change', async (c) => {
      const entered = enteredIn(await readForm(c));
      const { view, garden, member } = await asked(steward, c);
      const back = (problems: readonly Problem[]) => c.html(memberPage({ garden, member, entered, problems }), 422);
      const read = memberEntered(entered, view, member);
      if ('problems' in read) return back(read.problems);
      if (JSON.stringify(read.member) === JSON.stringify(memberAsEntered(view, member)))
        return c.redirect(householdPath(garden.id), 303);
      const renamed = read.member.name === member.name ? {} : { formerName: member.name };
      const fact = { kind: 'member-kept', member: read.member, ...renamed } as const;
      const problems = await refusalsOf(() => steward.report(garden.id, fact, BY));
      return problems.length > 0 ? back(problems) : c.redirect(toldPath(garden, 'changed', read.member.name), 303);
    })
    .get('/leave', async (c) => {
      const { garden, member, view } = await asked(steward, c);
      return c.html(leavePage({ view, member, feeds: feedsOf(await steward.feeds(garden.id), member) }));
    })
    .post('/leave', async (c) => {
      const form = await readForm(c);
      const { garden, member } = await asked(steward, c);
      await steward.report(garden.id, { kind: 'member-gone', id: member.id, name: member.name }, BY);
      if (form.text('revoke') === 'yes') {
        for (const { id } of feedsOf(await steward.feeds(garden.id), member)) await steward.revokeFeed(garden.id, id);
      }
      return c.redirect(householdPath(garden.id), 303);
    });
}

/** The member as the form would give them back untouched. */
function memberAsEntered(view: GardenView, member: Member): Member | undefined {
  const read = memberEntered(enteredOf(member), view, member);
  return 'member' in read ? read.member : undefined;
}

async function told(
  steward: Steward,
  c: Context,
  { id }: Garden,
  report: Report,
  back: (problems: readonly Problem[]) => Response | Promise<Response>,
): Promise<Response> {
  const problems = await refusalsOf(() => steward.report(id, report, BY));
  return problems.length > 0 ? back(problems) : c.redirect(householdPath(id), 303);
}

async function asked(steward: Steward, c: Context) {
  const view = await gardenView(steward, c);
  return { view, garden: view.garden, member: memberNamed(view.garden, c.req.query('name') ?? '') };
}

function memberNamed(garden: Garden, name: string): Member {
  const member = membersOf(garden).find((each) => each.name === name);
  if (member === undefined) throw notFound(`Nobody of this household is called "${name.slice(0, SHOWN_CHARACTERS)}".`);
  return member;
}

function peopleIn(form: Form): number | undefined {
  const text = form.text('people');
  const people = /^\d{1,4}$/.test(text) ? Number(text) : 0;
  if (people >= 1 && people <= MOST_PEOPLE) return people;
  const what = text === '' ? 'It is empty.' : `"${text.slice(0, SHOWN_CHARACTERS)}" cannot be used.`;
  form.refuse({ where: 'People who eat', what, mend: `Give a whole number from 1 to ${MOST_PEOPLE}, such as 4.` });
  return undefined;
}
