import { describe, expect, it } from 'vitest';
import { addDays, type Day } from '../../src/measures/days.ts';
import { stageDoubt, stageProblems, stageReport } from '../../src/steward/facts/stage-report.ts';
import { sampleApp, TODAY } from '../web/sample-garden.ts';

/** The sample garden on 20 April 2027, its rye in the north bed sown on another day or sown again in its thin places. */
async function told(
  coverId: string,
  { sown = '2026-09-20', on = TODAY, resown }: { sown?: Day; on?: Day; resown?: { on: Day; coverId: string } },
) {
  const { steward } = await sampleApp();
  const { garden, ...view } = await steward.view('mill-row');
  const stands = garden.stands.map((stand) => {
    if (stand.id !== 'rye-north') return stand;
    const sow = { day: sown, happened: true };
    return { ...stand, coverId: resown ? stand.coverId : coverId, sow, ...(resown ? { resown: [resown] } : {}) };
  });
  const changed = { ...view, garden: { ...garden, stands } };
  const report = stageReport(changed, { standId: 'rye-north', coverId, stage: 'first-buds', on });
  const problems = stageProblems({ ...changed, version: 1 }, report);
  return { refused: problems.map(({ what, mend }) => `${what} ${mend}`), doubt: stageDoubt(changed, report) };
}

describe('buds told of a young stand', () => {
  it('are not believed six days after it was sown: both days are said, and what to look for', async () => {
    const { refused } = await told('cereal_rye', { sown: addDays(TODAY, -6) });
    expect(refused).toEqual([
      'On April 20, 2027 this winter rye was 6 days old, sown on April 14, 2027: no cover has buds or flowers within 21 ' +
        'days. Look whether it is a weed that flowers, or another stand; else give a day from May 5, 2027 on.',
    ]);
  });

  // Buckwheat flowers 35 to 40 days after a summer sowing (cover:S4a), so that three weeks refuse no true sight of it.
  it.each([
    [20, 1],
    [21, 0],
    [35, 0],
  ])('of buckwheat %i days old: refused %i times', async (days, times) => {
    expect((await told('buckwheat', { sown: addDays(TODAY, -days) })).refused).toHaveLength(times);
  });

  it('are measured from the later sowing of a kind that came only with it', async () => {
    const resown = { on: addDays(TODAY, -10), coverId: 'oats' };
    const oats = await told('oats', { resown });
    expect(oats.refused.join()).toContain('this oats was 10 days old, sown on April 10, 2027');
    expect((await told('cereal_rye', { resown })).refused).toEqual([]);
  });
});

describe('buds told more than a month before the figures have them', () => {
  it('are taken in, with a doubt that names both days', async () => {
    const { refused, doubt } = await told('cereal_rye', {});
    expect(refused).toEqual([]);
    expect(doubt).toMatch(
      /^Look again before you take it in: the day the figures have for the winter rye is (May|June) \d+, 2027, \d+ days after April 20, 2027\./,
    );
  });

  it('and no doubt is said nearer to them, or of a kind without a figure', async () => {
    const days = Number(/(\d+) days after/.exec((await told('cereal_rye', {})).doubt ?? '')?.[1]);
    expect(days).toBeGreaterThan(30);
    const at = (early: number) => told('cereal_rye', { on: addDays(TODAY, days - early) });
    expect((await at(31)).doubt).toContain('31 days after');
    expect((await at(30)).doubt).toBeUndefined();
    expect((await told('white_clover', {})).doubt).toBeUndefined();
  });
});
