import { describe, expect, it } from 'vitest';
import type { DiseaseFound } from '../../../src/garden/garden.ts';
import { cover, draftsIn, frostDates, garden, setOut, sown } from '../gardens.ts';

const rootRot: DiseaseFound = { bedId: 'a', cropId: 'snap-bean', disease: 'root rot', on: '2027-07-20' };
const clubroot: DiseaseFound = { bedId: 'a', cropId: 'cabbage', disease: 'clubroot', on: '2027-07-20' };

function covers(parts: Parameters<typeof garden>[0]) {
  return draftsIn(garden({ startedOn: '2027-07-01', ...parts })).filter(
    ({ practice }) => practice === 'cover-cropping',
  );
}

const titles = (parts: Parameters<typeof garden>[0]) => covers(parts).map(({ title }) => title);

describe('a cover that carries what was found in its bed', () => {
  const stands = [cover('mustard', '2027-08-20', { id: 'm' })];

  it('is neither ordered, sown, looked at nor cut', () => {
    expect(titles({ stands }).filter((title) => title.includes('mustard')).length).toBeGreaterThan(2);
    expect(titles({ stands, diseases: [clubroot] }).filter((title) => title.includes('mustard'))).toEqual([]);
  });

  it('leaves its span to another kind', () => {
    const sowing = covers({ stands, diseases: [clubroot] }).filter(({ kind }) => kind === 'sow-cover');
    expect(sowing.map(({ title }) => title)).toEqual(['Sow buckwheat in Bed A']);
  });

  it('is sown again once the years are over', () => {
    const long = { ...clubroot, on: '2020-08-20' };
    expect(titles({ stands, diseases: [long] })).toEqual(titles({ stands }));
  });

  it('that stands already keeps its tasks', () => {
    const standing = [cover('mustard', '2027-06-20', { id: 'm' })];
    expect(titles({ stands: standing, diseases: [clubroot] })).toEqual(titles({ stands: standing }));
  });
});

describe('a suggestion', () => {
  const plantings = [
    setOut('cabbage', '2027-05-01', { harvested: '2027-08-10' }),
    sown('carrot', '2028-04-20', { harvested: '2028-08-01' }),
  ];

  it('of oats with peas becomes barley where a root rot of beans was found', () => {
    const climate = frostDates('04-28', '10-30');
    const sown = (diseases: DiseaseFound[]) =>
      draftsIn(garden({ startedOn: '2027-07-01', place: { hardinessZone: '5b' }, plantings, diseases }), climate)
        .filter(({ kind }) => kind === 'sow-cover')
        .map(({ subject }) => ('grows' in subject ? subject.grows : ''));
    expect(sown([])[0]).toBe('oats with field pea');
    expect(sown([rootRot])[0]).toBe('spring barley');
  });
});
