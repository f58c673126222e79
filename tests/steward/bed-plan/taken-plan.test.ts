import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { planCropsIn } from '../../../src/garden/plan-crops.ts';
import { brokenRules } from '../../../src/practices/rotation-plan/broken.ts';
import { plannedProblem } from '../../../src/steward/bed-plan/season-table.ts';
import { takenPlan } from '../../../src/steward/bed-plan/taken-plan.ts';
import { proposeRotation } from '../../../src/steward/rotation-plan/propose.ts';
import { bed, cover, frostDates, garden, inputOf, setOut } from '../../practices/gardens.ts';

const climate = frostDates('05-10', '10-01');

/** What stands in the plan once a proposal made anew is taken, what was left out, and the hard rules it breaks. */
async function taken(of: Garden, years: number) {
  const input = inputOf(of, climate, of.startedOn);
  const { fact, left } = takenPlan(input, await proposeRotation(input, { years, anew: true }), true);
  const after = planCropsIn(of, fact);
  return {
    plan: after.plantings
      .map(({ bedId, cropId, start, areaM2 = 3 }) => `${bedId} ${cropId} ${start.day.slice(0, 4)} ${areaM2}`)
      .sort(),
    dropped: fact.dropped.map(({ cropId }) => cropId),
    left,
    broken: brokenRules(plannedProblem({ ...input, garden: after }, 4), []).map(({ reason }) => reason.rule),
  };
}

const wish = (cropId: string, season: number, areaM2 = 3) => ({ cropId, amount: { areaM2 }, season });
const startedOn = '2026-11-25';

describe('a plan made anew and taken', () => {
  it('drops the same crop where it is planned for another season than proposed', async () => {
    const plantings = [setOut('lettuce-head', '2028-05-05')];
    const wishes = [wish('endive', 2027), wish('lettuce-head', 2030)];
    const { plan, dropped, broken } = await taken(garden({ startedOn, plantings, wishes }), 4);
    expect(plan).toEqual(['a endive 2027 3', 'a lettuce-head 2030 3']);
    expect(dropped).toEqual(['lettuce-head']);
    expect(broken).not.toContain('rotation-plan.returns');
  });

  it('drops the same crop where it is planned on another share of the bed', async () => {
    const plantings = [setOut('tomato', '2027-05-28')];
    const wishes = [wish('tomato', 2027, 1.5), wish('snap-bean', 2027, 1.5)];
    const { plan, left } = await taken(garden({ startedOn, plantings, wishes }), 1);
    expect(plan).toEqual(['a snap-bean 2027 1.5', 'a tomato 2027 1.5']);
    expect(left).toEqual([]);
  });

  it('moves a crop to the season it is proposed for', async () => {
    const of = garden({ startedOn, plantings: [setOut('tomato', '2027-05-28')], wishes: [wish('tomato', 2028)] });
    expect((await taken(of, 2)).plan).toEqual(['a tomato 2028 3']);
  });

  it('keeps what is planned just as it is proposed', async () => {
    const of = garden({ startedOn, plantings: [setOut('tomato', '2027-06-02')], wishes: [wish('tomato', 2027)] });
    const { plan, dropped } = await taken(of, 1);
    expect([plan, dropped]).toEqual([['a tomato 2027 3'], []]);
  });

  it('goes round what is planned for later seasons, which stays', async () => {
    const beds = [bed('a'), bed('b')];
    const plantings = [setOut('lettuce-head', '2028-05-05')];
    const { plan, broken } = await taken(garden({ startedOn, beds, plantings, wishes: [wish('endive', 2027)] }), 1);
    expect(plan).toEqual(['a lettuce-head 2028 3', 'b endive 2027 3']);
    expect(broken).not.toContain('rotation-plan.returns');
  });
});

describe('a planned cover ahead of a crop that is taken', () => {
  const autumn = '2026-09-20';
  const taking = async (wishes: Garden['wishes'], sow = '2026-09-25') => {
    const of = garden({ startedOn: autumn, stands: [cover('cereal_rye', sow, { id: 'rye' })], wishes });
    const input = inputOf(of, climate, autumn);
    const { fact } = takenPlan(input, await proposeRotation(input, { years: 1, anew: false }), false);
    return { fact, stands: planCropsIn(of, fact).stands.map(({ id }) => id) };
  };

  it('goes with the taking where no time is left for it, as one fact', async () => {
    const { fact, stands } = await taking([wish('garlic', 2027)]);
    expect(fact.plantings.map(({ cropId }) => cropId)).toEqual(['garlic']);
    expect(fact.coversDropped).toEqual([{ standId: 'rye', bedId: 'a', coverId: 'cereal_rye' }]);
    expect(stands).toEqual([]);
  });

  it('stays where there is time, and where it had none before', async () => {
    expect((await taking([wish('tomato', 2027)])).stands).toEqual(['rye']);
    expect((await taking([wish('tomato', 2027)], '2026-12-20')).stands).toEqual(['rye']);
  });

  it('stays where it is in the ground', async () => {
    expect((await taking([wish('garlic', 2027)], '2026-09-10')).stands).toEqual(['rye']);
  });
});
