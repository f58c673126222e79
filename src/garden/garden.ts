/**
 * The nouns of a garden, as they stand after every fact of its ledger has been folded in.
 *
 * Plans and facts are told apart: `plannedSow` is a date somebody means to keep, `sownOn` one that happened. All
 * values are SI; days are in the garden's own zone.
 */
import type { Day, MonthDay, Weekday } from '../measures/days.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { FrostCover, Household, SeedPacket } from './household.ts';
import type { LoggedDay } from './weather.ts';

/** Soil textures a garden may name; water figures for each are in the handbook. */
export type SoilTextureId =
  | 'sand'
  | 'loamy_sand'
  | 'sandy_loam'
  | 'loam'
  | 'silt_loam'
  | 'silt'
  | 'silt_clay_loam'
  | 'silty_clay'
  | 'clay';

/** What the climate is to be worked out from. */
export type ClimateChoice =
  | { kind: 'daily-record'; file: string }
  | { kind: 'station'; station: string }
  | { kind: 'nearest' }
  | { kind: 'monthly-normals'; highC: readonly number[]; lowC: readonly number[]; precipMm: readonly number[] }
  | { kind: 'frost-dates'; lastSpring: MonthDay; firstAutumn: MonthDay };

/** Where the garden lies and how its household works. */
export interface Place {
  latitude: number;
  longitude: number;
  elevationM?: number;
  /** IANA zone, "America/Chicago". */
  timeZone: string;
  /** Zone the gardener states, "5b"; the climate's own wins in nothing but is shown beside it. */
  hardinessZone?: string;
  units: UnitSystem;
  workDays: readonly Weekday[];
  hoursPerWeek: number;
  soilTexture: SoilTextureId;
  /** Percent odds of a freeze to plan tender things by. */
  frostRisk: 10 | 30 | 50;
  /** Percent odds that a cover has flowered by the last day of its cut. */
  bloomRiskPercent: number;
  /** Days the freeze-free season is shorter at each end here than at the record (negative: a warm wall). */
  frostOffsetDays: number;
  /** Degrees the garden is warmer than the record (negative: a cold pocket). */
  tempOffsetC: number;
}

/**
 * A bed: its floor in metres, and its soil where that is not the garden's. One that is still to be made has the day it is
 * meant to be there by.
 */
export interface Bed {
  id: string;
  name: string;
  lengthM: number;
  widthM: number;
  depthM?: number;
  raised: boolean;
  watered: boolean;
  soilTexture?: SoilTextureId;
  /** The depth of its yearly layer of compost, where the household gives it another than its other beds. */
  topdressingMm?: number;
  /** The day it is meant to be there, for a bed that was not there when it was first written down. */
  plannedFor?: Day;
  /** The day it was filled; absent while it is still to come. */
  filledOn?: Day;
  /** Paths beside it that topsoil can be scooped from, m²; absent where nobody measured them. */
  pathsM2?: number;
}

/** One crop in one bed. Past seasons are the rotation's history. */
export interface Planting {
  id: string;
  bedId: string;
  cropId: string;
  /** The day it goes, or went, into the bed. */
  start: {
    how: 'sow' | 'set-out';
    day: Day;
    happened: boolean;
    /** The day it was meant for, where it went in on another. */
    meant?: Day;
  };
  /** The day its plants were sown under a roof; absent for seed sown in the bed, and while nobody told. */
  indoorsOn?: Day;
  /** The last harvest, expected or past. Absent: worked out from days to maturity. */
  lastHarvest?: { day: Day; happened: boolean };
  /** The share of its bed it takes, m², beside other crops. Absent: the whole bed. */
  areaM2?: number;
}

