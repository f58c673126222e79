import { describe, expect, it } from 'vitest';
import { demoGardenFile } from '../../demo-data/demo-garden.ts';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import { isStillToBeMade } from '../../src/garden/planned-beds.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { vegetableById } from '../../src/handbook/vegetables.ts';
import { addDays, type Day, daysBetween, yearOf } from '../../src/measures/days.ts';
import { type CropSpan, cropSpans } from '../../src/practices/bed-timeline.ts';
import { ANCHORS, demoClimate, demoGarden } from './demo-season.ts';

/** Years two crops of one family must lie apart, measured from planting to planting. */
function yearsApart(a: CropSpan, b: CropSpan): number {
  return Math.round(daysBetween(a.from, b.from) / 365.25);
}

const spansOf = (anchor: Day) => {
  const garden = demoGarden(anchor);
  return garden.beds.map((bed) => cropSpans(garden, bed.id, demoClimate));
};

/** Whether a span is the same crop in the same season, each sowing on a share of the bed. */
function isSownAgain(earlier: CropSpan, { crop, from, planting }: CropSpan): boolean {
  const shared = earlier.planting.areaM2 !== undefined && planting.areaM2 !== undefined;
  return shared && earlier.crop.id === crop.id && yearOf(earlier.from) === yearOf(from);
}

describe.each(ANCHORS)('the demo garden laid around %s', (anchor) => {
  const garden = demoGarden(anchor);

  it('has twelve beds and one to be made next spring, three bins with a pile each, and four seasons of crops', () => {
    expect(garden.beds.filter(({ plannedFor }) => plannedFor === undefined)).toHaveLength(12);
    expect(garden.beds.filter(isStillToBeMade).map(({ plannedFor }) => yearOf(plannedFor ?? ''))).toEqual([
      yearOf(anchor) + 1,
    ]);
    expect(garden.bins).toHaveLength(3);
    expect(new Set(garden.piles.map(({ binId }) => binId)).size).toBe(3);
    const years = garden.plantings.filter(({ cropId }) => cropId !== 'asparagus').map(({ start }) => yearOf(start.day));
    const season = yearOf(anchor);
    for (const year of [season - 2, season - 1, season, season + 1])
      expect(years.filter((each) => each === year).length).toBeGreaterThanOrEqual(11);
  });

  it('never has two crops in one bed at a time, but for sowings of one crop that share it', () => {
    for (const spans of spansOf(anchor))
      for (const [index, next] of spans.entries()) {
        const before = spans[index - 1];
        if (before && !isSownAgain(before, next))
          expect(before.to ?? 'permanent', next.planting.id).toSatisfy((end: string) => end < next.from);
      }
  });

  it('sows no cover under a crop, and cuts none after the next crop is in', () => {
    for (const { id, bedId, sow, cutOn } of garden.stands)
      for (const { from, to = from } of cropSpans(garden, bedId, demoClimate)) {
        expect(sow.day < from || sow.day > to, `${id} and a crop of ${from}`).toBe(true);
        expect(cutOn !== undefined && sow.day < from && cutOn >= from, `${id} cut after ${from}`).toBe(false);
      }
  });

  it('lets no family come back to a bed before its years are over', () => {
    for (const spans of spansOf(anchor))
      for (const [index, span] of spans.entries())
        for (const earlier of spans.slice(0, index))
          if (earlier.crop.rotationGroup === span.crop.rotationGroup && !isSownAgain(earlier, span))
            expect(yearsApart(earlier, span), span.planting.id).toBeGreaterThanOrEqual(span.crop.rotationYears);
  });

  it('holds nothing back and makes nothing up: what is past has happened, what is not is a plan', () => {
    for (const { start, lastHarvest } of garden.plantings) {
      expect(start.happened).toBe(start.day <= anchor);
      if (lastHarvest) expect(lastHarvest.happened).toBe(lastHarvest.day <= anchor);
    }
    for (const { sow, cutOn = sow.day, deadOn = sow.day } of garden.stands) {
      expect(sow.happened).toBe(sow.day <= anchor);
      if (!sow.happened) expect([cutOn, deadOn]).toEqual([sow.day, sow.day]);
      expect(cutOn <= anchor || !sow.happened).toBe(true);
    }
    for (const { on } of garden.topdressed) expect(on <= anchor).toBe(true);
  });

  it('has covers in the ground or to come, and a log in its hot pile', () => {
    expect(garden.stands.some(({ sow }) => sow.happened)).toBe(true);
    expect(garden.stands.some(({ sow }) => !sow.happened)).toBe(true);
    const hot = garden.piles.find(({ built }) => built.day === addDays(anchor, -24));
    expect(hot?.turns).toHaveLength(3);
    expect(hot?.readings.every(({ tempC, moisture, smell }) => tempC && moisture && smell)).toBe(true);
  });

  it('is away for a week some weeks ahead', () => {
    const [away] = garden.away;
    expect(daysBetween(anchor, away?.from ?? anchor)).toBe(24);
    expect(daysBetween(away?.from ?? anchor, away?.to ?? anchor)).toBe(6);
  });

  it('is written out and read back unchanged', () => {
    const file = gardenFileOf(garden);
    expect(checkGardenFile(structuredClone(file))).toEqual(file);
  });
});

describe('the demo garden', () => {
  it('is the same for the same day, and lies alike in every year', () => {
    expect(demoGardenFile('2027-05-12')).toEqual(demoGardenFile('2027-05-12'));
    const text = JSON.stringify(demoGardenFile('2031-05-12'));
    const shifted = text.replaceAll(/\b20\d\d(?=[-}])/g, (year) => String(Number(year) - 4));
    expect(JSON.parse(shifted)).toEqual(demoGardenFile('2027-05-12'));
  });

  it('sets a legume ahead of its tomatoes, sweet corn and garlic', () => {
    const garden = demoGarden('2027-05-12');
    const pairs = garden.beds.flatMap((bed) => {
      const spans = cropSpans(garden, bed.id, demoClimate);
      return spans.slice(1).map((next, index) => [spans[index]?.crop.id ?? '', next.crop] as const);
    });
    const fed = (hungry: string): boolean[] =>
      pairs
        .filter(([, next]) => next.id === hungry)
        .map(([before]) => vegetableById(before).nitrogen === 'legume-fixer');
    for (const hungry of ['tomato', 'sweet-corn', 'garlic']) {
      expect(vegetableById(hungry).nitrogen, hungry).toBe('high');
      expect(fed(hungry).length, hungry).toBeGreaterThan(0);
      expect(fed(hungry), hungry).not.toContain(false);
    }
  });

  it('grows winter rye, rye with vetch, oats, oats with peas and buckwheat', () => {
    const covers = new Set(demoGarden('2027-05-12').stands.map(({ coverId }) => coverId));
    expect([...covers].sort()).toEqual(['buckwheat', 'cereal_rye', 'oats', 'oats-field-pea', 'rye-vetch']);
  });
});
