/**
 * The columns of the model: which crop stands in which bed in which season, on how much of it, and which family that is.
 */
import type { RotationGroup } from '../../handbook/shapes/plant.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { isPermanent } from '../bed-timeline.ts';
import type { ModelSheet } from './model.ts';
import { type Entry, entriesOf, type PlanBed, type PlanWish, type RotationProblem } from './problem.ts';
import { LEAST_PIECE_M2 } from './rules.ts';
import { openWishes } from './wishes.ts';

/** A crop that may stand in a bed in a season. */
export interface Place {
  bed: PlanBed;
  wish: PlanWish;
  entry: Entry;
  /** 1 where it stands there. */
  column: number;
  /** Its square metres; absent for a wish of whole beds. */
  areaColumn?: number;
}

/** Whether something stands in a bed: for certain, or as a column says. */
export type Stands = 'certain' | { column: number };

/** Everything the rules of the model look at. */
export interface Grid {
  problem: RotationProblem;
  wishes: readonly PlanWish[];
  places: readonly Place[];
  /** What may be placed in a bed in a season. */
  placesIn(bed: PlanBed, season: number): readonly Place[];
  /** What stands there for certain, in order. */
  certainIn(bed: PlanBed, season: number): readonly Entry[];
  /** Whether a family does; nothing where it cannot. */
  familyIn(bed: PlanBed, season: number, group: RotationGroup): Stands | undefined;
  /** The columns that stand for a family of several crops, each with those of its crops. */
  families: readonly FamilyColumn[];
}

/** A column that is 1 where any of some others is. */
export interface FamilyColumn {
  column: number;
  members: readonly number[];
}

/** Writes the columns of a problem. */
export function gridOf(sheet: ModelSheet, problem: RotationProblem): Grid {
  const wishes = openWishes(problem);
  const places = problem.beds.flatMap((bed) => wishes.map((wish) => placeOf(sheet, bed, wish)));
  const byBed = grouped(places, ({ bed, wish }) => `${bed.id} ${wish.season}`);
  const certain = grouped(
    problem.beds.flatMap((bed) => entriesOf(problem, bed, []).map((entry) => ({ bed, entry }))),
    ({ bed, entry }) => `${bed.id} ${entry.season}`,
  );
  const placesIn = (bed: PlanBed, season: number) => byBed.get(`${bed.id} ${season}`) ?? [];
  const certainIn = (bed: PlanBed, season: number) =>
    (certain.get(`${bed.id} ${season}`) ?? []).map(({ entry }) => entry);
  const families: FamilyColumn[] = [];
  const known = new Map<string, Stands | undefined>();
  const familyIn = (bed: PlanBed, season: number, group: RotationGroup): Stands | undefined => {
    const key = `${bed.id} ${season} ${group}`;
    if (!known.has(key))
      known.set(key, familyOf(sheet, families, [certainIn(bed, season), placesIn(bed, season)], group));
    return known.get(key);
  };
  return { problem, wishes, places, placesIn, certainIn, familyIn, families };
}

function placeOf(sheet: ModelSheet, bed: PlanBed, wish: PlanWish): Place {
  const column = sheet.column({ whole: true });
  const entry: Entry = { season: wish.season, crop: vegetableById(wish.cropId), how: 'proposed' };
  if ('beds' in wish.amount) return { bed, wish, entry, column };
  const most = Math.min(bed.areaM2, wish.amount.areaM2);
  const areaColumn = sheet.column({ upper: most });
  sheet.row(
    [
      [areaColumn, 1],
      [column, -most],
    ],
    { most: 0 },
  );
  sheet.row(
    [
      [areaColumn, 1],
      [column, -Math.min(LEAST_PIECE_M2, most)],
    ],
    { least: 0 },
  );
  return { bed, wish, entry, column, areaColumn };
}

function familyOf(
  sheet: ModelSheet,
  families: FamilyColumn[],
  [certain, places]: readonly [readonly Entry[], readonly Place[]],
  group: RotationGroup,
): Stands | undefined {
  if (certain.some(({ crop }) => crop.rotationGroup === group && !isPermanent(crop))) return 'certain';
  const members = places.filter(({ entry }) => entry.crop.rotationGroup === group);
  const [only, ...others] = members;
  if (only === undefined) return undefined;
  if (others.length === 0) return { column: only.column };
  const column = sheet.column({});
  families.push({ column, members: members.map((member) => member.column) });
  const areas = members.map(
    (member) => [member.areaColumn ?? member.column, member.areaColumn === undefined ? member.bed.areaM2 : 1] as const,
  );
  sheet.row([...areas, [column, -only.bed.areaM2]], { most: 0 });
  for (const member of members)
    sheet.row(
      [
        [column, 1],
        [member.column, -1],
      ],
      { least: 0 },
    );
  return { column };
}

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const held = groups.get(key);
    if (held) held.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
