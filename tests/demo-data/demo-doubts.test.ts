import { expect, it } from 'vitest';
import { demoGardenFile } from '../../demo-data/demo-garden.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { doubtsOf } from '../../src/steward/doubts/doubts.ts';
import { samplePlan } from '../web/sample-plan.ts';
import { ANCHORS, demoClimate, demoGarden } from './demo-season.ts';

it.each(ANCHORS)('nothing is doubted of the demo garden laid on %s', (anchor) => {
  const plan = { ...samplePlan([]), today: anchor };
  const view = { garden: demoGarden(anchor), climate: demoClimate, plan, ledger: [] };
  expect(doubtsOf(checkGardenFile(demoGardenFile(anchor)), view)).toEqual([]);
});
