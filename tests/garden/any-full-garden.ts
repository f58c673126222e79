/**
 * Gardens in which every key of the garden file may be given.
 */
import fc from 'fast-check';
import { addDays } from '../../src/measures/days.ts';
import { anyGardenData } from './any-garden.ts';

/** The first day that anything in such a garden is on: a bed that is to be there by then holds up nothing. */
const FIRST_DAY = '2026-01-01';

/** Which of the keys that small gardens never have are given: one bit each, drawn anew for every row. */
const drawn = fc.infiniteStream(fc.boolean());

type Row = Record<string, unknown>;

/** Plain data of a garden file that can be read, with any of its keys. */
export const anyFullGarden = fc.tuple(anyGardenData, drawn).map(([data, bits]) => {
  const given = (keys: Row): Row => Object.fromEntries(Object.entries(keys).filter(() => bits.next().value === true));
  const beds = data.beds.map((bed, at): Row => {
    const made = given({ filledOn: FIRST_DAY, pathsM2: 2.5 });
    const planned = bits.next().value === true ? { plannedFor: FIRST_DAY, depthM: 0.3, ...made } : {};
    return { ...bed, id: `bed.${at}`, ...given({ topdressingMm: 25, soilTexture: 'sandy_loam' }), ...planned };
  });
  const plantings = data.plantings.map((row, at): Row => {
    const start = startOf(row);
    const again = row.crop === 'carrot' ? given({ again: { everyDays: 14, times: 2 } }) : {};
    return { ...row, id: `crop-${at}`, ...given({ meant: addDays(start, 3), indoors: addDays(start, -40) }), ...again };
  });
  const coverStands = data.coverStands.map((row, at): Row => {
    const on = addDays(row.sow as string, 30);
    const kind = 'oats';
    return {
      ...row,
      ...given({
        id: `stand-${at}`,
        seen: [
          { cover: kind, on, stage: 'in-bloom', modelled: addDays(on, 2) },
          { cover: kind, on, stage: 'first-buds' },
        ],
        looked: [
          { on, covered: 'a-third', weedy: true },
          { on, covered: 'nearly-all' },
        ],
        resown: [
          { cover: kind, on },
          { mix: 'rye-vetch', on },
        ],
        seed: [{ cover: kind, on, grams: 120.5 }],
      }),
    };
  });
  const piles = data.piles.map((row, at): Row => {
    const on = addDays(row.built as string, 20);
    const readings = [{ on, at: '14:30', tempC: 55.5, pests: true, slumped: true, moisture: 'wet', smell: 'ammonia' }];
    return { ...row, id: `pile-${at}`, ...given({ readings, notReady: [{ on, failed: ['smells', 'coarse'] }] }) };
  });
  const [pile, crop] = [piles[0]?.id, plantings[0]?.id];
  return {
    ...data,
    garden: { ...data.garden, ...given({ id: 'any-garden' }) },
    beds,
    plantings,
    coverStands,
    household: data.household && {
      ...data.household,
      ...(data.household.members && {
        members: data.household.members.map((row, at): Row => ({ ...row, ...given({ id: `member-${at}` }) })),
      }),
    },
    bins: data.bins.map((bin): Row => ({ ...bin, id: 'bin-1', ...given({ closed: true }) })).slice(0, 1),
    piles: piles.map((row) => ({ ...row, bin: 'bin-1' })),
    topdressed: data.topdressed.map((row) =>
      row.material === undefined && pile !== undefined ? { ...row, ...given({ piles: [pile] }) } : row,
    ),
    fed: data.fed.map((row) => (crop === undefined ? row : { ...row, ...given({ planting: crop }) })),
    compostBought: data.compostBought.map((row) => ({
      ...row,
      ...given({ ordered: true, tested: addDays(row.on, 9) }),
    })),
    soilTests: data.soilTests.map((row) => ({ ...row, ...given({ organicMatterPercent: 4.5, phosphorusPpm: 18 }) })),
    mulches: data.mulches.map((row) => ({ ...row, ...given({ to: addDays(row.from as string, 40) }) })),
  };
});

function startOf(row: { sow?: unknown; setOut?: unknown }): string {
  return String(row.sow ?? row.setOut);
}
