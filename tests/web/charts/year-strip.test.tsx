import { describe, expect, it } from 'vitest';
import type { BedDoing } from '../../../src/digest/bed-doings.ts';
import type { BedYears, Held } from '../../../src/digest/bed-years.ts';
import { daysBetween } from '../../../src/measures/days.ts';
import { YearAxis } from '../../../src/web/charts/year-axis.tsx';
import { YearBand } from '../../../src/web/charts/year-band.tsx';
import { YearStrip } from '../../../src/web/charts/year-strip.tsx';

const WIDE = 864;
/** Eighteen months with a 29 February in them: 547 days. */
const span = { from: '2027-09-01', to: '2029-02-28' };
const spring = { from: '2028-03-01', to: '2028-05-31' };
const bed = { id: 'a', name: 'A', lengthM: 1, widthM: 1, raised: true, watered: false };

/** Where a day begins, worked out by hand: days since the first over days shown. */
const placeIn = ({ from, to }: typeof span, day: string) =>
  Math.round((10 * WIDE * daysBetween(from, day)) / (daysBetween(from, to) + 1)) / 10;

const crop = (what: string, from: string, to?: string, parts: Partial<Held> = {}): Held => ({
  kind: 'crop',
  what,
  family: 'carrot',
  from,
  ...(to === undefined ? {} : { to }),
  planned: false,
  odds: [],
  ...parts,
});
const rye = crop('winter rye', '2027-09-21', '2028-04-30', { kind: 'cover', planned: true });
const work = (parts: Partial<BedDoing>): BedDoing => ({
  doing: 'cut',
  what: 'winter rye',
  title: 'Cut winter rye',
  from: '2028-04-20',
  to: '2028-05-04',
  on: '2028-04-29',
  done: false,
  cover: true,
  ...parts,
});
const drawn = (held: Held[], doings: BedDoing[] = [], days = span, today = '2027-10-01') =>
  String(<YearStrip years={{ bed, held, doings } satisfies BedYears} span={days} today={today} words="Told." />);
/** The boxes of a strip: where each begins and ends, how it is filled. */
const boxes = (svg: string) =>
  [...svg.matchAll(/<rect class="held-box" x="([-\d.]+)" y="([\d.]+)" width="([\d.]+)" [^>]*fill="([^"]+)"/g)].map(
    ([, x, y, width, fill]) => ({ from: Number(x), to: Number(x) + Number(width), y: Number(y), fill }),
  );

