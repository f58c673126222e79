import { expect, test } from 'vitest';
import { projectGarden } from '../../../src/garden/project.ts';
import { checkGardenFile } from '../../../src/garden/read-garden-file.ts';
import { noClimates, workOut } from '../../../src/steward/crew/work.ts';
import { sampleFile } from '../../web/sample-garden.ts';

const TODAY = '2027-04-20';

/** The sample garden with a change in its file, made anew each time. */
function garden(change: Record<string, unknown> = {}) {
  const fact = { kind: 'garden-imported' as const, file: checkGardenFile(sampleFile(change)), prefer: 'file' as const };
  const made = projectGarden([{ entry: 1, recordedAt: `${TODAY}T12:00:00.000Z`, recordedOn: TODAY, by: 'test', fact }]);
  if (made === undefined) throw new Error('The sample file makes no garden.');
  return made;
}

async function planOf(made: ReturnType<typeof garden>, today = TODAY) {
  const plan = { now: `${TODAY}T12:00:00.000Z`, factsVersion: 1, published: undefined };
  const room = { climates: noClimates(), ground: async () => ({ record: undefined }) };
  const done = await workOut({ garden: made, today, climateName: 'its own', plan }, room);
  return JSON.stringify(done.plan);
}

test('the same facts on the same day make the same plan again, byte for byte, with others planned in between', async () => {
  const first = await planOf(garden());
  expect(await planOf(garden({ topdressing: { depthMm: 25, season: 'autumn' } }))).not.toBe(first);
  expect(await planOf(garden(), '2027-04-21')).not.toBe(first);
  expect(await planOf(garden())).toBe(first);
  expect(await planOf(garden())).toBe(first);
});
