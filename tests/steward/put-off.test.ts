import { describe, expect, test } from 'vitest';
import { InputRefused } from '../../src/garden/problem.ts';
import { addDays } from '../../src/measures/days.ts';
import { NORTH_TODAY } from './gardens.ts';
import { household, openTask } from './household.ts';

async function problemsOf(work: Promise<unknown>) {
  const error = await work.then(
    () => undefined,
    (fault: unknown) => fault,
  );
  return error instanceof InputRefused ? error.problems : error;
}

describe('putting off', () => {
  test('keeps the tasks off their day, and is told in the ledger as one entry', async () => {
    const { steward, garden } = await household();
    const task = openTask((await steward.view(garden)).plan, 'cut-cover');
    const plan = await steward.putOff(garden, [task.key], task.day, 'Ada');
    const after = plan.tasks.find(({ key }) => key === task.key);
    expect(after?.day && after.day > task.day).toBe(true);
    expect(after?.window.earliest).toBe(addDays(task.day, 1));
    const { ledger } = await steward.view(garden);
    const tasks = [{ key: task.key, title: task.title }];
    expect(ledger.at(-1)).toMatchObject({ by: 'Ada', fact: { kind: 'put-off', on: task.day, tasks } });
  });

  test('as far as it was put off before says nothing new', async () => {
    const { steward, garden } = await household();
    const { key, day } = openTask((await steward.view(garden)).plan, 'cut-cover');
    await steward.putOff(garden, [key], day, 'Ada');
    const { length } = (await steward.view(garden)).ledger;
    await steward.putOff(garden, [key], day, 'Bo');
    expect((await steward.view(garden)).ledger).toHaveLength(length);
  });

  test('to its last day says that it cannot wait, and what is lost', async () => {
    const { steward, garden } = await household();
    const { key, window, missedNote } = openTask((await steward.view(garden)).plan, 'cut-cover');
    const problems = await problemsOf(steward.putOff(garden, [key], window.latest, 'Ada'));
    expect(problems).toMatchObject([{ mend: 'Say that it is done, or skip it.' }]);
    const [{ what } = { what: '' }] = problems as { what: string }[];
    expect(what).toMatch(/^It cannot wait: its last day is \w+ \d+\./);
    expect(missedNote).not.toBe('');
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });

  test.each(['2027-02-30', addDays(NORTH_TODAY, -1), addDays(NORTH_TODAY, 400), ''])(
    'past "%s" is refused',
    async (day) => {
      const { steward, garden } = await household();
      const { key } = openTask((await steward.view(garden)).plan, 'cut-cover');
      expect(await problemsOf(steward.putOff(garden, [key], day, 'Ada'))).toMatchObject([
        { what: `"${day}" cannot be used.` },
      ]);
    },
  );

  test('takes off a pin on a day up to it, and a pin told later counts again', async () => {
    const { steward, garden } = await household();
    const { key, window } = openTask((await steward.view(garden)).plan, 'cut-cover');
    const pinned = addDays(window.earliest, 8);
    await steward.pin(garden, key, pinned, 'Ada');
    await steward.putOff(garden, [key], pinned, 'Ada');
    const off = (await steward.view(garden)).garden;
    expect([off.pins, off.putOff]).toEqual([{}, { [key]: pinned }]);
    await steward.pin(garden, key, addDays(pinned, -1), 'Ada');
    const again = (await steward.view(garden)).garden;
    expect([again.pins, again.putOff]).toEqual([{ [key]: addDays(pinned, -1) }, {}]);
  });

  test('of work that is done, or not in the plan, is refused', async () => {
    const { steward, garden } = await household();
    const { key, day } = openTask((await steward.view(garden)).plan, 'turn-pile');
    await steward.markDone(garden, [key], NORTH_TODAY, 'Ada');
    expect(await problemsOf(steward.putOff(garden, [key], day, 'Ada'))).toMatchObject([{ what: 'is done already.' }]);
    expect(await problemsOf(steward.putOff(garden, ['nothing'], day, 'Ada'))).toMatchObject([
      { what: 'is not in the plan.' },
    ]);
  });

  test('is no part of the garden file, and stays when a new one is brought in', async () => {
    const { steward, garden } = await household();
    const { key, day } = openTask((await steward.view(garden)).plan, 'cut-cover');
    await steward.putOff(garden, [key], day, 'Ada');
    await steward.importGarden({ file: await steward.importedFile(garden), prefer: 'file' }, 'Ada');
    expect((await steward.view(garden)).garden.putOff).toEqual({ [key]: day });
  });
});