describe('a strip of the year', () => {
  it('has each box from the beginning of its first day to the end of its last, across New Year and 29 February', () => {
    const [box] = boxes(drawn([rye]));
    expect(box?.from).toBeCloseTo(placeIn(span, '2027-09-21'), 1);
    expect(box?.to).toBeCloseTo(placeIn(span, '2028-05-01'), 1);
  });

  it('tells families, covers and mulch by their patterns, and what is planned by its outline', () => {
    const mulch = crop('leaves mulch', '2028-06-01', '2028-09-01', { kind: 'mulch' });
    const { family: _, ...bare } = mulch;
    const { family: _f, ...cover } = rye;
    const svg = drawn([crop('carrot', '2027-09-01', '2027-09-20'), cover, bare]);
    expect(boxes(svg).map(({ fill }) => fill)).toEqual([
      'url(#family-carrot)',
      'url(#ground-cover)',
      'url(#ground-mulch)',
    ]);
    expect(svg.match(/held held-cover held-planned/g)).toHaveLength(1);
    expect(svg).not.toContain('held held-crop held-planned');
  });

  it('leaves open soil between its boxes and nowhere else', () => {
    const svg = drawn([crop('carrot', '2027-09-11', '2027-12-31'), crop('kale', '2028-06-01')]);
    const open = [...svg.matchAll(/class="open-soil" x="([\d.]+)"[^>]*? width="([\d.]+)"/g)].map(([, x, width]) => [
      Number(x),
      Number(x) + Number(width),
    ]);
    expect(open).toEqual([
      [0, placeIn(span, '2027-09-11')],
      [placeIn(span, '2028-01-01'), expect.closeTo(placeIn(span, '2028-06-01'), 1)],
    ]);
  });

  it('of a bed that is still to be made begins on its day', () => {
    const made = { ...bed, plannedFor: '2028-04-10' };
    const svg = String(
      <YearStrip years={{ bed: made, held: [], doings: [] }} span={span} today="2027-10-01" words="Told." />,
    );
    expect(svg).toContain(`class="open-soil" x="${placeIn(span, '2028-04-10')}"`);
    expect(svg).toContain('>new bed</text>');
  });

  it('runs on beyond the edge where something has no end', () => {
    const [box] = boxes(drawn([crop('asparagus', '2019-04-01')]));
    expect(box?.from).toBeLessThan(0);
    expect(box?.to).toBeGreaterThan(WIDE);
  });

  it('sets crops that share the bed one beneath the other', () => {
    const [one, other, later] = boxes(
      drawn([
        crop('carrot', '2027-09-01', '2027-11-30', { areaM2: 1 }),
        crop('beet', '2027-10-01', '2027-12-31', { areaM2: 1 }),
        crop('kale', '2028-02-01', '2028-03-31'),
      ]),
    );
    expect(other?.y).toBeGreaterThan(one?.y ?? 99);
    expect(later?.y).toBe(one?.y);
  });

  it('names what is too short for its name beneath its box', () => {
    const svg = drawn([crop('radish', '2028-04-10', '2028-04-20')]);
    expect(svg).toContain('class="leader"');
    expect(svg).toMatch(/<text [^>]*>radish<\/text>/);
    expect(drawn([crop('radish', '2028-04-10', '2028-07-20')])).not.toContain('class="leader"');
  });

  it('draws work as a line over the days that will do, with its sign on the day that is planned', () => {
    const svg = drawn([rye], [work({})], spring);
    const [, from, to] = /class="will-do" d="M([\d.]+) [\d.]+H([\d.]+)"/.exec(svg) ?? [];
    expect(Number(from)).toBeCloseTo(placeIn(spring, '2028-04-20'), 1);
    expect(Number(to)).toBeCloseTo(placeIn(spring, '2028-05-05'), 1);
    const sign = Number(/sign-cut" d="M([\d.]+) /.exec(svg)?.[1]);
    expect(sign).toBeGreaterThan(placeIn(spring, '2028-04-29'));
    expect(sign).toBeLessThan(placeIn(spring, '2028-04-30'));
    expect(svg).toContain('>cut winter rye</text>');
  });

  it('keeps the work of crops for the close look', () => {
    const { what: _, ...clearing } = work({ doing: 'clear', cover: false });
    expect(drawn([], [clearing])).not.toContain('sign-clear');
    expect(drawn([], [clearing], spring)).toContain('sign-clear');
  });

  it('fills the sign of compost that was spread, on its day', () => {
    const on = '2028-04-02';
    const spread = work({ doing: 'compost', what: 'compost', from: on, to: on, on, done: true, cover: false });
    expect(drawn([], [spread])).toContain('sign-compost sign-done');
    expect(drawn([], [{ ...spread, done: false }])).not.toContain('sign-done');
  });

  it('is told to whoever does not see it', () => {
    const svg = drawn([rye]);
    expect(svg).toContain('aria-labelledby="strip-a strip-a-words"');
    expect(svg).toContain('<title id="strip-a">A</title><desc id="strip-a-words">Told.</desc>');
  });

  it('has today at the beginning of the day', () => {
    expect(drawn([], [], span, '2028-02-29')).toContain(`class="today-line" d="M${placeIn(span, '2028-02-29')} 0V`);
  });
});

describe('the axis of the year', () => {
  it('names each year over its first month shown, and the months', () => {
    const svg = String(<YearAxis span={span} today="2027-10-01" />);
    const years = [...svg.matchAll(/class="year-word" x="([\d.]+)"[^>]*>(\d{4})</g)].map(([, x, y]) => [y, Number(x)]);
    expect(years).toEqual([
      ['2027', 3],
      ['2028', expect.closeTo(placeIn(span, '2028-01-01') + 3, 1)],
      ['2029', expect.closeTo(placeIn(span, '2029-01-01') + 3, 1)],
    ]);
    expect(svg).toContain('>Sep</text>');
    expect(svg).toContain('>today</text>');
  });

  it('has the Mondays of a season close up', () => {
    const svg = String(<YearAxis span={spring} />);
    expect(svg).toContain('>March</text>');
    // 6 March 2028 is a Monday.
    expect(svg).toContain(`x="${Math.round(10 * (placeIn(spring, '2028-03-06') + 3)) / 10}" y="35">6</text>`);
    expect(svg).not.toContain('>today</text>');
  });
});

it('a band has each share in the middle of its day, none at the foot and all at the top', () => {
  const days = [
    { day: '2028-03-01', share: 0 },
    { day: '2028-03-02', share: 1 },
  ];
  const svg = String(
    <YearBand id="b" title="T" words="W" lines={[{ days, filled: false }]} span={spring} today="2028-03-01" />,
  );
  const day = WIDE / 92;
  const [, x1, y1, x2, y2] = /class="share-line" d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  expect([Number(x1), Number(x2)]).toEqual([expect.closeTo(day / 2, 0), expect.closeTo(1.5 * day, 0)]);
  expect([y1, y2]).toEqual(['46', '4']);
});
