import { describe, expect, it } from 'vitest';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import { newMemberId } from '../../src/garden/member-ids.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import type { Report } from '../../src/steward/doings/steward.ts';
import { feedsOf } from '../../src/web/household/feeds-of-member.ts';
import { seenByIcalJs } from '../calendar/read-feed.ts';
import { northernFile } from './gardens.ts';
import { type Household, household, later } from './household.ts';

const file = northernFile({
  household: { people: 2, members: [{ name: 'Ida', practices: ['composting'] }, { name: 'Jonas' }] },
});
const ofIda = { ...PLAIN_SHAPE, person: 'Ida' };

function coverWork(plan: Plan) {
  const entry = plan.entries.find(({ practice, state }) => practice === 'cover-cropping' && state === 'open');
  const task = plan.tasks.find(({ key }) => key === entry?.keys[0]);
  if (entry === undefined || task === undefined) throw new Error('the garden has a cover to see to');
  return { entry, task };
}

function given(to: string | undefined, { key, title }: { key: string; title: string }): Report {
  return { kind: 'task-assigned', tasks: [{ key, title }], ...(to === undefined ? {} : { to }) };
}

async function bodyOf({ steward }: Household, token: string) {
  const feed = await steward.feedBody(token);
  if (feed === undefined) throw new Error('the feed is open');
  return { ...feed, events: new Map(seenByIcalJs(feed.body).map((event) => [event.uid, event])) };
}

describe('a task given to a member', () => {
  it('enters their feed whatever they see to, leaves the others’, and no other entry is revised', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const [idas, jonas, all] = [
      await steward.addFeed(garden, 'Ida', ofIda),
      await steward.addFeed(garden, 'Jonas', { ...PLAIN_SHAPE, person: 'Jonas' }),
      await steward.addFeed(garden, 'Everything'),
    ];
    const before = await bodyOf(house, idas.token);
    const jonasBefore = await bodyOf(house, jonas.token);
    const { entry, task } = coverWork((await steward.view(garden)).plan);
    later(clock);
    await steward.report(garden, given('Ida', task), 'ada');
    const [now, jonasNow, allNow] = [
      await bodyOf(house, idas.token),
      await bodyOf(house, jonas.token),
      await bodyOf(house, all.token),
    ];
    const entered = [...now.events.keys()].filter((uid) => !before.events.has(uid));
    expect(entered).toHaveLength(1);
    const [uid = ''] = entered;
    expect(now.events.get(uid)?.sequence).toBe(entry.sequence + 1);
    expect(allNow.events.get(uid)?.description).toMatch(/for Ida\./i);
    for (const [id, event] of before.events) expect(now.events.get(id)).toEqual(event);
    if (entry.keys.length === 1) expect(jonasNow.events.has(uid)).toBe(false);
    expect(jonasBefore.events.has(uid)).toBe(true);
    for (const feed of [now, jonasNow]) expect(feed.changedAt).toBe(clock.moment);
    expect(now.etag).not.toBe(before.etag);
  });

  it('comes back to the others at a later revision when it is taken back', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const jonas = await steward.addFeed(garden, 'Jonas', { ...PLAIN_SHAPE, person: 'Jonas' });
    const before = await bodyOf(house, jonas.token);
    const { entry, task } = coverWork((await steward.view(garden)).plan);
    later(clock);
    await steward.report(garden, given('Ida', task), 'ada');
    later(clock);
    const plan = await steward.undo(garden, undefined, 'ada');
    expect(plan.entries.find(({ lotId }) => lotId === entry.lotId)?.sequence).toBe(entry.sequence + 2);
    const after = await bodyOf(house, jonas.token);
    expect([...after.events.keys()]).toEqual([...before.events.keys()]);
  });

  it('is a later revision of its day, in feeds of one entry a day', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const { token } = await steward.addFeed(garden, 'Jonas', { ...PLAIN_SHAPE, person: 'Jonas', by: 'day' });
    const before = await bodyOf(house, token);
    const { entry, task } = coverWork((await steward.view(garden)).plan);
    later(clock);
    await steward.report(garden, given('Ida', task), 'ada');
    const after = await bodyOf(house, token);
    for (const [uid, event] of after.events) {
      const was = before.events.get(uid);
      if (was === undefined || JSON.stringify(was) === JSON.stringify(event)) continue;
      expect([event.day, event.sequence]).toEqual([entry.day, expect.any(Number)]);
      expect(event.sequence).toBeGreaterThan(was.sequence);
    }
    expect(after.etag).not.toBe(before.etag);
  });

  it('is refused for somebody nobody knows, and for work that is done', async () => {
    const { steward, garden } = await household(file);
    const { task } = coverWork((await steward.view(garden)).plan);
    await expect(steward.report(garden, given('Idda', task), 'ada')).rejects.toThrow(InputRefused);
    await steward.skip(garden, [task.key], 'ada');
    await expect(steward.report(garden, given('Ida', task), 'ada')).rejects.toThrow(InputRefused);
  });
});

