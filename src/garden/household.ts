/**
 * Who lives from a garden and works in it, and what they have in the shed.
 */
import type { Day, Weekday } from '../measures/days.ts';
import type { PracticeName } from './practice-names.ts';

/** The weekly list that a member gets by mail. */
export interface MemberMail {
  /** Their address. */
  to: string;
  /** The address it comes from; that of the settings when left out. */
  from?: string;
  weekday: Weekday;
  /** The hour it is sent at, 0 to 23 on the garden's own clock. */
  hour: number;
  /** Whether it holds their own work or everybody's. */
  tasks: 'own' | 'all';
}

/** Somebody of the household, which of the work is theirs, and the mail they get. */
export interface Member {
  /** Stays theirs whatever they are called, and is never given to anybody else. */
  id: string;
  name: string;
  /** The practices they see to; all when left out. */
  practices?: readonly PracticeName[];
  /** The beds they work on, by id; all when left out. */
  beds?: readonly string[];
  /** The weekly list by mail; none when left out. */
  mail?: MemberMail;
}

/** Who eats from the garden, who works in it, and what greens they bring to the pile besides the kitchen's. */
export interface Household {
  people?: number;
  /** Litres of grass clippings put on the pile in a week of mowing. */
  clippingsL?: number;
  /** Litres of cut covers carried to the pile in a year; the plan leaves them lying on their beds. */
  coverCutsL?: number;
  /** Who does what, each by a name of their own. */
  members?: readonly Member[];
}

/** Covers against frost that the household owns, by kind: single fabric light or heavy, or fabric with film over it. */
export interface FrostCover {
  what: 'light-fabric' | 'heavy-fabric' | 'fabric-and-film';
  areaM2: number;
}

/** Seed in the drawer: of a crop or a cover, with the year it was packed for. */
export interface SeedPacket {
  plant: { kind: 'crop' | 'cover'; id: string };
  packedYear: number;
  /** What it held on a day: when it was ordered, bought or weighed. Absent where nobody knows. */
  held?: { grams: number; on: Day };
}
