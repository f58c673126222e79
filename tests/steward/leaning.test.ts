import { describe, expect, it } from 'vitest';
import type { Edit } from '../../src/garden/edit.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { leaningOn } from '../../src/steward/ledger/undo.ts';
import { exampleFile, imported, ledgerOf } from '../garden/example-garden.ts';
import { mended, withFact } from '../garden/mends.ts';

const AWAY = { from: '2027-07-01', to: '2027-07-05' };
const NORTH = { name: 'North bed', lengthM: 2.4, widthM: 1.2 };

const PAIRS: [string, Edit, Edit | Fact][] = [
  [
    'a time away, moved',
    { list: 'away', row: AWAY },
    { list: 'away', was: AWAY, row: { ...AWAY, from: '2027-07-03' } },
  ],
  ['a time away, told again', { list: 'away', row: AWAY }, { kind: 'away-told', from: AWAY.from, to: '2027-07-09' }],
  ['a wish', { list: 'wishes', row: { crop: 'tomato', beds: 1 } }, { kind: 'wish-dropped', cropId: 'tomato' }],
  [
    'the name of a bed',
    { list: 'beds', id: 'north-bed', row: { ...NORTH, name: 'Old bed' } },
    { list: 'beds', row: { ...NORTH } },
  ],
];

describe('what leans on a change', () => {
  it.each(PAIRS)('names what was said later of %s', (_, first, second) => {
    const one = mended(ledgerOf(['2027-06-01', imported(exampleFile())]), '2027-06-02', first);
    const both = 'kind' in second ? withFact(one, '2027-06-03', second) : mended(one, '2027-06-03', second);
    const [, changed] = both;
    expect(changed && leaningOn(both, changed).map(({ entry }) => entry)).toEqual([3]);
  });

  it('leaves out what is about another row', () => {
    const one = mended(ledgerOf(['2027-06-01', imported(exampleFile())]), '2027-06-02', { list: 'away', row: AWAY });
    const both = withFact(one, '2027-06-03', { kind: 'away-told', from: '2027-08-01', to: '2027-08-09' });
    const [, changed] = both;
    expect(changed && leaningOn(both, changed)).toEqual([]);
  });
});
