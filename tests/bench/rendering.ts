/**
 * What it costs to write a feed anew after one task has moved, against bare ical-generator writing all of it.
 */
import { performance } from 'node:perf_hooks';
import ical, { ICalEventTransparency } from 'ical-generator';
import { feedEventsOf, gardenFeed, PLAIN_VIEW } from '../../src/calendar/feed-events.ts';
import { KeptTexts } from '../../src/calendar/kept-texts.ts';
import { addDays } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import type { GardenView } from '../../src/steward/doings/steward.ts';
import { feedTextOf } from '../../src/steward/feeds/feed-text.ts';
import { bedsTimes } from './large-garden.ts';
import { median } from './median.ts';

const PAIRS = 9;
const LARGE_BEDS = 50;
const LARGE_DAYS = 3 * 365;

/** Prints what rendering costs: the garden as it is before and after one task was moved. */
export function reportRendering(before: GardenView, after: GardenView): void {
  const { body } = feedTextOf(before);
  console.log(
    `The feed: ${count(body)} entries, ${Buffer.byteLength(body)} octets, ` +
      `${Math.round(Buffer.byteLength(body) / count(body))} an entry.`,
  );
  const anew: number[] = [];
  const ratios: number[] = [];
  for (let pair = 0; pair <= PAIRS; pair += 1) {
    // Plans of their own, as they come from the database: no text is shared, and none is known already.
    const kept = new KeptTexts();
    feedTextOf({ ...before, plan: structuredClone(before.plan) }, { kept });
    const moved = { ...after, plan: structuredClone(after.plan) };
    const ms = timed(() => feedTextOf(moved, { kept }));
    const bare = timed(() => bareFeed(after));
    if (pair === 0) continue;
    anew.push(ms);
    ratios.push(ms / bare);
  }
  console.log(
    `writing it again after one moved task, against all of it by bare ical-generator: ratio of times ` +
      `${median(ratios).toFixed(3)} (${median(anew).toFixed(1)} ms)`,
  );
}

/** Prints the same of a garden with many beds and a feed that reaches far. */
export function reportLargeFeed({ garden, climate, plan }: GardenView): void {
  const large = bedsTimes(garden, Math.ceil(LARGE_BEDS / garden.beds.length));
  const until = addDays(plan.today, LARGE_DAYS);
  const drafts = draftsOf({ garden: large, climate, today: plan.today, until });
  const { today, revisedAt: now, factsVersion } = plan;
  const wide = makePlan({ garden: large, drafts, today, now, factsVersion });
  const [kept, view] = [new KeptTexts(), { ...PLAIN_VIEW, shape: { ...PLAIN_VIEW.shape, daysAhead: LARGE_DAYS } }];
  const frame = { calendarName: 'Large', description: '', notice: { title: '', description: '' } };
  const write = () => gardenFeed(wide, garden.place.units, frame, { view, kept }).eventTexts.join('');
  const [first, again] = [timed(write), timed(write)];
  console.log(
    `${large.beds.length} beds, three years: ${count(write())} entries, ${Math.round(Buffer.byteLength(write()) / 1024)} KiB; ` +
      `written first in ${first.toFixed(0)} ms, again in ${again.toFixed(1)} ms`,
  );
}

/** Every property that the feed has, from texts already made. */
function bareFeed({ plan, garden }: GardenView): string {
  const calendar = ical({ name: garden.name, ttl: 6 * 3600 });
  for (const event of eventsOf(plan, garden)) {
    calendar.createEvent({
      id: event.uid,
      sequence: event.sequence,
      stamp: new Date(event.changedAt),
      created: new Date(event.createdAt),
      lastModified: new Date(event.changedAt),
      start: new Date(event.at?.from ?? event.day),
      allDay: event.at === undefined,
      summary: event.title,
      description: event.description,
      categories: event.categories.map((name) => ({ name })),
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  return calendar.toString();
}

const events = new WeakMap<Plan, ReturnType<typeof feedEventsOf>>();

function eventsOf(plan: Plan, { place }: GardenView['garden']) {
  const made = events.get(plan) ?? feedEventsOf(plan, place.units);
  events.set(plan, made);
  return made;
}

function count(text: string): number {
  return text.split('BEGIN:VEVENT').length - 1;
}

function timed(work: () => void): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}
