import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { isHard } from '../../../src/practices/rotation-plan/looked-at.ts';
import { ruleInWords } from '../../../src/practices/rotation-plan/sentences.ts';
import { isMet } from '../../../src/practices/rotation-plan/wishes.ts';
import { undatedTexts } from '../../../src/steward/bed-plan/proposal-words.ts';
import { takenPlan } from '../../../src/steward/bed-plan/taken-plan.ts';
import { proposeRotation } from '../../../src/steward/rotation-plan/propose.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { bed, frostDates, garden, inputOf, setOut, sown } from '../../practices/gardens.ts';

const north = frostDates('05-10', '10-01');
const south = frostDates('10-20', '04-20', -43);
const noDates = inventedClimate();

const oneBed = (cropId: string) => ({ cropId, amount: { beds: 1 } });

async function proposed(parts: Partial<Garden>, { today = '2027-01-05', climate = north, years = 1 } = {}) {
  const input = inputOf(garden({ startedOn: '2020-01-01', beds: [bed('a')], ...parts }), climate, today);
  const proposal = await proposeRotation(input, { years, anew: false });
  const { placements, wishes, problem, conflicts } = proposal;
  return {
    plan: placements.map(({ bedId, cropId, season }) => `${bedId} ${cropId} ${season}`),
    days: placements.map(({ start }) => start?.day),
    met: wishes.map(isMet),
    rules: conflicts.flatMap(({ rules }) => rules.map((rule) => ruleInWords(rule, problem))),
    undated: undatedTexts(proposal),
    left: takenPlan(input, proposal, false).left.length,
    hard: proposal.broken.filter(isHard).length,
  };
}

describe('a crop whose last good day is past', () => {
  it('keeps no bed from one that can go in', async () => {
    const { plan, rules } = await proposed({ wishes: [oneBed('snap-bean'), oneBed('garlic')] });
    expect(plan).toEqual(['a snap-bean 2027']);
    expect(
      rules.some((rule) => rule.startsWith('the last good day for garlic is ⟦2026-') && rule.endsWith('past')),
    ).toBe(true);
  });

  it('nor south of the equator', async () => {
    const beds = [bed('a'), bed('b')];
    const wishes = ['garlic', 'tomato', 'carrot'].map(oneBed);
    const { plan } = await proposed({ beds, wishes }, { today: '2027-08-25', climate: south });
    expect(plan.map((place) => place.split(' ')[1]).sort()).toEqual(['carrot', 'tomato']);
  });

  it('is placed with no day where no dates are known', async () => {
    const { plan, days, undated } = await proposed({ wishes: [oneBed('garlic')] }, { climate: noDates });
    expect([plan, days]).toEqual([['a garlic 2027'], [undefined]]);
    expect(undated).toEqual(['Bed A: garlic in 2027.']);
  });
});

describe('a bed still to be made', () => {
  it('takes no crop that has to be in before', async () => {
    const beds = [bed('a', { plannedFor: '2027-06-25' }), bed('b')];
    expect((await proposed({ beds, wishes: [oneBed('tomato')] })).plan).toEqual(['b tomato 2027']);
  });

  it('takes garlic in the autumn it is made', async () => {
    const beds = [bed('a', { plannedFor: '2027-08-20' })];
    const { plan, met } = await proposed({ beds, wishes: [oneBed('garlic')] }, { years: 2 });
    expect(plan).toEqual(['a garlic 2028']);
    expect(met).toEqual([false, true]);
  });

  it('takes what is sown in late summer', async () => {
    const beds = [bed('a', { plannedFor: '2027-07-10' })];
    const { plan, left } = await proposed({ beds, wishes: [oneBed('radish')] });
    expect([plan, left]).toEqual([['a radish 2027'], 0]);
  });
});

describe('between crops of other seasons', () => {
  const beds = [bed('a'), bed('b')];

  it('one that stands too long by its stated day sends the wish to another bed', async () => {
    const leek = setOut('leek', '2026-06-10', { lastHarvest: { day: '2027-08-25', happened: false } });
    const { plan, left, hard } = await proposed({ beds, plantings: [leek], wishes: [oneBed('pea')] });
    expect([plan, left, hard]).toEqual([['b pea 2027'], 0, 0]);
  });

  it('one that goes in before the wish is out does too', async () => {
    const garlic = sown('garlic', '2027-10-10');
    const { plan, left } = await proposed({ beds, plantings: [garlic], wishes: [oneBed('brussels-sprouts')] });
    expect([plan, left]).toEqual([['b brussels-sprouts 2027'], 0]);
  });

  it('a share of the bed leaves room beside it', async () => {
    const leek = setOut('leek', '2026-06-10', { areaM2: 0.5, lastHarvest: { day: '2027-08-25', happened: false } });
    const wishes = [{ cropId: 'pea', amount: { areaM2: 1 } }];
    expect((await proposed({ plantings: [leek], wishes })).plan).toEqual(['a pea 2027']);
  });
});
