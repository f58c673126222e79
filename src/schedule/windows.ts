/**
 * Windows made to agree with the order of work: nothing opens before what it waits for, nothing closes so late that
 * what waits for it is lost.
 */
import { addDays, type Day, earliestOf, latestOf } from '../measures/days.ts';
import type { TaskDraft, TaskKey } from '../practices/draft.ts';
import { type Household, homeSpan } from './work-days.ts';

/** The days a task may fall on, both included. */
export interface OrderedWindow {
  earliest: Day;
  latest: Day;
}

/**
 * The windows of drafts held to their `after`. A window that the order would close altogether keeps its own ends.
 *
 * @param drafts drafts with unique keys; `after` keys that are not among them hold nothing up
 * @param spanOf the days a draft may fall on before the order is looked at; its own window unless said otherwise
 * @throws {RangeError} when tasks wait for each other in a ring
 */
export function orderedWindows(
  drafts: readonly TaskDraft[],
  spanOf: (draft: TaskDraft) => OrderedWindow = ({ window }) => window,
): Map<TaskKey, OrderedWindow> {
  const byKey = new Map(drafts.map((draft) => [draft.key, draft]));
  const order = inOrder(drafts, byKey);
  const windows = new Map<TaskKey, OrderedWindow>();
  for (const draft of order) windows.set(draft.key, openedLate(draft, spanOf(draft), windows));
  for (const draft of [...order].reverse()) closeEarly(draft, windows);
  return windows;
}

/** A window without the days away at its ends, where somebody is at home on any of its days. */
export function atHome({ earliest, latest }: OrderedWindow, { away }: Pick<Household, 'away'>): OrderedWindow {
  const { from, to } = homeSpan({ from: earliest, to: latest }, away);
  return { earliest: from, latest: to };
}

/** The days from today on that a draft may fall on: its pin, else those of its window without times away at its ends. */
export function daysLeft(
  window: OrderedWindow,
  pin: Day | undefined,
  { today, away }: Pick<Household, 'away'> & { today: Day },
): OrderedWindow {
  if (pin !== undefined) return { earliest: pin, latest: pin };
  return atHome({ earliest: latestOf(window.earliest, today), latest: window.latest }, { away });
}

/** Drafts so that each comes after all it waits for. */
function inOrder(drafts: readonly TaskDraft[], byKey: ReadonlyMap<TaskKey, TaskDraft>): TaskDraft[] {
  const placed = new Map<TaskKey, 'being placed' | 'placed'>();
  const order: TaskDraft[] = [];
  const visit = (draft: TaskDraft): void => {
    if (placed.get(draft.key) === 'placed') return;
    if (placed.has(draft.key)) throw new RangeError(`Task "${draft.key}" waits for itself through its "after".`);
    placed.set(draft.key, 'being placed');
    for (const { key } of draft.after) {
      const before = byKey.get(key);
      if (before) visit(before);
    }
    placed.set(draft.key, 'placed');
    order.push(draft);
  };
  for (const draft of [...drafts].sort((a, b) => (a.key < b.key ? -1 : 1))) visit(draft);
  return order;
}

function openedLate(
  draft: TaskDraft,
  span: OrderedWindow,
  windows: ReadonlyMap<TaskKey, OrderedWindow>,
): OrderedWindow {
  let { earliest } = span;
  for (const { key, minDays, yields } of draft.after) {
    const before = yields ? undefined : windows.get(key);
    if (before !== undefined) earliest = latestOf(earliest, addDays(before.earliest, minDays));
  }
  return { earliest: earliestOf(earliest, span.latest), latest: span.latest };
}

function closeEarly(draft: TaskDraft, windows: Map<TaskKey, OrderedWindow>): void {
  const own = windows.get(draft.key);
  if (own === undefined) return;
  for (const { key, minDays, yields } of draft.after) {
    const before = yields ? undefined : windows.get(key);
    if (before === undefined) continue;
    const close = earliestOf(before.latest, addDays(own.latest, -minDays));
    if (close >= before.earliest) before.latest = close;
  }
}
