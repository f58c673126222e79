import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { ANCHORS, demoClimate, demoGarden } from '../demo-data/demo-season.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, pile, setOut, sown } from './gardens.ts';

/** Words by which a note says what cannot be had any more. */
const NAMES_A_LOSS = /\b(lost|loses?|loss|gone|too late|too cold|too hot|killed|past|nothing is lost)\b/i;

function wanting(drafts: readonly TaskDraft[]): string[] {
  const told = ({ missedNote }: TaskDraft) => missedNote.length > 20 && /[.]$/.test(missedNote);
  const named = ({ ifMissed, missedNote }: TaskDraft) => ifMissed !== 'drop' || NAMES_A_LOSS.test(missedNote);
  return drafts
    .filter((each) => !told(each) || !named(each))
    .map(({ key, ifMissed, missedNote }) => `${key} (${ifMissed}): "${missedNote}"`);
}

/** Gardens that between them ask for work of every kind, in the north, in the south and over a leap day. */
const GARDENS: readonly [string, () => TaskDraft[]][] = [
  ...ANCHORS.map((anchor): [string, () => TaskDraft[]] => [
    `the demo garden of ${anchor}`,
    () => draftsOf({ garden: demoGarden(anchor), climate: demoClimate, today: anchor, until: addDays(anchor, 396) }),
  ]),
  ['a place and one bed', () => draftsIn(garden())],
  [
    'a bed of rye and beans',
    () =>
      draftsIn(
        garden({
          startedOn: '2027-03-01',
          stands: [cover('cereal_rye', '2026-09-20')],
          plantings: [sown('snap-bean', '2027-06-01'), setOut('tomato', '2027-05-28', { bedId: 'b' })],
          beds: [bed('a'), bed('b')],
          piles: [pile('2027-02-20', { readings: [{ on: '2027-02-28', tempC: 68 }] })],
        }),
      ),
  ],
  [
    'a southern garden over 29 February',
    () =>
      draftsIn(
        garden({
          startedOn: '2027-11-01',
          place: { latitude: -43 },
          stands: [cover('oats', '2028-02-29')],
          plantings: [setOut('leek', '2027-11-20')],
          piles: [pile('2027-11-20')],
        }),
        frostDates('11-01', '04-10', -43),
      ),
  ],
];

describe('work that was missed', () => {
  it.each(GARDENS)('says in %s what is lost or what to do now', (_name, draftsHere) => {
    const drafts = draftsHere();
    expect(drafts.length).toBeGreaterThan(0);
    expect(wanting(drafts)).toEqual([]);
  });

  it.each([
    ['', 'still do'],
    ['Never mind.', 'drop'],
    ['It would have been nice to see it come up.', 'drop'],
  ] as const)('is not told by "%s"', (missedNote, ifMissed) => {
    const [any] = draftsIn(garden());
    expect(wanting(any === undefined ? [] : [{ ...any, missedNote, ifMissed }])).toHaveLength(1);
  });

  it('cannot wait for the household where seed would set or a pile cooks itself', () => {
    const all = draftsIn(
      garden({
        startedOn: '2027-03-01',
        stands: [cover('cereal_rye', '2026-09-20')],
        piles: [pile('2027-02-20', { readings: [{ on: '2027-02-28', tempC: 68 }] })],
      }),
    );
    expect(draft(all, 'cover-cut/stand:s').minder).toBe(
      'Cut the winter rye in Bed A off at the ground, and leave what you cut lying on the bed.',
    );
    expect(draft(all, 'pile-turn/').minder).toContain('The compost in Left bay is running too hot.');
  });
});