describe('a feed of somebody who left', () => {
  const leaves = { kind: 'member-gone', id: 'ida', name: 'Ida' } as const;
  const namesake = { kind: 'member-kept', member: { id: 'ida-2', name: 'Ida', practices: ['composting'] } } as const;

  it('never comes to a namesake who joins later, and is theirs again when their leaving is taken back', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const { token } = await steward.addFeed(garden, 'Ida', ofIda);
    await steward.addFeed(garden, 'All', { ...PLAIN_SHAPE, reader: 'Ida' });
    const before = [...(await bodyOf(house, token)).events.keys()];
    expect(before.length).toBeGreaterThan(1);
    later(clock);
    await steward.report(garden, leaves, 'ada');
    later(clock);
    await steward.report(garden, namesake, 'ada');
    expect((await bodyOf(house, token)).body).toContain('no longer in the household');
    const feeds = await steward.feeds(garden);
    expect([feedsOf(feeds, { id: 'ida-2', name: 'Ida' }), feedsOf(feeds, { id: 'ida', name: 'Ida' }).length]).toEqual([
      [],
      2,
    ]);
    const theirs = await steward.addFeed(garden, 'The other Ida', ofIda);
    expect([...(await bodyOf(house, theirs.token)).events.keys()].length).toBe(before.length);
    later(clock);
    await steward.undo(garden, 3, 'ada');
    await steward.undo(garden, 2, 'ada');
    expect([...(await bodyOf(house, token)).events.keys()]).toEqual(before);
    expect((await bodyOf(house, theirs.token)).body).toContain('no longer in the household');
  });

  it('kept by a name alone when they had left already stays of nobody, whoever joins by that name', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const { token } = await steward.addFeed(garden, 'Zoe', { ...PLAIN_SHAPE, person: 'Zoe' });
    later(clock);
    const zoe = { id: 'zoe', name: 'Zoe', practices: ['composting' as const] };
    await steward.report(garden, { kind: 'member-kept', member: zoe }, 'ada');
    expect((await bodyOf(house, token)).body).toContain('Zoe is no longer in the household');
  });
});

describe('a member who gets another name', () => {
  it('keeps their feed and its entries as they are, and has it back when the name is taken back', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const { token } = await steward.addFeed(garden, 'Ida', ofIda);
    const before = await bodyOf(house, token);
    later(clock);
    const member = { id: 'ida', name: 'Ida Holm', practices: ['composting' as const] };
    await steward.report(garden, { kind: 'member-kept', member, formerName: 'Ida' }, 'ada');
    expect((await steward.feeds(garden))[0]?.shape.person).toBe('Ida Holm');
    expect((await bodyOf(house, token)).events).toEqual(before.events);
    await steward.undo(garden, undefined, 'ada');
    expect((await steward.feeds(garden))[0]).toMatchObject({ shape: { person: 'Ida' }, shapeRevision: 0 });
  });

  it('cannot take that of another', async () => {
    const { steward, garden } = await household(file);
    const report: Report = { kind: 'member-kept', member: { id: 'ida', name: 'Jonas' }, formerName: 'Ida' };
    await expect(steward.report(garden, report, 'ada')).rejects.toThrow(InputRefused);
  });
});

describe('a name that somebody else has by now', () => {
  it('does not come back to whoever had it, be it by a renaming or a leaving taken back', async () => {
    const { steward, garden } = await household(file);
    const ida = { id: 'ida', name: 'Ida Holm' };
    const newcomer = { id: 'ida-2', name: 'Ida' };
    const names = async () => (await steward.view(garden)).garden.household?.members?.map(({ name }) => name);
    await steward.report(garden, { kind: 'member-kept', member: ida, formerName: 'Ida' }, 'ada');
    await steward.report(garden, { kind: 'member-kept', member: newcomer }, 'ada');
    await expect(steward.undo(garden, 2, 'ada')).rejects.toThrow('"Ida" is somebody else now.');
    await steward.report(garden, { kind: 'member-gone', id: 'jonas', name: 'Jonas' }, 'ada');
    await steward.report(garden, { kind: 'member-kept', member: { ...newcomer, name: 'Jonas' } }, 'ada');
    await expect(steward.undo(garden, 4, 'ada')).rejects.toThrow('"Jonas" is somebody else now.');
    expect(await names()).toEqual(['Ida Holm', 'Jonas']);
    await steward.undo(garden, 2, 'ada');
    expect(await names()).toEqual(['Ida', 'Jonas']);
  });

  it('is theirs under an id that nobody had', async () => {
    const { steward, garden } = await household(file);
    await steward.report(garden, { kind: 'member-gone', id: 'ida', name: 'Ida' }, 'ada');
    const again: Report = { kind: 'member-kept', member: { id: 'ida', name: 'Ida' } };
    await expect(steward.report(garden, again, 'ada')).rejects.toThrow(InputRefused);
    expect(newMemberId((await steward.view(garden)).ledger, 'Ida')).toBe('ida-2');
  });
});

describe('a member who gets mail', () => {
  it('has a feed that is no other for it', async () => {
    const house = await household(file);
    const { steward, garden, clock } = house;
    const { token } = await steward.addFeed(garden, 'Ida', ofIda);
    const before = await bodyOf(house, token);
    later(clock);
    const mail = { to: 'ida@example.org', weekday: 7, hour: 18, tasks: 'own' } as const;
    const member = { id: 'ida', name: 'Ida', practices: ['composting' as const], mail };
    await steward.report(garden, { kind: 'member-kept', member }, 'ada');
    expect((await bodyOf(house, token)).etag).toBe(before.etag);
    expect((await steward.view(garden)).garden.household?.members?.[0]).toEqual(member);
  });
});
