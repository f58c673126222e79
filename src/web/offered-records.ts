/**
 * Records that somebody looks at before they are put behind a garden: held in memory, the latest ones.
 */
import { randomBytes } from 'node:crypto';
import type { WeatherFile } from '../garden/weather-rows.ts';
import type { RecordChange } from '../steward/record-doings.ts';

/** A record that may come to stand behind a garden. */
export interface OfferedRecord {
  gardenId: string;
  change: RecordChange;
  /** Whether it came as a file, or is kept here: as the present record, or as the one before it. */
  from: 'file' | 'now' | 'former';
  /** What the file held it was made of; absent where it was kept here already. */
  file?: WeatherFile;
  /** Days of the record there is that would be replaced, where the file is laid over it. */
  replaced?: number;
}

/** Offers held at once: each may be some megabytes. House default. */
const HELD = 5;

/** The offers of every garden. */
export class OfferedRecords {
  readonly #held = new Map<string, OfferedRecord>();

  /** Holds an offer, and gives its name in addresses. */
  keep(offer: OfferedRecord): string {
    const id = randomBytes(9).toString('base64url');
    this.#held.set(id, offer);
    for (const old of [...this.#held.keys()].slice(0, -HELD)) this.#held.delete(old);
    return id;
  }

  find(gardenId: string, id: string): OfferedRecord | undefined {
    const offer = this.#held.get(id);
    return offer?.gardenId === gardenId ? offer : undefined;
  }

  /** Lets an offer go that has been taken. */
  drop(id: string): void {
    this.#held.delete(id);
  }
}
