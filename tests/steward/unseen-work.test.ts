import { describe, expect, it } from 'vitest';
import type { Member } from '../../src/garden/household.ts';
import { unseenDoubts, unseenWork } from '../../src/steward/doubts/unseen-work.ts';

const bed = (id: string) => ({ id, name: `${id} bed`, lengthM: 2, widthM: 1, raised: true, watered: true });
const beds = [bed('North'), bed('Wall')];
const unseenOf = (...members: Member[]) => unseenWork({ beds, household: { members } });

describe('work that falls to nobody', () => {
  it('is none where nobody is named, or where one of them sees to all of it', () => {
    expect(unseenWork({ beds })).toEqual([]);
    expect(unseenOf({ id: 'ida', name: 'Ida', practices: ['mulching'] }, { id: 'jonas', name: 'Jonas' })).toEqual([]);
  });

  it('is a kind of work that is in no one’s list', () => {
    const unseen = unseenOf({
      id: 'ida',
      name: 'Ida',
      practices: ['mulching', 'planting', 'cover-cropping', 'rotation'],
    });
    expect(unseen).toContain('compost');
    expect(unseen).not.toContain('mulch');
  });

  it('is a bed that nobody works on', () => {
    expect(unseenOf({ id: 'ida', name: 'Ida', beds: ['North'] })).toEqual(['everything on Wall bed']);
  });

  it('is a kind of work on a bed whose people see to other work', () => {
    const ida: Member = { id: 'ida', name: 'Ida', practices: ['mulching'], beds: ['North'] };
    const jonas: Member = { id: 'jonas', name: 'Jonas', practices: ['planting'], beds: ['North', 'Wall'] };
    expect(unseenOf(ida, jonas)).toContain('mulch on Wall bed');
  });

  it('is doubted in a garden file, with the mend', () => {
    expect(unseenDoubts({ beds, household: { members: [{ id: 'ida', name: 'Ida', beds: ['North'] }] } })).toEqual([
      {
        where: 'household.members',
        what: "By what its members see to, some work is nobody's: everything on Wall bed.",
        mend: 'Add it to somebody, or leave their practices or beds out.',
      },
    ]);
  });
});
