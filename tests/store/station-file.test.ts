import { expect, test } from 'vitest';
import { readStationTable } from '../../src/store/station-file.ts';

test('the built-in table is unpacked whole', async () => {
  const stations = await readStationTable();
  // NOAA 1981–2010 agricultural normals: 5,687 stations with freeze dates and twelve monthly means.
  expect(stations).toHaveLength(5_687);
  // As published for Milwaukee Mitchell Airport: half of years freeze last by 22 April and first by 23 October.
  const milwaukee = stations.find(({ id }) => id === 'USW00014839');
  expect(milwaukee).toMatchObject({ state: 'WI', lastSpringP50: '04-22', firstFallP50: '10-23' });
});

test('it is read only once', async () => {
  expect(await readStationTable()).toBe(await readStationTable());
});
