/**
 * What the lines of a record are about, by name.
 */
import type { Garden, Subject } from '../../garden/garden.ts';
import { membersOf } from '../../garden/household-changes.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import type { RecordRow } from './row.ts';

/** What a line is about. */
export type About = Pick<RecordRow, 'about' | 'aboutId' | 'aboutName'>;

/** Beds, piles and the garden by their present names; what is gone keeps the name it was told with. */
export class Names {
  readonly #garden: Garden;
  constructor(garden: Garden) {
    this.#garden = garden;
  }

  bed(id: string, told = id): About {
    const name = this.#garden.beds.find((bed) => bed.id === id)?.name ?? told;
    return { about: 'bed', aboutId: id, aboutName: name };
  }

  pile(id: string, told = id): About {
    const { piles, bins } = this.#garden;
    const binId = piles.find((pile) => pile.id === id)?.binId;
    return { about: 'pile', aboutId: id, aboutName: bins.find((bin) => bin.id === binId)?.name ?? told };
  }

  garden(): About {
    const { id, name } = this.#garden;
    return { about: 'garden', aboutId: id, aboutName: name };
  }

  /** What a task was about: work on a crop or a cover is work in its bed. */
  subject(subject: Subject): About {
    switch (subject.type) {
      case 'bed':
        return this.bed(subject.id, subject.name);
      case 'stand':
      case 'planting':
        return this.bed(subject.bedId, subject.bedName);
      case 'pile':
        return this.pile(subject.id, subject.name);
      case 'garden':
        return this.garden();
      default:
        return subject satisfies never;
    }
  }

  /** What a task's key names: of use where an entry keeps nothing else of it. */
  ofKey(key: string): About {
    const [, type, id = ''] = /\/(bed|planting|stand|pile):([^/]+)/.exec(key) ?? [];
    if (type === 'bed') return this.bed(id);
    if (type === 'pile') return this.pile(id);
    return type === undefined ? this.garden() : this.bedOf(type === 'stand' ? 'stands' : 'plantings', id);
  }

  /** The bed of a stand or a planting; the garden where it is gone. */
  bedOf(list: 'stands' | 'plantings', id: string): About {
    const bedId = this.#garden[list].find((row) => row.id === id)?.bedId;
    return bedId === undefined ? this.garden() : this.bed(bedId);
  }
}

/** A crop in the middle of a sentence. */
export function cropName(cropId: string): string {
  return vegetableById(cropId).name.toLowerCase();
}

/** The names of a household's members. */
export function memberNames(garden: Pick<Garden, 'household'>): ReadonlySet<string> {
  return new Set(membersOf(garden).map(({ name }) => name));
}
