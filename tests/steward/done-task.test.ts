import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import type { Change, PlannedTask } from '../../src/schedule/plan.ts';
import { doneTask, skippedTask } from '../../src/steward/facts/done-task.ts';
import { household, openTask } from './household.ts';

const task = {
  key: 'turn',
  day: '2027-04-24',
  state: 'open',
  window: { earliest: '2027-04-12', preferred: '2027-04-17', latest: '2027-04-30' },
  subject: { type: 'garden', id: 'g', name: 'G' },
  makes: [],
  reasons: [{ rule: 'pile-turn.every', saw: { days: 7 }, source: 'common practice' }],
} as unknown as PlannedTask;

const change = (at: string, told: Partial<Change>): Change =>
  ({ key: 'turn', title: '', because: [], at: `${at}T05:00:00.000Z`, on: at, ...told }) as Change;

const plannedFor = (on: string, changes: Change[], state: PlannedTask['state'] = 'open') =>
  doneTask({ ...task, state }, [], { on, changes }).plannedFor;

describe('the day a done task was planned on', () => {
  it('is the day it stands on, where nothing moved it', () => {
    expect(plannedFor('2027-04-20', [])).toBe('2027-04-24');
  });

  it('is the day it stood on then, where the plan has moved it on since', () => {
    const twice = [
      change('2027-04-21', { kind: 'moved', from: '2027-04-20', to: '2027-04-24' }),
      change('2027-04-18', { kind: 'moved', from: '2027-04-17', to: '2027-04-20' }),
    ];
    expect(plannedFor('2027-04-17', twice)).toBe('2027-04-17');
    expect(plannedFor('2027-04-18', twice)).toBe('2027-04-17');
    expect(plannedFor('2027-04-19', twice)).toBe('2027-04-20');
    expect(plannedFor('2027-04-22', twice)).toBe('2027-04-24');
  });

  it('is not made up: nothing for work that came into the plan later, or whose window had closed', () => {
    expect(plannedFor('2027-04-17', [change('2027-04-19', { kind: 'added', to: '2027-04-24' })])).toBeUndefined();
    expect(plannedFor('2027-05-04', [], 'lapsed')).toBeUndefined();
    const late = doneTask({ ...task, state: 'lapsed' }, [], { on: '2027-05-04', changes: [] });
    expect(late).toMatchObject({ lastDay: '2027-04-30', because: task.reasons });
  });

  it('is counted in days of the garden, whatever the day of Greenwich', () => {
    // Auckland is 12 h ahead in April 2027 (daylight saving ends on the first Sunday, 4 April): its 18th begins at noon of the 17th.
    const moved = { kind: 'moved', from: '2027-04-17', to: '2027-04-21' } as const;
    const inAuckland = [change('2027-04-18', { ...moved, at: '2027-04-17T18:00:00.000Z' })];
    expect(plannedFor('2027-04-17', inAuckland)).toBe('2027-04-17');
    expect(plannedFor('2027-04-18', inAuckland)).toBe('2027-04-17');
    expect(plannedFor('2027-04-19', inAuckland)).toBe('2027-04-24');
    // Honolulu is 10 h behind: its evening of the 17th is the 18th in Greenwich.
    const inHonolulu = [change('2027-04-17', { ...moved, at: '2027-04-18T06:00:00.000Z' })];
    expect(plannedFor('2027-04-18', inHonolulu)).toBe('2027-04-24');
  });

  it('is that of the morning where it was moved later on the day itself, or dropped', () => {
    const moved = { kind: 'moved', from: '2027-04-17', to: '2027-04-24', at: '2027-04-17T15:00:00.000Z' } as const;
    expect(plannedFor('2027-04-17', [change('2027-04-17', moved)])).toBe('2027-04-17');
    expect(plannedFor('2027-04-17', [change('2027-04-18', { kind: 'dropped', from: '2027-04-17' })])).toBe(
      '2027-04-17',
    );
  });

  it('is the day it came in for, where it came into the plan on the day it was done', () => {
    expect(plannedFor('2027-04-17', [change('2027-04-17', { kind: 'added', to: '2027-04-18' })])).toBe('2027-04-18');
  });

  it('is read from changes of before their own day was kept by the day of their moment', () => {
    const { on: _on, ...old } = change('2027-04-21', { kind: 'moved', from: '2027-04-20', to: '2027-04-24' });
    expect(plannedFor('2027-04-20', [old])).toBe('2027-04-20');
  });

  it('keeps its minutes, and the part of them that is spent once', () => {
    const spent = { ...task, effortMinutes: 50, onceMinutes: 40 };
    expect(doneTask(spent, [], { on: '2027-04-20', changes: [] })).toMatchObject({
      effortMinutes: 50,
      onceMinutes: 40,
    });
    expect(doneTask(task, [], { on: '2027-04-20', changes: [] })).not.toHaveProperty('onceMinutes');
  });

  it('heeds neither another task nor another wording', () => {
    const others = [
      change('2027-04-21', { kind: 'reworded', to: '2027-04-24' }),
      change('2027-04-21', { key: 'sow', kind: 'moved', from: '2027-04-01', to: '2027-04-24' }),
    ];
    expect(plannedFor('2027-04-17', others)).toBe('2027-04-24');
  });
});

it('a skipped task is kept with what it was about', () => {
  expect(skippedTask(task)).toMatchObject({
    key: 'turn',
    subject: task.subject,
    plannedFor: '2027-04-24',
    because: task.reasons,
  });
  expect(skippedTask({ ...task, state: 'lapsed' })).not.toHaveProperty('plannedFor');
});

it('the ledger keeps the planned day beside the day it was done, marked days later', async () => {
  const { steward, garden, clock } = await household();
  const cut = openTask((await steward.view(garden)).plan, 'cut-cover');
  clock.moment = `${addDays(cut.day, 2)}T13:00:00.000Z`;
  await steward.markDone(garden, [cut.key], cut.day, 'ada');
  const { ledger } = await steward.view(garden);
  const fact = ledger.at(-1)?.fact;
  expect(fact?.kind === 'tasks-done' && fact.tasks[0]).toMatchObject({
    plannedFor: cut.day,
    lastDay: cut.window.latest,
  });
});
