/**
 * What a steward does with the long records behind gardens.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import type { Say } from '../long-work/say.ts';

/** A record that is to stand behind a garden. */
export interface RecordChange {
  record: WeatherRecord;
  /** What the garden's file is to call it, where its climate stands on something else until now. */
  file: string;
  /** The record it was laid over, or that there was none; absent where it takes the place of whatever there is. */
  laidOver?: { held: WeatherRecord | undefined };
}

/** What a record would do: shown before it is kept. */
export interface RecordPreview {
  before: Plan;
  after: Plan;
  /** The garden as it would be. */
  garden: Garden;
  climates: { before: Climate; after: Climate };
}

/** Looking at records, trying them out and putting them behind a garden. */
export interface RecordDoings {
  /** The record kept behind a garden, whether its climate stands on it or not. */
  weatherRecord(gardenId: string): Promise<WeatherRecord | undefined>;
  /** The one that stood before it. */
  formerRecord(gardenId: string): Promise<WeatherRecord | undefined>;
  /**
   * What a record would do to climate and plan; nothing is kept.
   *
   * @throws {InputRefused} when it is too short to plan by, or crops would come to stand in each other's way
   */
  previewRecord(gardenId: string, change: RecordChange, say?: Say): Promise<RecordPreview>;
  /**
   * Puts a record behind a garden, and has its climate worked out from it: both or neither. The record there was is kept as the
   * former one.
   *
   * @throws {InputRefused} as {@link RecordDoings.previewRecord}; also where it was laid over a record that is not there now
   */
  takeRecord(gardenId: string, change: RecordChange, by: string, say?: Say): Promise<Plan>;
}
