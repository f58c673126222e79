/**
 * What grows in a bed one after another, each with how that is known.
 */
import { fullDay } from '../../digest/words.ts';
import type { Bed, Stand } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type CropSpan, cropSpans } from '../../practices/bed-timeline.ts';
import type { BedGaps } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { COVERED_WORDS, lastLook, standName } from '../../practices/stand-cover.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { editPath } from '../addresses/addresses.ts';
import { AskedDates } from '../frame/why.tsx';
import { grownTasks, grownWay } from './grown-tasks.ts';

interface GrowsHereProps {
  view: GardenView;
  bed: Bed;
  stands: BedGaps['stands'];
  /** Whether the bed is still to be made. */
  isNew: boolean;
}

/** The crops and covers of a bed in the order of their days. */
export const GrowsHere = ({ view, bed, stands, isNew }: GrowsHereProps) => {
  const rows = grownRows(view, bed, stands);
  return (
    <>
      <h2>What grows here</h2>
      {rows.length === 0 ? (
        <p>
          {isNew
            ? 'Nothing is planned for it yet. It has no past, so that no crop family has to wait. '
            : 'Nothing is known of this bed yet. Add what grows here, and what grew before, further below. '}
          <a href="#told">What is told of it</a>
        </p>
      ) : (
        <GrownTable view={view} rows={rows} />
      )}
    </>
  );
};

/** A crop or a cover in a bed. */
interface GrownRow {
  id: string;
  kind: keyof typeof LIST_OF;
  from: Day;
  /** Absent of what stays. */
  to: Day | undefined;
  what: string;
  how: string;
}

/** The list of the garden each kind is told in. */
const LIST_OF = { crop: 'plantings', cover: 'cover-stands' } as const;

function grownRows({ garden, climate }: GardenView, bed: Bed, stands: BedGaps['stands']): GrownRow[] {
  const crops = cropSpans(garden, bed.id, climate).map((span) => ({
    id: span.planting.id,
    kind: 'crop' as const,
    from: span.from,
    to: span.to,
    what: span.crop.name,
    how: howItEnds(span),
  }));
  const covers = stands.map(({ stand, from, ends }) => ({
    id: stand.id,
    kind: 'cover' as const,
    from,
    to: ends,
    what: `Cover: ${standName(stand)}`,
    how: howItStands(stand, garden.place.units),
  }));
  return [...crops, ...covers].sort((a, b) => (a.from < b.from ? -1 : 1));
}

const GrownTable = ({ view: { garden, plan }, rows }: { view: GardenView; rows: readonly GrownRow[] }) => {
  const { units } = garden.place;
  const grown = grownTasks(plan);
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">From</th>
          <th scope="col">To</th>
          <th scope="col">How that is known</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ from, to, what, how, ...row }) => (
          <tr>
            <th scope="row">{what}</th>
            <td>
              <AskedDates text={fullDay(from, units)} to={grownWay(garden.id, grown, 'start', row)} />
            </td>
            <td>
              <AskedDates
                text={to === undefined ? 'stays' : fullDay(to, units)}
                to={grownWay(garden.id, grown, 'end', row)}
              />
            </td>
            <td>
              <AskedDates text={how} to={editPath(garden.id, LIST_OF[row.kind], row.id)} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

function howItStands(stand: Stand, units: UnitSystem): string {
  const look = lastLook(stand);
  if (look === undefined) return stand.sow.happened ? 'sown' : 'planned';
  return `sown; ${COVERED_WORDS[look.covered]} of the ground green on ${fullDay(look.on, units)}`;
}

function howItEnds({ end }: CropSpan): string {
  switch (end) {
    case 'happened':
      return 'happened';
    case 'frozen':
      return 'likely killed by a measured night';
    case 'stated':
      return 'as stated';
    case 'days to maturity':
      return 'last harvest by days to maturity';
    case 'first freeze':
      return 'ended by the first freeze, middle year';
    case 'permanent':
      return 'stays in the bed';
    default:
      return end satisfies never;
  }
}
