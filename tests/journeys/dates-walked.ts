/**
 * The walk over the dates of pages: which pages it opens, and what it finds.
 */
import { reportPath, taskPath } from '../../src/web/addresses.ts';
import { type Asked, datesOn } from './dates-asked.ts';
import { type Excepted, exceptionOf } from './dates-excepted.ts';
import { pagesWalked, type WalkedPage } from './pages-walked.ts';
import type { WalkedApp, WalkedGarden } from './walked-gardens.ts';

/** Every page that is opened and not sent, and further ones that show dates. */
export async function pagesWithDates(walked: WalkedApp): Promise<WalkedPage[]> {
  const pages = (await pagesWalked(walked)).filter(({ form, route }) => form === undefined && !APART.test(route));
  return [...pages, ...Object.values(walked.gardens).flatMap(furtherPages)];
}

/** What is found on pages: dates by how they are asked, those that cannot be, and the exceptions that were met. */
export interface DatesAsked {
  counts: ReadonlyMap<Asked | 'excepted', number>;
  unasked: readonly string[];
  met: ReadonlySet<Excepted>;
}

/** Looks at every date of some pages. */
export async function datesAsked(
  pages: readonly WalkedPage[],
  shown: (path: string) => Promise<string>,
): Promise<DatesAsked> {
  const counts = new Map<Asked | 'excepted', number>();
  const unasked = new Set<string>();
  const met = new Set<Excepted>();
  for (const { path, route } of pages) {
    for (const each of datesOn(await shown(path))) {
      const excepted = each.asked === 'no' ? exceptionOf(route, each) : undefined;
      if (excepted !== undefined) met.add(excepted);
      else if (each.asked === 'no')
        unasked.add(`${path}: ${each.words.slice(0, 120)} (${each.within.slice(0, 4).join('<')})`);
      const how = excepted === undefined ? each.asked : 'excepted';
      counts.set(how, (counts.get(how) ?? 0) + 1);
    }
  }
  return { counts, unasked: [...unasked], met };
}

/** The handbook's dates are those of its examples and measurements. A link in mail opens a page with no way out. */
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
