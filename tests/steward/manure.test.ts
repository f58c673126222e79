import { expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { northernFile } from './gardens.ts';
import { household } from './household.ts';

it('a layer of dung compost marked done remembers its pile, and the sowing is warned from that day', async () => {
  const ingredients = [{ material: 'horse_manure_bedded', litres: 700 }];
  const file = northernFile({
    plantings: [{ id: 'carrots', bed: 'south', crop: 'carrot', sow: '2027-05-10' }],
    coverStands: [],
    piles: [{ id: 'dung', bin: 'left', built: '2026-04-04', method: 'cold', ingredients, finished: '2027-04-01' }],
    topdressing: { depthMm: 13, season: 'spring' },
  });
  const { steward, garden } = await household(file);
  await steward.markDone(garden, ['topdress/bed:south/2027'], '2027-04-18', 'ada');
  const view = await steward.view(garden);
  expect(view.garden.topdressed).toEqual([{ bedId: 'south', on: '2027-04-18', litres: 47, pileIds: ['dung'] }]);
  expect(gardenFileOf(view.garden).topdressed[0]?.piles).toEqual(['dung']);
  const sowing = view.plan.tasks.find(({ key }) => key === 'sow/planting:carrots');
  const said = (sowing?.cautions ?? []).map((text) => readableIn('metric', text, '2026-12-31')).join(' ');
  // 120 days from 18 April; carrots are 70 days on their way from 10 May.
  expect(said).toContain('was spread on south bed on 18 April 2027. Harvest no carrot there before 16 August 2027');
  expect(said).toContain('the first may be ripe from 19 July 2027');
});
