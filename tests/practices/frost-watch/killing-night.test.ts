import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays } from '../../../src/measures/days.ts';
import { cropSpans, gapsOf } from '../../../src/practices/bed-timeline.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { doneMark } from '../../schedule/drafts.ts';
import { cover, draft, draftsIn, setOut } from '../gardens.ts';
import { climate, EVENING, expected, measured, september, watched } from './gardens.ts';

const MORNING = addDays(EVENING, 1);
const DAY = addDays(EVENING, 1);
// 26 °F, below the −2 °C at which beans and corn are lost (agro:S53).
const KILLING = { coldNights: [measured(-3.3)] };

const clearing = (of: Garden) => draft(draftsIn(of, climate, DAY), 'bed-clear/planting:tomato');
const ended = (of: Garden, bedId = 'a') => cropSpans(of, bedId, climate)[0];

describe('a measured night that kills', () => {
  it('puts the clearing of what stood uncovered forward to the morning, with the night as its reason', () => {
    const task = clearing(september(KILLING));
    expect(task.window.earliest).toBe(MORNING);
    expect(clearing(september()).window.earliest > addDays(MORNING, 3)).toBe(true);
    expect(task.reasons[0]).toMatchObject({
      rule: 'changeover.frozen',
      saw: { evening: EVENING, tempC: -3.3 },
      limit: -2,
      source: 'agro:S53',
    });
    expect(reasonSentence(task.reasons[0] ?? { rule: '', saw: {}, source: 'from memory' })).toContain('uncovered');
    expect(task.steps[0]).toContain('Does it live? Choose Not yet');
  });

  it('is asked about the next morning', () => {
    const look = watched(september(KILLING), climate, DAY).find(({ kind }) => kind === 'look-for-frost-damage');
    expect(look?.window.preferred).toBe(MORNING);
    expect(look?.steps[1]).toContain('Likely dead: tomato in Bed A; snap bean in Bed B.');
  });

  it('frees the bed for what follows: rye has time in it that it had not', () => {
    const stands = [cover('cereal_rye', '2027-10-01')];
    const gap = (of: Garden) => gapsOf(of, 'a', climate, of.startedOn).at(-1)?.from ?? '';
    expect(gap(september(KILLING))).toBe(addDays(MORNING, 1));
    const ofStand = (of: Garden) =>
      draftsIn(of, climate, DAY).flatMap(({ key }) => (/^cover-(sow|no-window)\/stand:s$/.test(key) ? [key] : []));
    expect(ofStand(september({ stands }))).toEqual(['cover-no-window/stand:s']);
    expect(ofStand(september({ ...KILLING, stands }))).toEqual(['cover-sow/stand:s']);
  });

  it('leaves half-hardy crops, roots and potatoes their time, and all crops at −1.9 °C', () => {
    expect(['c', 'd'].map((bedId) => ended(september(KILLING), bedId)?.end)).not.toContain('frozen');
    const potato = september({ ...KILLING, plantings: [setOut('potato', '2027-07-01')] });
    expect(ended(potato)?.end).not.toBe('frozen');
    expect(ended(september({ coldNights: [measured(-1.9)] }))?.end).not.toBe('frozen');
    expect(ended(september({ coldNights: [expected(-3.3)] }))?.end).not.toBe('frozen');
  });

  it('leaves what was covered, what was set out later, and what is said to live', () => {
    const [evening] = watched(september({ coldNights: [expected(-3.3)] }));
    if (evening === undefined) throw new Error('No evening.');
    expect(ended(september({ ...KILLING, done: [doneMark(evening, EVENING)] }))?.end).not.toBe('frozen');
    expect(ended(september({ coldNights: [measured(-3.3, '2027-05-27')] }))?.end).not.toBe('frozen');
    const { key } = clearing(september(KILLING));
    const lives = september({ ...KILLING, putOff: { [key]: DAY } });
    expect(ended(lives)).toEqual(ended(september()));
    expect(ended(september({ ...KILLING, putOff: { [key]: addDays(EVENING, -1) } }))?.end).toBe('frozen');
  });
});
