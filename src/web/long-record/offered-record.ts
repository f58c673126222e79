/**
 * A record that somebody looks at before it is put behind a garden.
 */
import type { WeatherFile } from '../../garden/weather-rows.ts';
import type { RecordChange } from '../../steward/doings/record-doings.ts';

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