/** A cover crop standing, or meant to stand, in a bed. */
export interface Stand {
  id: string;
  bedId: string;
  /** Id of a cover or of a mix of covers in the handbook. */
  coverId: string;
  sow: { day: Day; happened: boolean };
  cutOn?: Day;
  /** Days on which a look after the cut found nothing green. */
  regrowthCheckedOn: readonly Day[];
  /** That it grew again after its cut, and what was done about it, oldest first. */
  regrowth?: readonly Regrowth[];
  /** Stages of its flowering that were seen, oldest first. */
  seen?: readonly StageSeen[];
  /** Looks at it while it was young, oldest first. */
  looked?: readonly StandLook[];
  /** Days on which its thin places were sown again, with which cover or mix, oldest first. */
  resown?: readonly { on: Day; coverId: string }[];
  /** Seed that went into it, of each kind by itself, oldest first; absent where nobody told. */
  seed?: readonly SeedSown[];
  /** The day the stand was seen dead after winter. */
  deadOn?: Day;
}

/** Seed of one kind that was sown. */
export interface SeedSown {
  /** A cover of the handbook: of a mix, one of its kinds. */
  coverId: string;
  on: Day;
  grams: number;
}

/** What a look at a young stand found. */
export interface StandLook {
  on: Day;
  /** The share of the ground that showed green. */
  covered: 'hardly-any' | 'a-third' | 'two-thirds' | 'nearly-all';
  /** Whether weeds came up among it in number. */
  weedy: boolean;
}

/** A cut stand that grew again, with what the gardener means to do then, or what was done about it. */
export type Regrowth =
  | { on: Day; what: 'grew-again'; answer?: 'cut' | 'sheet' }
  | { on: Day; what: 'cut-again' | 'sheet-laid' | 'sheet-lifted' };

/** Mulch meant for a span of a bed, with no cover there. */
export interface MulchPlan {
  bedId: string;
  from: Day;
  /** The day after it; absent where nothing else is planned. */
  to?: Day;
  mulch: 'leaves' | 'straw';
}

/** A stage of a cover's flowering that was seen in a stand. */
export interface StageSeen {
  /** The kind it was seen on: one of a mix. */
  coverId: string;
  on: Day;
  stage: 'first-buds' | 'in-bloom';
  /** The day the figures had for its flowering when it was seen, where they had one. */
  modelled?: Day;
}

/** A compost bin. */
export interface Bin {
  id: string;
  name: string;
  volumeL: number;
  /** Closed all round, with a lid: for scraps, and counted as a vessel where it is large. */
  closed?: true;
}

/** How a squeezed handful of compost feels. */
export type MoistureFeel = 'dry' | 'damp' | 'wet';
/** How a pile smells: earthy is well, ammonia is too much nitrogen, sour is too little air. */
export type PileSmell = 'earthy' | 'ammonia' | 'sour';

/** One look at a pile. */
export interface PileReading {
  on: Day;
  /** The hour, by the clock of the garden, such as 14:30; absent where nobody noted it. */
  at?: string;
  tempC?: number;
  moisture?: MoistureFeel;
  smell?: PileSmell;
  /** Flies, rats or mice were at it. */
  pests?: true;
  /** It has sunk together, so that little air is left in it. */
  slumped?: true;
}

/** A look that found compost not ready: it heats again, smells in the bag, or can still be told apart. */
export interface NotReady {
  on: Day;
  failed: readonly ('heats' | 'smells' | 'coarse')[];
}

/** A compost pile, built or planned, with its log: turns and readings oldest first. */
export interface Pile {
  id: string;
  binId: string;
  built: { day: Day; happened: boolean };
  method: 'hot' | 'cold';
  ingredients: readonly { materialId: string; litres: number }[];
  readings: readonly PileReading[];
  turns: readonly Day[];
  /** Looks that found it not ready yet, oldest first. */
  notReady?: readonly NotReady[];
  /** The day it was moved to cure. */
  curingSince?: Day;
  finishedOn?: Day;
  /** Litres of finished compost still there, when somebody measured it. */
  finishedLitres?: number;
}

/** How the yearly layer of compost is given. */
export interface TopdressingHabit {
  depthMm: number;
  season: 'spring' | 'autumn';
}

/** Compost spread on a bed, or a raw material laid on it. */
export interface Topdressed {
  bedId: string;
  on: Day;
  litres: number;
  /** The piles it came from, where that was told. */
  pileIds?: readonly string[];
  /** A feedstock of the handbook, where it was no compost but that: raw manure. */
  materialId?: string;
}

