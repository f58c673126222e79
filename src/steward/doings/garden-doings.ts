/**
 * What is done with whole gardens.
 */
import type { PutAway } from '../../store/gardens.ts';

/** What a steward does with whole gardens. */
export interface GardenDoings {
  /** The gardens that are put away, the latest first. */
  gardensPutAway(): Promise<PutAway[]>;
  /** Puts a garden away: no longer shown, planned or mailed, its feeds closed. Returns whether that changed anything. */
  putAwayGarden(gardenId: string): Promise<boolean>;
  /** Gives one back as it was, its feeds at their addresses. Returns whether that changed anything. */
  giveBackGarden(gardenId: string): Promise<boolean>;
  /** The demo garden, as it is, given back, or laid; returns its id. */
  showDemo(): Promise<string>;
}
