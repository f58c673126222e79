import { describe, expect, it } from 'vitest';
import type { Climate } from '../../src/climate/climate.ts';
import type { Garden } from '../../src/garden/garden.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { bed, cover, draftsIn, frostDates, garden, milwaukee, setOut, sown } from './gardens.ts';

/** The drafts of a garden by key. */
function tasks(parts: Parameters<typeof garden>[0], climate: Climate = milwaukee): Map<string, TaskDraft> {
  const told: Garden = garden(parts);
  return new Map(draftsIn(told, climate).map((draft) => [draft.key, draft]));
}

const waits = (found: Map<string, TaskDraft>, key: string) => found.get(key)?.after.map(({ key: before }) => before);

/** Whether a task waits for another, at once or by way of those between them. */
function follows(found: Map<string, TaskDraft>, later: string, sooner: string): boolean {
  const before = waits(found, later) ?? [];
  return before.includes(sooner) || before.some((key) => found.has(key) && follows(found, key, sooner));
}

const autumn = { topdressing: { depthMm: 13, season: 'autumn' as const } };
const spring = { topdressing: { depthMm: 13, season: 'spring' as const } };

describe('a changeover goes in order', () => {
  it('clear, compost, cover', () => {
    const tomato = setOut('tomato', '2027-06-01', { id: 'tomato', harvested: '2027-09-20' });
    const found = tasks({ plantings: [tomato], stands: [cover('cereal_rye', '2027-09-28')], ...autumn });
    expect(waits(found, 'topdress/bed:a/2028/before-winter')).toContain('bed-clear/planting:tomato');
    expect(waits(found, 'cover-sow/stand:s')).toEqual(
      expect.arrayContaining(['bed-clear/planting:tomato', 'topdress/bed:a/2028/before-winter']),
    );
  });

  it('clear, compost, mulch, where no cover is sown in time', () => {
    const tomato = setOut('tomato', '2027-06-01', { id: 'tomato', harvested: '2027-10-25' });
    const found = tasks({ plantings: [tomato], ...autumn });
    const mulch = [...found.keys()].find((key) => /^mulch-bare|^cover-sow/.test(key)) ?? '';
    expect(follows(found, mulch, 'bed-clear/planting:tomato')).toBe(true);
    expect(follows(found, mulch, 'topdress/bed:a/2028/before-winter')).toBe(true);
  });

  it('clear, compost, next crop, where that goes in in autumn and is no garlic', () => {
    const plantings = [
      sown('snap-bean', '2027-05-25', { id: 'beans', harvested: '2027-08-30' }),
      sown('spinach', '2027-09-12', { id: 'spinach' }),
    ];
    const found = tasks({ plantings, ...autumn });
    expect(found.has('topdress/bed:a/2028/before-winter')).toBe(true);
    expect(waits(found, 'sow/planting:spinach')).toEqual([
      'bed-clear/planting:beans',
      'topdress/bed:a/2028/before-winter',
    ]);
    expect(waits(found, 'topdress/bed:a/2028/before-winter')).toContain('bed-clear/planting:beans');
  });

  it('and a crop of midsummer does not wait for the compost of the autumn after it', () => {
    const plantings = [
      sown('pea', '2027-04-10', { id: 'peas', harvested: '2027-07-01' }),
      sown('snap-bean', '2027-07-10', { id: 'beans', harvested: '2027-09-15' }),
    ];
    const found = tasks({ plantings, ...autumn });
    expect(waits(found, 'sow/planting:beans')).toEqual(['bed-clear/planting:peas']);
    expect(waits(found, 'topdress/bed:a/2028/before-winter')).toContain('bed-clear/planting:beans');
  });

  it('clear, then compost, where the compost goes on in spring and roots are lifted after winter', () => {
    const plantings = [
      sown('parsnip', '2027-05-01', { id: 'parsnips', harvested: '2028-03-25' }),
      sown('sweet-corn', '2028-05-25', { id: 'corn' }),
    ];
    const found = tasks({ plantings, startedOn: '2027-10-01', ...spring });
    expect(waits(found, 'topdress/bed:a/2028')).toContain('bed-clear/planting:parsnips');
    expect(follows(found, 'sow/planting:corn', 'bed-clear/planting:parsnips')).toBe(true);
  });

  it('on one day, where the next crop goes in when the last harvest is in', () => {
    const plantings = [
      sown('lettuce-leaf', '2027-05-01', { id: 'lettuce', harvested: '2027-06-20' }),
      setOut('broccoli', '2027-06-20', { id: 'broccoli' }),
    ];
    expect(waits(tasks({ plantings }), 'set-out/planting:broccoli')).toContain('bed-clear/planting:lettuce');
  });

  it('with every crop that stood there, not only the last of them', () => {
    const plantings = [
      setOut('tomato', '2027-06-01', { id: 'tomato', harvested: '2027-09-20', areaM2: 2 }),
      sown('lettuce-leaf', '2027-07-20', { id: 'lettuce', harvested: '2027-09-12', areaM2: 1 }),
    ];
    const found = tasks({ plantings, stands: [cover('cereal_rye', '2027-09-28')], ...autumn });
    for (const key of ['cover-sow/stand:s', 'topdress/bed:a/2028/before-winter']) {
      expect(waits(found, key), key).toEqual(
        expect.arrayContaining(['bed-clear/planting:tomato', 'bed-clear/planting:lettuce']),
      );
    }
  });

  it('after a crop whose last harvest is past and which nobody cleared', () => {
    const plantings = [
      sown('pea', '2027-04-10', { id: 'peas', harvested: '2027-07-01' }),
      setOut('kale', '2027-07-20', { id: 'kale' }),
    ];
    const found = tasks({ plantings, startedOn: '2027-07-05' });
    expect(found.has('bed-clear/planting:peas')).toBe(true);
    expect(waits(found, 'set-out/planting:kale')).toContain('bed-clear/planting:peas');
  });

  it('after the freeze that kills a crop nobody gave an end', () => {
    const found = tasks(
      { plantings: [setOut('tomato', '2027-06-01', { id: 'tomato' })], ...autumn },
      frostDates('05-10', '10-01'),
    );
    expect(found.get('bed-clear/planting:tomato')?.window.earliest).toBe('2027-10-01');
    expect(waits(found, 'topdress/bed:a/2028/before-winter')).toContain('bed-clear/planting:tomato');
  });

  it('and a lasting crop is never cleared', () => {
    const plantings = [setOut('asparagus', '2021-05-01', { id: 'asparagus', harvested: '2027-06-15' })];
    expect([...tasks({ plantings }).keys()].filter((key) => key.startsWith('bed-clear/'))).toEqual([]);
  });

  it('in the south, where autumn is April', () => {
    const south = frostDates('10-10', '04-25', -40);
    const plantings = [
      sown('snap-bean', '2027-11-15', { id: 'beans', harvested: '2028-03-01' }),
      sown('spinach', '2028-03-12', { id: 'spinach' }),
    ];
    const found = tasks({ plantings, startedOn: '2027-09-01', ...autumn }, south);
    expect(follows(found, 'sow/planting:spinach', 'bed-clear/planting:beans')).toBe(true);
    const compost = [...found.keys()].find((key) => key.endsWith('/before-winter')) ?? '';
    expect(waits(found, 'sow/planting:spinach')).toContain(compost);
  });

  it('over 29 February and over New Year', () => {
    const mild = frostDates('02-20', '12-20', 38);
    const plantings = [
      sown('spinach', '2027-09-20', { id: 'spinach', harvested: '2028-02-29' }),
      sown('pea', '2028-02-29', { id: 'peas' }),
    ];
    const found = tasks({ plantings, startedOn: '2027-09-01' }, mild);
    expect(found.get('bed-clear/planting:spinach')?.window).toEqual({
      earliest: '2028-02-29',
      preferred: '2028-02-29',
      latest: '2028-02-29',
    });
    expect(waits(found, 'sow/planting:peas')).toContain('bed-clear/planting:spinach');
  });

  it('with nothing in a ring, and no task waiting for one that comes after it', () => {
    const plantings = [
      sown('pea', '2027-04-10', { id: 'peas', harvested: '2027-07-01' }),
      sown('spinach', '2027-08-25', { id: 'spinach', harvested: '2027-10-20' }),
      sown('garlic', '2027-10-25', { id: 'garlic' }),
    ];
    const found = tasks({ beds: [bed('a')], plantings, ...autumn });
    for (const key of found.keys()) expect(follows(found, key, key), key).toBe(false);
  });
});
