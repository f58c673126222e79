/**
 * From a garden being set up to its climate and its garden file.
 */
import type { Climate } from '../../climate/climate.ts';
import type { ClimateChoice, Garden, Place } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { checkGardenFile } from '../../garden/read-garden-file.ts';
import type { DraftClimate, SetUpDraft, SetUpStep } from '../../garden/set-up-draft.ts';
import { zoneAt } from '../../garden/time-zone.ts';
import type { Day } from '../../measures/days.ts';
import { pastPlantings } from './past-crops.ts';

/** What a garden file says of a place where the draft does not ask: what the file has where it is left out. */
const UNASKED = { frostRisk: 30, bloomRiskPercent: 10, frostOffsetDays: 0, tempOffsetC: 0 } as const;

/** Steps a garden cannot be made without and that are still to be told. */
export function missingSteps(draft: SetUpDraft): SetUpStep[] {
  const told: Readonly<Partial<Record<SetUpStep, boolean>>> = {
    where: draft.place !== undefined,
    climate: draft.climate !== undefined,
    garden: draft.about !== undefined,
    beds: draft.beds.length > 0,
  };
  return (Object.keys(told) as SetUpStep[]).filter((step) => !told[step]);
}

/** Where a draft lies and how it wants to be planned, with what is not told yet as a garden file has it. */
function placeOf({ place, about }: SetUpDraft): Place | undefined {
  if (place === undefined) return undefined;
  const { latitude, longitude, elevationM } = place;
  return {
    latitude,
    longitude,
    ...(elevationM === undefined ? {} : { elevationM }),
    timeZone: about?.timeZone ?? zoneAt(place) ?? 'UTC',
    units: about?.units ?? 'metric',
    workDays: [6, 7],
    hoursPerWeek: about?.hoursPerWeek ?? 4,
    soilTexture: about?.soilTexture ?? 'loam',
    ...UNASKED,
  };
}

/** What its climate is worked out from; nothing while place or climate are not told. */
export function climateGround(draft: SetUpDraft): Pick<Garden, 'place' | 'climate'> | undefined {
  const place = placeOf(draft);
  if (place === undefined || draft.climate === undefined) return undefined;
  return { place, climate: choiceOf(draft.climate) };
}

function choiceOf(climate: DraftClimate): ClimateChoice {
  if ('station' in climate) return { kind: 'station', station: climate.station };
  if ('nearest' in climate) return { kind: 'nearest' };
  return { kind: 'frost-dates', ...climate.frostDates };
}

/**
 * The garden file of a draft in which nothing is missing.
 *
 * @throws {InputRefused} with every problem, as a garden file that is read is refused
 */
export function fileOfDraft(draft: SetUpDraft, { climate, today, id }: FileGround): GardenFile {
  const { place, about } = draft;
  const { latitude, longitude, elevationM } = place ?? {};
  return checkGardenFile({
    garden: {
      ...(id === undefined ? {} : { id }),
      ...about,
      latitude,
      longitude,
      ...(elevationM === undefined ? {} : { elevationM }),
    },
    climate: draft.climate,
    beds: draft.beds,
    bins: draft.bins,
    plantings: [...pastPlantings(draft.past, climate, today), ...draft.plantings],
    coverStands: draft.stands,
    piles: draft.piles,
  });
}

/** What a draft's file is made with besides the draft. */
export interface FileGround {
  climate: Climate;
  today: Day;
  /** The garden's id; made from its name where it is left out. */
  id?: string;
}
