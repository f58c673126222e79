/**
 * Everything that is told of a bed, each with the way to change it, and the ways to tell more.
 */
import { fullDay } from '../../digest/words.ts';
import { gardenFileOf } from '../../garden/export-garden-file.ts';
import type { Bed } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { deletePath, editPath } from '../addresses/addresses.ts';
import type { BedKind } from '../edit/kinds/of-a-bed.ts';
import { bedOf } from '../edit/kinds/of-a-bed.ts';
import { refOf, rowsOf } from '../edit/kinds/rows.ts';
import { bedKinds } from '../edit/kinds.ts';

interface ToldProps {
  view: GardenView;
  bed: Bed;
}

/** The section of a bed's page. */
export const ToldOfBed = ({ view, bed }: ToldProps) => {
  const { garden } = view;
  const { units } = garden.place;
  const sides = [bed.lengthM, bed.widthM].map((value) => formatQuantity({ value, unit: 'm' }, units)).join(' by ');
  const file = gardenFileOf(garden);
  const kinds = bedKinds.map((kind) => ({ kind, rows: toldRows(kind, file, { view, bed }) }));
  return (
    <section class="told-of" id="told">
      <h2>What is told of this bed</h2>
      <p>
        {bed.name}, {sides}: <a href={editPath(garden.id, 'beds', bed.id)}>change it</a> or{' '}
        <a href={deletePath(garden.id, 'beds', bed.id)}>take it out</a>.
      </p>
      {kinds.every(({ rows }) => rows.length === 0) && (
        <p>
          Nothing else is told of it yet. Begin with what grows here now; what grew here before is the past that the
          rotation goes by.
        </p>
      )}
      <dl>
        {kinds.map(({ kind, rows }) => (
          <>
            <dt>{kind.heading}</dt>
            <dd>
              <Rows kind={kind} rows={rows} view={view} />
              <a href={editPath(garden.id, kind.list, undefined, filledFor(kind, bed, view))}>Add a {kind.word}</a>
            </dd>
          </>
        ))}
      </dl>
    </section>
  );
};

/** What a form about something new of a bed is filled in with. */
function filledFor({ of }: BedKind, bed: Bed, { garden }: GardenView): Record<string, string> {
  return of === 'soilSqueezes' ? { soilTexture: bed.soilTexture ?? garden.place.soilTexture } : { bed: bed.id };
}

/** The rows of a kind that are about a bed, the newest first. */
function toldRows(kind: BedKind, file: GardenFile, { view, bed }: ToldProps): object[] {
  return rowsOf(kind, file)
    .filter((row) => kind.isOf?.(row as never, bed.id, view.garden) ?? bedOf(row) === bed.id)
    .sort((a, b) => (kind.dayOf(a as never) > kind.dayOf(b as never) ? -1 : 1));
}

/** Lines shown of each kind before the older ones are folded away. House default: two seasons of a full bed. */
const SHOWN = 6;

const Rows = ({ kind, rows, view }: { kind: BedKind; rows: readonly object[]; view: GardenView }) => {
  const [newer, older] = [rows.slice(0, SHOWN), rows.slice(SHOWN)];
  return (
    <>
      {newer.length > 0 && <RowList kind={kind} rows={newer} view={view} />}
      {older.length > 0 && (
        <details>
          <summary>{older.length} older</summary>
          <RowList kind={kind} rows={older} view={view} />
        </details>
      )}
    </>
  );
};

const RowList = ({ kind, rows, view: { garden } }: { kind: BedKind; rows: readonly object[]; view: GardenView }) => (
  <ul>
    {rows.map((row) => (
      <li>
        {fullDay(kind.dayOf(row as never), garden.place.units)}: {kind.wordsOf(row as never, garden)}{' '}
        <a
          href={editPath(garden.id, kind.list, refOf(kind, row))}
          aria-label={`change: ${kind.titleOf(row as never, garden)}`}
        >
          change
        </a>
      </li>
    ))}
  </ul>
);