/** A fertiliser strewn on a bed. */
export interface BedFed {
  bedId: string;
  on: Day;
  /** A fertiliser of the handbook. */
  fertiliserId: string;
  grams: number;
  /** The crop it was strewn for, on its ground alone; absent where it was for the whole bed. */
  plantingId?: string;
}

/** Compost got from elsewhere: delivered on a day, or `ordered` on it and still to come. */
export interface CompostBought {
  on: Day;
  litres: number;
  ordered?: true;
  /** The day beans were seen to grow well in it. */
  tested?: Day;
}

/** A span of days with nobody there to work. */
export interface Away {
  from: Day;
  to: Day;
}

/** A soil sample taken, of one bed or of the garden, and what the laboratory found where it has answered. */
export interface SoilTest {
  on: Day;
  bedId?: string;
  organicMatterPercent?: number;
  phosphorusPpm?: number;
  ph?: number;
}

/** A handful of soil squeezed: it crumbles when it is fit to work and smears when it is too wet. */
export interface SoilSqueeze {
  on: Day;
  soilTexture: SoilTextureId;
  answer: 'crumbles' | 'smears';
}

/** A crop wanted for seasons to come: so many whole beds, or so many square metres. */
export interface CropWish {
  cropId: string;
  amount: { beds: number } | { areaM2: number };
  /** The season it is wanted in, by the calendar year it starts in; absent for every season planned. */
  season?: number;
}

/** A disease that was found on a crop in a bed. */
export interface DiseaseFound {
  bedId: string;
  cropId: string;
  /** Its name in the gardener's words. */
  disease: string;
  on: Day;
}

/** How cold a night is expected to be, or was, by the evening it begins on. */
export interface ColdNight {
  evening: Day;
  lowC: number;
  how: 'expected' | 'measured';
}

/** A task the gardener did, as it stood when it was done. */
export interface DoneMark {
  key: string;
  on: Day;
  practice: string;
  kind: string;
  title: string;
  job: { id: string; title: string };
  subject: Subject;
  effortMinutes: number;
  /** The part of it that was spent once, however many of its job were done that day. */
  onceMinutes?: number;
  /** Ledger entry that says so. */
  entry: number;
}

/** What a task is about. */
export type Subject =
  | { type: 'bed'; id: string; name: string }
  /** `grows` is the cover or crop in words and `bedName` its bed's: a title over several says each once. */
  | {
      type: 'stand' | 'planting';
      id: string;
      name: string;
      bedId: string;
      grows?: string | undefined;
      bedName?: string | undefined;
    }
  | { type: 'pile'; id: string; name: string; binId: string }
  | { type: 'garden'; id: string; name: string };

/** A garden as its facts leave it: lists of dated things oldest first where a fact may add to them. */
export interface Garden {
  id: string;
  name: string;
  /** The day the garden was first brought in: what lies before it is history, not work. */
  startedOn: Day;
  place: Place;
  climate: ClimateChoice;
  beds: readonly Bed[];
  plantings: readonly Planting[];
  stands: readonly Stand[];
  mulches: readonly MulchPlan[];
  bins: readonly Bin[];
  piles: readonly Pile[];
  topdressing?: TopdressingHabit;
  topdressed: readonly Topdressed[];
  fed: readonly BedFed[];
  compostBought: readonly CompostBought[];
  away: readonly Away[];
  household?: Household;
  gear: readonly FrostCover[];
  seeds: readonly SeedPacket[];
  wishes: readonly CropWish[];
  soilTests: readonly SoilTest[];
  soilSqueezes: readonly SoilSqueeze[];
  diseases: readonly DiseaseFound[];
  coldNights: readonly ColdNight[];
  /** The garden's own weather, oldest first: see weather.ts. */
  weather: readonly LoggedDay[];
  done: readonly DoneMark[];
  /** Keys of skipped tasks, with the day they were skipped. */
  skipped: Readonly<Record<string, Day>>;
  /** Days the gardener pinned tasks to. */
  pins: Readonly<Record<string, Day>>;
  /** Who tasks were given to: the name of a member, by the key of the task. */
  assigned: Readonly<Record<string, string>>;
  /** The last day up to which each task that was put off is not to be done. */
  putOff: Readonly<Record<string, Day>>;
}
