/**
 * Beds by seasons as a table: each crop by name and by the pattern of its family, the covers between, and every rule that
 * breaks where it breaks.
 */
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import { fullDay } from '../../digest/words.ts';
import type { Bed } from '../../garden/garden.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { areaOf } from '../../practices/bed-timeline.ts';
import type { TaskKey } from '../../practices/draft.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { type BrokenRule, isHard } from '../../practices/rotation-plan/looked-at.ts';
import { brokenSentence } from '../../practices/rotation-plan/sentences.ts';
import { reasonSentence } from '../../schedule/explain.ts';
import type { Cell, CellCrop, SeasonTable } from '../../steward/bed-plan/season-table.ts';
import { bedPath, editPath, fertilityPath, spotPath } from '../addresses/addresses.ts';
import { BandWord } from '../fertility/ledger.tsx';
import { FamilyLegend, FamilyPatterns, FamilySwatch, familyWord } from '../frame/patterns.tsx';
import { SourceLink, WhyDateIf } from '../frame/why.tsx';

/** Who reads. */
export interface TableReader {
  gardenId: string;
  units: UnitSystem;
  /** Plantings that a proposal made anew would take out. */
  leaving: ReadonlySet<string>;
  /** How beds and seasons come out in nitrogen, as planned. */
  fed: readonly Pick<LedgerTold, 'bedId' | 'season' | 'band'>[];
  /** The task each planting begins with, by the planting's id, while it is in the plan. */
  starts: ReadonlyMap<string, TaskKey>;
}

interface TableProps {
  table: SeasonTable;
  reader: TableReader;
}

