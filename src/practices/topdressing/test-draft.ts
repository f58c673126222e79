/**
 * Growing beans in bought compost before it goes on any bed.
 */

import { addDays } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { POTTED } from '../cautions.ts';
import type { TaskDraft } from '../draft.ts';
import { LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import type { BoughtHeap } from './bought.ts';
import { BEAN_TEST_DAYS } from './order-days.ts';

/** A test for each day on which untested compost was bought. */
export function testDrafts(input: PracticeInput, heaps: readonly BoughtHeap[]): TaskDraft[] {
  const untested = heaps.filter(({ unproven }) => unproven !== undefined);
  const firstOfKey = untested.filter(
    (heap, at) => untested.findIndex(({ testKey }) => testKey === heap.testKey) === at,
  );
  return firstOfKey.map((heap) => {
    const ofDay = untested.filter(({ testKey }) => testKey === heap.testKey);
    const here = ofDay.map((each) => each.here).sort()[0] ?? heap.here;
    return testDraft(input, { ...heap, here, litres: ofDay.reduce((sum, { litres }) => sum + litres, 0) });
  });
}

function testDraft({ garden }: PracticeInput, { testKey, on, ordered, here, litres }: BoughtHeap): TaskDraft {
  const { low, high } = BEAN_TEST_DAYS;
  return {
    key: testKey,
    practice: 'topdressing',
    kind: 'test-compost',
    job: { id: 'test-compost', title: 'Test the bought compost with beans' },
    subject: gardenSubject(garden),
    weight: 'check',
    title: `Test the bought compost with beans (${quantity(litres, 'L')})`,
    steps: [
      ...(ordered ? ['Begin on the day it comes.'] : []),
      'Fill a few pots with one part of it to one of clean potting mix, and as many with the mix alone. Stand them so that no water runs from one to another.',
      'Sow three or four beans or peas in each, and let them grow to three leaves.',
      `Cupped or twisted leaves in the pots with compost only mean weedkiller residue: it goes on no bed.`,
      `Straight after ${low} to ${high} days? Mark this done. The layers that draw on it wait until then.`,
    ],
    cautions: [POTTED],
    supplies: [{ what: 'pots, clean potting mix, bean or pea seed' }],
    window: { earliest: here, preferred: here, latest: addDays(here, high) },
    ifMissed: 'still do',
    missedNote:
      'Untested compost can spoil beans, peas and tomatoes for years: keep it off the beds until it is tested.',
    effortMinutes: START_UP_MINUTES + LOOK_MINUTES,
    needs: [],
    after: [],
    confidence: ordered ? 'assumed' : 'recorded',
    reasons: [
      {
        rule: ordered ? 'compost-test.ordered' : 'compost-test.delivered',
        saw: { on, here, litres, daysLow: low, daysHigh: high },
        source: 'compost:S33',
      },
    ],
    makes: [{ makes: 'compost-tested', boughtOn: on }],
  };
}
