import { describe, expect, it } from 'vitest';
import { changePreview } from '../../src/digest/change-preview.ts';
import { otherwiseInWords, toldOtherwise } from '../../src/digest/told-otherwise.ts';
import type { PlannedTask } from '../../src/schedule/plan.ts';
import { movesBetween } from '../../src/steward/ledger/moves-between.ts';
import { samplePlan, sampleTask } from '../web/sample-plan.ts';

const DAY = '2027-04-19';
const SCRAPS = sampleTask('winter-bin', DAY, { title: 'Make room in Bin 3', steps: ['Empty it.', 'Fork over ⟦2 L⟧.'] });

function told(parts: Partial<PlannedTask>): string {
  const otherwise = toldOtherwise(SCRAPS, { ...SCRAPS, ...parts });
  return otherwise === undefined ? '' : otherwiseInWords(otherwise);
}

describe('a task that stays on its day', () => {
  it('is told where its title, its steps or its days are others', () => {
    expect(told({ title: 'Make room in Bin 2' })).toBe('is now: Make room in Bin 2');
    expect(told({ steps: ['Empty it.', 'Close the lid.'] })).toBe('its steps now say: Close the lid.');
    expect(told({ steps: ['Empty it.'] })).toBe('some of its steps fall away');
    expect(told({ window: { ...SCRAPS.window, latest: '2027-06-01' } })).toContain('to ⟦2027-06-01⟧');
    expect(told({})).toBe('');
  });

  it('is told where it is about another thing of the same name', () => {
    expect(told({ subject: { ...SCRAPS.subject, id: 'other' } })).toBe('is now: Make room in Bin 3');
  });

  it('says an amount once: in the amounts', () => {
    const litres = (value: number) => [{ what: 'leaves', amount: { value, unit: 'L' as const } }];
    const [before, after] = [2, 3].map((value) => ({
      ...SCRAPS,
      steps: [`Fork over ⟦${value} L⟧.`],
      supplies: litres(value),
    }));
    expect(before && after && toldOtherwise(before, after)).toBeUndefined();
  });

  it('is among what moves, and in the preview, under its old title', () => {
    const [before, after] = [SCRAPS, { ...SCRAPS, title: 'Make room in Bin 2' }].map((task) => samplePlan([task]));
    if (before === undefined || after === undefined) throw new Error('No plans.');
    expect(movesBetween(before, after)).toEqual([
      {
        key: SCRAPS.key,
        title: 'Make room in Bin 3',
        from: DAY,
        to: DAY,
        otherwise: { title: 'Make room in Bin 2' },
        reasons: [],
      },
    ]);
    expect(changePreview(before, after).reworded).toEqual([
      {
        keys: [SCRAPS.key],
        title: 'Make room in Bin 3',
        from: DAY,
        to: DAY,
        because: 'is now: Make room in Bin 2',
        reasons: [],
      },
    ]);
  });
});
