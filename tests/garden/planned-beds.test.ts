import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import { isStillToBeMade, thereFrom } from '../../src/garden/planned-beds.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { projectGarden } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { done, exampleData, exampleFile, imported, ledgerOf } from './example-garden.ts';

const NEW_BED = { name: 'New bed', lengthM: 2.4, widthM: 1.2, depthM: 0.3, plannedFor: '2027-04-15' };
const withBed = (bed: object, more: object = {}) => ({ ...exampleData(), beds: [...exampleData().beds, bed], ...more });
const crop = (row: object) => ({ plantings: [{ bed: 'New bed', crop: 'pea', ...row }] });

/** What a file is refused for, each problem as one line. */
function problemsOf(data: unknown): string[] {
  try {
    checkGardenFile(data);
    return [];
  } catch (error) {
    if (!(error instanceof InputRefused)) throw error;
    return error.problems.map(({ where, what, mend }) => `${where} ${what} ${mend}`);
  }
}

const bedIn = (garden: ReturnType<typeof projectGarden>) => garden?.beds.find(({ id }) => id === 'new-bed');
const ledger = (more: object = {}, ...facts: ReturnType<typeof done>[]) => {
  const file = exampleFile(withBed(NEW_BED, more));
  const told = facts.map((fact) => [fact.kind === 'tasks-done' ? fact.on : '2027-05-01', fact] as const);
  return ledgerOf(['2027-01-10', imported(file)], ...told);
};

describe('a bed that is still to be made', () => {
  it('wants its depth, by which it is filled', () => {
    const { depthM: _depth, ...shallow } = NEW_BED;
    expect(problemsOf(withBed(shallow))).toEqual([
      'beds[2].depthM is missing. Give a depth in metres, such as depthM: 0.3: a bed still to be filled is reckoned by it.',
    ]);
    expect(problemsOf(withBed(NEW_BED))).toEqual([]);
  });

  it('refuses a crop, a cover and a mulch before it is there, all at once and with both dates', () => {
    const early = problemsOf(
      withBed(NEW_BED, {
        ...crop({ sow: '2027-04-10' }),
        coverStands: [{ bed: 'new-bed', cover: 'oats', sow: '2027-04-01' }],
        mulches: [{ bed: 'New bed', from: '2026-11-01', mulch: 'leaves' }],
      }),
    );
    expect(early).toHaveLength(3);
    expect(early[0]).toBe(
      'plantings[0].sow It is to go in on 2027-04-10, and New bed is not there before 2027-04-15. ' +
        'Give a day from 2027-04-15 on, another bed, or an earlier plannedFor of New bed.',
    );
    expect(early[1]).toContain('coverStands[0].sow It is to be sown on 2027-04-01');
    expect(early[2]).toContain('mulches[0].from It is to lie there on 2026-11-01');
  });

  it('takes what goes in on its very day', () => {
    expect(problemsOf(withBed(NEW_BED, crop({ sow: '2027-04-15' })))).toEqual([]);
    expect(problemsOf(withBed(NEW_BED, crop({ setOut: '2027-04-14' })))).toHaveLength(1);
  });

  it('says nothing of paths or a filling where no day is planned for it', () => {
    const { plannedFor: _day, ...old } = NEW_BED;
    expect(problemsOf(withBed({ ...old, pathsM2: 2 }))[0]).toContain('beds[2].pathsM2');
    expect(problemsOf(withBed({ ...old, filledOn: '2027-04-01' }))[0]).toContain('beds[2].filledOn');
  });
});

describe('a planned bed is there', () => {
  it('from the day planned, until it is filled, and then from that day', () => {
    const before = bedIn(projectGarden(ledger()));
    expect(before && [thereFrom(before), isStillToBeMade(before)]).toEqual(['2027-04-15', true]);
    const filled = done('2027-04-10', 'bed-fill/bed:new-bed', { makes: 'bed-filled', bedId: 'new-bed' });
    const after = bedIn(projectGarden(ledger({}, filled)));
    expect(after && [thereFrom(after), isStillToBeMade(after)]).toEqual(['2027-04-10', false]);
  });

  it('once something has been sown in it, whoever forgot to say that it was filled', () => {
    const garden = projectGarden(
      ledger(
        crop({ sow: '2027-05-01' }),
        done('2027-04-12', 'sow/planting:new-bed-pea-2027-05-01', {
          makes: 'planting-started',
          plantingId: 'new-bed-pea-2027-05-01',
        }),
      ),
    );
    expect(bedIn(garden)?.filledOn).toBe('2027-04-12');
    // So the file that is written out can be read again.
    expect(garden && problemsOf(gardenFileOf(garden))).toEqual([]);
  });

  it('is written out with its days, and read again as the same bed', () => {
    const filled = done('2027-05-03', 'bed-fill/bed:new-bed', { makes: 'bed-filled', bedId: 'new-bed' });
    const garden = projectGarden(ledger(crop({ sow: '2027-04-20' }), filled));
    const file = garden && gardenFileOf(garden);
    expect(file?.beds[2]).toMatchObject({ plannedFor: '2027-04-15', filledOn: '2027-05-03' });
    // It was filled later than planned, and the crop still has its old day: that is no fault of the file.
    expect(file && problemsOf(file)).toEqual([]);
  });

  it('stays filled when its file is brought in again without that', () => {
    const filled = done('2027-04-10', 'bed-fill/bed:new-bed', { makes: 'bed-filled', bedId: 'new-bed' });
    const again = ledgerOf(
      ['2027-01-10', imported(exampleFile(withBed(NEW_BED)))],
      ['2027-04-10', filled],
      ['2027-04-20', imported(exampleFile(withBed(NEW_BED)))],
    );
    expect(bedIn(projectGarden(again))?.filledOn).toBe('2027-04-10');
  });
});
