/**
 * Work that falls to nobody of the household, by what its members see to.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Member } from '../../garden/household.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { PRACTICE_NAMES, type PracticeName } from '../../garden/practice-names.ts';
import type { Problem } from '../../garden/problem.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';

/** What nobody sees to, in words: "compost", "everything on Wall bed", "mulch on North bed". Empty where nobody is named. */
export function unseenWork(garden: Pick<Garden, 'beds' | 'household'>): string[] {
  const members = membersOf(garden);
  if (members.length === 0) return [];
  const seeing = (practice: PracticeName) => members.filter(({ practices }) => practices?.includes(practice) ?? true);
  const nobodys = PRACTICE_NAMES.filter((practice) => seeing(practice).length === 0);
  const others = PRACTICE_NAMES.filter((practice) => !nobodys.includes(practice));
  const missing = others.map((practice) => ({ practice, beds: bedsWithout(seeing(practice), garden) }));
  const bare = garden.beds.filter((bed) => missing.every(({ beds }) => beds.includes(bed)));
  const partly = missing.flatMap(({ practice, beds }) => {
    const left = beds.filter((bed) => !bare.includes(bed));
    return left.length === 0 ? [] : [`${wordOf(practice)} on ${namesOf(left)}`];
  });
  return [...nobodys.map(wordOf), ...(bare.length === 0 ? [] : [`everything on ${namesOf(bare)}`]), ...partly];
}

/** The same as a doubt about a garden file. */
export function unseenDoubts(garden: Pick<Garden, 'beds' | 'household'>): Problem[] {
  const unseen = unseenWork(garden);
  if (unseen.length === 0) return [];
  const what = `By what its members see to, some work is nobody's: ${unseen.join('; ')}.`;
  return [{ where: 'household.members', what, mend: 'Add it to somebody, or leave their practices or beds out.' }];
}

function bedsWithout(members: readonly Member[], { beds }: Pick<Garden, 'beds'>): Garden['beds'] {
  return beds.filter(({ id }) => !members.some((member) => member.beds?.includes(id) ?? true));
}

function wordOf(practice: PracticeName): string {
  return PRACTICE_WORDS[practice].toLowerCase();
}

function namesOf(beds: Garden['beds']): string {
  return beds.map(({ name }) => name).join(', ');
}
