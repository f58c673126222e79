import type { Garden } from '../../src/garden/garden.ts';
import type { Day } from '../../src/measures/days.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import type { Plan } from '../../src/schedule/plan.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { NOTHING_TOLD } from '../garden/nothing-told.ts';

/** A garden worked on Wednesdays and Saturdays, two hours a week. */
export const hollowLane: Garden = {
  id: 'hollow-lane',
  name: 'Hollow Lane',
  startedOn: '2027-01-01',
  place: {
    latitude: 44.5,
    longitude: -88.1,
    timeZone: 'America/Chicago',
    units: 'metric',
    workDays: [3, 6],
    hoursPerWeek: 2,
    soilTexture: 'loam',
    frostRisk: 30,
    bloomRiskPercent: 10,
    frostOffsetDays: 0,
    tempOffsetC: 0,
  },
  climate: { kind: 'nearest' },
  beds: [],
  plantings: [],
  stands: [],
  bins: [],
  piles: [],
  ...NOTHING_TOLD,
};

/** What a test says of a draft; the rest is filled in. */
export type Wanted = Pick<TaskDraft, 'key'> & { window: readonly [Day, Day, Day] } & Partial<Omit<TaskDraft, 'window'>>;

/** A draft: its job is what its key says before the slash, its bed what comes after. */
function draft({ key, window: [earliest, preferred, latest], ...rest }: Wanted): TaskDraft {
  const [kind = '', bed = ''] = key.split('/');
  return {
    key,
    practice: 'cover-cropping',
    kind,
    job: { id: kind, title: kind },
    subject: { type: 'bed', id: bed, name: bed },
    weight: 'work',
    title: `${kind} ${bed}`,
    steps: [],
    cautions: [],
    supplies: [],
    window: { earliest, preferred, latest },
    ifMissed: 'drop',
    missedNote: 'Leave it this year.',
    effortMinutes: 30,
    needs: [],
    after: [],
    confidence: 'derived',
    reasons: [],
    makes: [],
    ...rest,
  };
}

/** The plan of some drafts, as the schedule makes it at noon of a day. */
export function planOf(today: Day, wanted: readonly Wanted[], published?: Plan, garden = hollowLane): Plan {
  const now = `${today}T12:00:00.000Z`;
  return makePlan({ garden, drafts: wanted.map(draft), today, now, factsVersion: 1, published });
}
