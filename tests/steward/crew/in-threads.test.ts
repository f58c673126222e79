import { describe, expect, it, onTestFinished } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { InputRefused } from '../../../src/garden/problem.ts';
import { createSteward } from '../../../src/steward/create-steward.ts';
import type { Crew } from '../../../src/steward/crew/crew.ts';
import { inThisThread } from '../../../src/steward/crew/crew.ts';
import { inThreads, type ThreadSettings } from '../../../src/steward/crew/in-threads.ts';
import type { Asked, Ground, WorkedOut } from '../../../src/steward/crew/work.ts';
import { layDemo } from '../../../src/steward/gardens/demo.ts';
import { openStore } from '../../../src/store/store.ts';
import { northernFile, southernFile } from '../gardens.ts';
import { household, MORNING } from '../household.ts';

/** A crew of real threads that break as their work is named. */
function frail(settings: ThreadSettings = {}): Crew {
  const crew = inThreads({ size: 1, file: new URL('./frail-thread.mjs', import.meta.url), ...settings });
  onTestFinished(() => crew.close());
  return crew;
}

const nothing = async (): Promise<Ground> => ({ record: undefined });

/** A promise that is kept from outside. */
function deferred<Value>() {
  let resolve = (_: Value): void => undefined;
  const promise = new Promise<Value>((kept) => {
    resolve = kept;
  });
  return { promise, resolve };
}

function given(crew: Crew, name: string, isWaitedFor = true, ground = nothing): Promise<WorkedOut> {
  const asked: Asked = { garden: {} as Garden, today: '2027-04-20', climateName: name };
  return crew.workOut(asked, { ground, urgency: { isWaitedFor } });
}

describe('plans made in a thread', () => {
  it('are those made beside the pages, byte for byte, through changes, looks and undoings, and so is all that is looked at', async () => {
    const crew = inThreads({ size: 1 });
    const told = async (by: Crew) => {
      const clock = { today: '2027-05-12', now: () => '2027-05-12T12:00:00.000Z' };
      const store = await openStore({ file: ':memory:' });
      const steward = createSteward({ store, clock, crew: by });
      onTestFinished(() => steward.close());
      const demo = await layDemo({ steward, clock });
      const north = (await steward.importGarden({ file: northernFile(), prefer: 'file' }, 'ada')).gardenId;
      const south = (await steward.importGarden({ file: southernFile(), prefer: 'file' }, 'ada')).gardenId;
      const [open] = (await steward.view(north)).plan.tasks.filter(({ state }) => state === 'open');
      const done = await steward.markDone(north, [open?.key ?? ''], clock.today, 'ada');
      const looked = await steward.previewUndo(north);
      const back = await steward.undo(north, undefined, 'ada');
      const views = await Promise.all([demo, north, south].map((id) => steward.view(id)));
      const [view] = views.slice(1);
      if (view === undefined) throw new Error('There is no garden in the north.');
      const season = Number(clock.today.slice(0, 4)) + 1;
      const bedId = view.garden.beds[0]?.id ?? '';
      const looks = await Promise.all([
        steward.seasonEnd(view),
        steward.bedGaps(view, bedId),
        steward.fertility(view),
        steward.cropChoices(view, { bedId, season }),
      ]);
      expect(looks.map((look) => JSON.stringify(look).length > 500)).toEqual([true, true, true, true]);
      return JSON.stringify([done, looked, back, views, looks]);
    };
    const [inThread, here] = [await told(crew), await told(inThisThread())];
    expect(inThread === here).toBe(true);
    expect(here.length).toBeGreaterThan(100_000);
  }, 60_000);

  it('are refused with every problem, as they are beside the pages', async () => {
    const { steward, store, clock, garden } = await household(northernFile(), MORNING);
    const { garden: told } = await steward.view(garden);
    const unknown = { ...told, climate: { kind: 'station' as const, station: 'NOWHERE' } };
    const refusedBy = (crew: Crew) => {
      const asked = { garden: unknown, today: '2027-04-20', climateName: 'nowhere', climate: true };
      return crew.workOut(asked, { ground: nothing, urgency: { isWaitedFor: true } }).catch((error) => error);
    };
    const crew = inThreads({ size: 1 });
    onTestFinished(() => crew.close());
    const [there, here] = [await refusedBy(crew), await refusedBy(inThisThread())];
    expect(there).toBeInstanceOf(InputRefused);
    expect([there.message, there.problems]).toEqual([here.message, here.problems]);
    expect(here.problems).toHaveLength(1);
    expect(clock.now()).toBe(MORNING);
    expect(await store.gardenIds()).toEqual([garden]);
  }, 60_000);
});

describe('a crew of threads', () => {
  it('does first what somebody waits for, also where that comes to be while it waits', async () => {
    const crew = frail();
    const order: string[] = [];
    const begun = deferred<void>();
    const ground = deferred<Ground>();
    const first = given(crew, 'wait', true, () => {
      begun.resolve();
      return ground.promise;
    });
    const later = { isWaitedFor: false };
    const asked: Asked = { garden: {} as Garden, today: '2027-04-20', climateName: 'c' };
    const works = [
      given(crew, 'a', false).then(() => order.push('a')),
      given(crew, 'b', true).then(() => order.push('b')),
      crew.workOut(asked, { ground: nothing, urgency: later }).then(() => order.push('c')),
    ];
    later.isWaitedFor = true;
    await begun.promise;
    ground.resolve({ record: undefined });
    await Promise.all([first, ...works]);
    expect(order).toEqual(['b', 'c', 'a']);
  });

  it('begins a work once more when its thread breaks, and goes on with the next', async () => {
    const crew = frail();
    const grounds = ['end', undefined];
    const broken = given(crew, 'wait', true, async () => ({ record: grounds.shift() }) as unknown as Ground);
    expect(await broken).toEqual({});
    expect(grounds).toEqual([]);
  });

  it('says so where a thread breaks off twice, and is there for other work', async () => {
    const crew = frail();
    await expect(given(crew, 'end')).rejects.toThrow('broke off twice');
    expect(await given(crew, 'a')).toEqual({});
  });

  it('takes a thread that never ends for hung', async () => {
    const crew = frail({ hungMs: 50 });
    await expect(given(crew, 'hang')).rejects.toThrow('broke off twice');
    expect(await given(frail(), 'a')).toEqual({});
  });

  it('refuses more than may wait', async () => {
    const crew = frail({ waitingMost: 2 });
    const works = ['hang', 'a', 'b'].map((name) => given(crew, name).catch(String));
    await expect(given(crew, 'c')).rejects.toThrow('2 works are waiting already');
    await crew.close();
    expect(await Promise.all(works)).toEqual(
      Array(3).fill('Error: The program is closing: nothing more is worked out.'),
    );
  });

  it('gives up what is not done when it is closed, and takes nothing more', async () => {
    const crew = frail();
    const work = given(crew, 'hang');
    await Promise.all([expect(work).rejects.toThrow('is closing'), crew.close()]);
    await expect(given(crew, 'a')).rejects.toThrow('is closing');
  });
});
