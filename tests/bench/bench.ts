/**
 * How fast it is, as ratios measured in one run: `npm run bench`. Nothing here passes or fails.
 *
 * Each pair is run in turn, A B A B …, and the median of the ratios is printed, so that a noisy machine disturbs both
 * sides alike.
 */
import { performance } from 'node:perf_hooks';
import ical from 'ical-generator';
import { addDays } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import { entryText } from '../../src/schedule/entry-text.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import type { GardenView } from '../../src/steward/doings/steward.ts';
import { reportChurn } from './churn.ts';
import { demoServer } from './demo-server.ts';
import { reportExactWeeks } from './exact-weeks.ts';
import { reportServing } from './feeds.ts';
import { median } from './median.ts';
import { reportPlanning } from './planning.ts';
import { reportLargeFeed, reportRendering } from './rendering.ts';
import { reportRotation } from './rotation.ts';

const ANCHOR = '2027-05-12';
const ROUNDS = 7;
/** Weeks in which the record has warm days and then snow; the whole year is `npm run churn`. */
const SPRING = { from: '2027-04-01', days: 28 };

const started = performance.now();
const demo = await demoServer(ANCHOR);
await (await fetch(demo.feedUrl)).text();
const startUpMs = performance.now() - started;
const view = await demo.steward.view(demo.gardenId);

console.log(`Demo garden on ${ANCHOR}: ${view.plan.tasks.length} tasks, ${view.plan.entries.length} entries.`);
await reportServing(demo);
reportRendering(view, await moved());
reportLargeFeed(view);
report('planning the year against rendering its feed with bare ical-generator', planning, bareRendering);
reportPlanning(view);
await reportRotation();
await reportExactWeeks();
reportChurn(SPRING.from, SPRING.days);
console.log(
  `From nothing to the first feed served: ${Math.round(startUpMs)} ms in this process (modules loaded before).`,
);
console.log(`Resident memory: ${Math.round(process.memoryUsage().rss / 2 ** 20)} MiB.`);
await demo.close();

/** The garden after its first work a month from now was put off by a day. */
async function moved(): Promise<GardenView> {
  const entry = view.plan.entries.find(({ day, state }) => state === 'open' && day > addDays(ANCHOR, 30));
  const [key = ''] = entry?.keys ?? [];
  await demo.steward.pin(demo.gardenId, key, addDays(entry?.day ?? ANCHOR, 1), 'bench');
  return demo.steward.view(demo.gardenId);
}

function planning(): void {
  const { garden, climate, plan } = view;
  const drafts = draftsOf({ garden, climate, today: plan.today, until: addDays(plan.today, 396) });
  makePlan({ garden, drafts, today: plan.today, now: plan.revisedAt, factsVersion: plan.factsVersion });
}

function bareRendering(): void {
  bareCalendar(view);
}

function bareCalendar({ plan, garden }: GardenView): string {
  const calendar = ical({ name: garden.name });
  for (const entry of plan.entries) {
    const { title, description } = entryText(plan, entry, garden.place.units);
    calendar.createEvent({ id: entry.lotId, start: new Date(entry.day), allDay: true, summary: title, description });
  }
  return calendar.toString();
}

function report(what: string, a: () => void, b: () => void): void {
  a();
  b();
  const ratios: number[] = [];
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const [timeA, timeB] = [timed(a), timed(b)];
    ratios.push(timeA / timeB);
    times.push(timeA);
  }
  console.log(`${what}: ratio of times ${median(ratios).toFixed(2)} (${median(times).toFixed(1)} ms a plan)`);
}

function timed(work: () => void): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}
