/**
 * The walk over what pages show of a kind, such as dates or amounts: which pages it opens, and what it finds.
 */
import { setImmediate } from 'node:timers/promises';
import { reportPath, taskPath } from '../../src/web/addresses/addresses.ts';
import type { Asked, Shown } from './asked.ts';
import { pagesWalked, type WalkedPage } from './pages-walked.ts';
import type { WalkedApp, WalkedGarden } from './walked-gardens.ts';

/** What needs no way to where it comes from. */
export interface Excepted {
  /** Routes whose pages it is on. */
  on: RegExp;
  /** What it stands in, innermost first, joined with "<". */
  within: RegExp;
  because: string;
}

/** A kind of thing that is looked for, and what of it is excepted. */
export interface Sought {
  on: (html: string) => readonly Shown[];
  excepted: readonly Excepted[];
}

/** Every page that is opened and not sent, and further ones that show dates and amounts. */
export async function pagesAsked(walked: WalkedApp): Promise<WalkedPage[]> {
  const pages = (await pagesWalked(walked)).filter(({ form, route }) => form === undefined && !APART.test(route));
  return [...pages, ...Object.values(walked.gardens).flatMap(furtherPages)];
}

/** What is found on pages: how it is asked, what cannot be, and the exceptions that were met. */
export interface FoundAsked {
  counts: ReadonlyMap<Asked | 'excepted', number>;
  unasked: readonly string[];
  met: ReadonlySet<Excepted>;
}

/** Looks at everything of a kind on some pages. */
export async function askedOn(
  pages: readonly WalkedPage[],
  { on, excepted }: Sought,
  shown: (path: string) => Promise<string>,
): Promise<FoundAsked> {
  const counts = new Map<Asked | 'excepted', number>();
  const unasked = new Set<string>();
  const met = new Set<Excepted>();
  for (const { path, route } of pages) {
    await setImmediate();
    for (const each of on(await shown(path))) {
      const within = each.within.join('<');
      const exception = excepted.find((one) => one.on.test(route) && one.within.test(within));
      const how = each.asked === 'no' && exception !== undefined ? 'excepted' : each.asked;
      if (how === 'excepted' && exception !== undefined) met.add(exception);
      if (how === 'no')
        unasked.add(`${path}: ${each.text}: ${each.words.slice(0, 120)} (${each.within.slice(0, 4).join('<')})`);
      counts.set(how, (counts.get(how) ?? 0) + 1);
    }
  }
  return { counts, unasked: [...unasked], met };
}

/** What the handbook shows is of its examples and measurements. A link in mail opens a page with no way out. */
const APART = /^GET \/(?:handbook|answer)/;

/** A task of every kind, settled and not, a disease in a bed that has grown its host, and a cover for the first gap. */
function furtherPages({ id, view: { garden, plan } }: WalkedGarden): WalkedPage[] {
  const tasks = new Map(plan.tasks.map((task) => [`${task.kind} ${task.state}`, taskPath(id, task.key)]));
  const host = garden.plantings.find(({ cropId }) => cropId === 'cabbage');
  const found = { bed: host?.bedId ?? '', crop: 'cabbage', disease: 'clubroot', on: plan.today };
  return [
    ...[...tasks.values()].map((path) => ({ path, route: 'GET /gardens/:gardenId/tasks/:key{.+}' })),
    ...(host === undefined
      ? []
      : [
          {
            path: `${reportPath(id, 'disease')}?${new URLSearchParams(found)}`,
            route: 'GET /gardens/:gardenId/report/disease',
          },
        ]),
  ].map((page) => ({ ...page, status: 200 }));
}