/** The table, its legend above it. */
export const SeasonTableView = ({ table: { seasons, rows }, reader }: TableProps) => (
  <>
    <FamilyPatterns />
    <FamilyLegend families={rows.flatMap(({ cells }) => cells.flatMap(({ crops }) => crops.map(familyOf)))} />
    <p class="season-slide small">What was lies to the left, what is to come to the right: slide the table sideways.</p>
    <section class="season-scroll" aria-label="Beds by seasons">
      <table class="season-table">
        <thead>
          <tr>
            <th scope="col">Bed</th>
            {seasons.map(({ name, when }) => (
              <th scope="col" class={`is-${when}`}>
                {name}
                {when === 'now' && <span class="under">this season</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ bed, cells }) => (
            <tr>
              <th scope="row">
                <a href={bedPath(reader.gardenId, bed.id)}>{bed.name}</a>
                <span class="under">{formatQuantity({ value: areaOf(bed), unit: 'm2' }, reader.units)}</span>
              </th>
              {cells.map((cell, at) => (
                <CellView
                  cell={cell}
                  bed={bed}
                  name={seasons[at]?.name ?? String(cell.season)}
                  when={seasons[at]?.when ?? 'past'}
                  reader={reader}
                />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  </>
);

function familyOf({ crop }: CellCrop) {
  return crop.rotationGroup;
}

interface CellProps {
  cell: Cell;
  bed: Bed;
  /** The season as a gardener calls it. */
  name: string;
  when: 'past' | 'now' | 'ahead';
  reader: TableReader;
}

const CellView = ({ cell, bed, name, when, reader }: CellProps) => {
  const { season, crops, covers, broken } = cell;
  const inFront = [...crops].sort((a, b) => Number(b.how === 'proposed') - Number(a.how === 'proposed'));
  return (
    <td class={`is-${when}${isBare(cell, when) ? ' is-bare' : ''}`}>
      <span class="cell-season">
        {name}
        {when === 'now' && <span class="under">this season</span>}
      </span>
      {inFront.length > 0 && (
        <ul class="cell-crops">
          {inFront.map((crop) => (
            <CropView crop={crop} reader={reader} />
          ))}
        </ul>
      )}
      {inFront.length === 0 && (
        <p class="small">
          {emptyWords(cell, when)}
          {when === 'past' && cell.unknown && !cell.notThere && (
            <span class="only-screen">
              {': '}
              <a
                class="cell-link"
                href={editPath(reader.gardenId, 'plantings', undefined, { bed: bed.id })}
                aria-label={`tell what grew in ${bed.name}, ${name}`}
              >
                tell
              </a>
            </span>
          )}
        </p>
      )}
      {covers.map(({ name: cover, planned }) => (
        <p class="cell-cover">
          then {cover}
          {planned ? ', planned' : ''}
        </p>
      ))}
      <Broken broken={broken} past={when === 'past'} units={reader.units} />
      <Fed bed={bed} season={season} reader={reader} />
      {when !== 'past' && !cell.notThere && (
        <p class="cell-change">
          <a
            class="cell-link"
            href={spotPath(reader.gardenId, bed.id, season)}
            aria-label={`Change ${bed.name}, ${name}`}
          >
            change
          </a>
        </p>
      )}
    </td>
  );
};

/** Whether a season gone by has nothing to tell of the bed, so that a narrow page may leave it out. */
function isBare({ crops, covers, broken }: Cell, when: CellProps['when']): boolean {
  return when === 'past' && crops.length + covers.length + broken.length === 0;
}

/** Where a bed would not have enough nitrogen for what is planned, and the way to its arithmetic. */
const Fed = ({ bed, season, reader }: { bed: Bed; season: number; reader: TableReader }) => {
  const found = reader.fed.find((each) => each.bedId === bed.id && each.season === season);
  return found === undefined || found.band === 'enough' ? null : (
    <p class="small">
      <a href={`${fertilityPath(reader.gardenId)}#${bed.id}`}>nitrogen</a>: <BandWord band={found.band} />
    </p>
  );
};

function emptyWords({ unknown, notThere }: Cell, when: CellProps['when']): string {
  if (notThere) return 'not there yet';
  if (unknown) return 'not known';
  return when === 'past' ? 'no crop' : 'open';
}

const HOW_WORDS = { 'in the ground': '', planned: 'planned', proposed: 'proposed' } as const;

const CropView = ({
  crop: each,
  reader: { gardenId, units, leaving, starts },
}: {
  crop: CellCrop;
  reader: TableReader;
}) => {
  const { crop, how, start, areaM2, plantingId, pastUnknown, offSeason } = each;
  const goes = plantingId !== undefined && leaving.has(plantingId);
  const about = [
    goes ? 'planned, would go' : HOW_WORDS[how],
    areaM2 === undefined ? '' : `on ${formatQuantity({ value: areaM2, unit: 'm2' }, units)}`,
  ].filter((part) => part !== '');
  const isToStart = how !== 'in the ground' && start !== undefined;
  return (
    <li class={goes ? 'crop-leaving' : `crop-${how.replaceAll(' ', '-')}`}>
      <FamilySwatch family={crop.rotationGroup} />
      <span class="crop-name">{crop.name}</span>
      <span class="under">
        {[familyWord(crop.rotationGroup), ...about].join('; ')}
        {isToStart && (
          <>
            ; {startWord(crop.id, start.how)}{' '}
            <WhyDateIf gardenId={gardenId} of={plantingId && starts.get(plantingId)}>
              {fullDay(start.day, units)}
            </WhyDateIf>
          </>
        )}
      </span>
      {pastUnknown && <span class="under">kin before it not known</span>}
      {offSeason && (
        <details class="cell-broken is-hard">
          <summary>the day does not fit</summary>
          <ul class="plain">
            {offSeason.map((reason) => (
              <li>{readableIn(units, reasonSentence(reason), '')}</li>
            ))}
          </ul>
        </details>
      )}
    </li>
  );
};

/** What breaks, folded to how much of it. */
const Broken = ({ broken: all, past, units }: { broken: readonly BrokenRule[]; past: boolean; units: UnitSystem }) => {
  const broken = eachOnce(all);
  if (broken.length === 0) return null;
  const hard = broken.filter(isHard).length;
  const word = hard > 0 ? (past ? 'broke a rule' : 'breaks a rule') : 'gives way';
  return (
    <details class={hard > 0 ? 'cell-broken is-hard' : 'cell-broken'}>
      <summary>{broken.length === 1 ? word : `${word}, ${broken.length} in all`}</summary>
      <BrokenList broken={broken} units={units} />
    </details>
  );
};

/** Broken rules without those that read as one before them does: two plantings of a crop break a rule alike. */
function eachOnce(broken: readonly BrokenRule[]): BrokenRule[] {
  const first = new Map<string, BrokenRule>();
  for (const each of broken) {
    const said = brokenSentence(each.reason);
    if (!first.has(said)) first.set(said, each);
  }
  return [...first.values()];
}

interface BrokenProps {
  broken: readonly BrokenRule[];
  units: UnitSystem;
  /** Given where the place does not say which bed it is. */
  beds?: readonly Bed[];
}

/** Broken rules one by one, with where each comes from. */
export const BrokenList = ({ broken, units, beds = [] }: BrokenProps) => (
  <ul class="plain">
    {broken.map((each) => (
      <li>
        {beds.filter(({ id }) => id === each.bedId).map(({ name }) => `${name}: `)}
        {readableIn(units, brokenSentence(each.reason), '')}
        <span class="under">
          {isHard(each) ? 'A rule that may not break' : 'A rule that may give way'};{' '}
          <SourceLink source={each.reason.source} />
        </span>
      </li>
    ))}
  </ul>
);
