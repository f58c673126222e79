import { EMPTY_DRAFT, type SetUpDraft } from '../../src/garden/set-up-draft.ts';

/** A set-up told to its end, but for what may be passed over. */
export function toldDraft(change: Partial<SetUpDraft> = {}): SetUpDraft {
  return {
    ...EMPTY_DRAFT,
    place: { latitude: 43.1, longitude: -89.4, elevationM: 270 },
    climate: { nearest: true },
    about: {
      name: 'Hollow Lane',
      timeZone: 'America/Chicago',
      units: 'us',
      workDays: ['sat'],
      hoursPerWeek: 4,
      soilTexture: 'loam',
    },
    beds: ['bed-1', 'bed-2'].map((id) => ({
      id,
      name: id,
      lengthM: 2.4,
      widthM: 1.2,
      raised: true,
      watered: false,
    })),
    ...change,
  };
}
