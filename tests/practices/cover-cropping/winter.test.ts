import { describe, expect, it } from 'vitest';
import { coverCropById } from '../../../src/handbook/cover-crops.ts';
import { situationOf, winterFate, yearlyMinimumC, zoneIn } from '../../../src/practices/cover-cropping/winter.ts';
import { frostDates, garden, inputOf, milwaukee } from '../gardens.ts';

const noZone = frostDates('05-10', '10-01');

function inputIn(hardinessZone?: string, climate = noZone) {
  return inputOf(garden({ place: hardinessZone === undefined ? {} : { hardinessZone } }), climate);
}

function kind(id: string) {
  const cover = coverCropById.get(id);
  if (cover === undefined) throw new Error(`no cover ${id}`);
  return cover;
}

function fate(id: string, hardinessZone?: string, climate = noZone) {
  return winterFate(kind(id), inputIn(hardinessZone, climate));
}

describe('the winter to reckon with', () => {
  it('is the zone the gardener states, before what the record says', () => {
    expect(zoneIn(inputIn(undefined, milwaukee))).toBe(6);
    expect(zoneIn(inputIn('4b', milwaukee))).toBe(4);
    // Zone 4b runs from −25 to −20 °F; its middle is −22.5 °F.
    expect(yearlyMinimumC(inputIn('4b', milwaukee))).toBeCloseTo(-30.3, 1);
  });

  it('is not known from freeze dates alone', () => {
    expect([zoneIn(inputIn()), yearlyMinimumC(inputIn())]).toEqual([undefined, undefined]);
  });
});

describe('kinds meant to live through winter', () => {
  it('live well inside their zones: rye in zones 4 to 7', () => {
    for (const zone of ['4a', '5b', '6a', '7b']) expect(fate('cereal_rye', zone)).toBe('lives');
  });

  it('may or may not at the edge of them: annual ryegrass in zones 5 and 6, crimson clover in 6', () => {
    for (const [id, zone] of [
      ['annual_ryegrass', '5b'],
      ['annual_ryegrass', '6a'],
      ['crimson_clover', '6b'],
    ] as const)
      expect(fate(id, zone)).toBe('unsure');
  });

  it('die well outside: crimson clover in zone 5, which usually kills it in Wisconsin (cover:S24)', () => {
    expect(fate('crimson_clover', '5a')).toBe('dies');
  });

  it('may or may not where bare ground gets colder than they stand: vetch below −15 °C', () => {
    expect(fate('hairy_vetch', '5b')).toBe('unsure');
    expect(fate('hairy_vetch', '8a')).toBe('lives');
  });

  it('may or may not where no zone is known, but rye, which stands zone 3 (house default)', () => {
    expect(fate('hairy_vetch')).toBe('unsure');
    expect(fate('cereal_rye')).toBe('lives');
  });
});

describe('kinds meant to be killed by winter', () => {
  it('die in zone 6 and colder, and in most of zone 7 (oats, cover:S2a)', () => {
    for (const zone of ['3a', '5b', '6b', '7a', '7b']) expect(fate('oats', zone)).toBe('dies');
  });

  it('may live in zone 8', () => {
    expect(fate('oats', '8a')).toBe('unsure');
    expect(fate('oilseed_radish', '8b')).toBe('unsure');
  });

  it('are as open as the cold is unknown where there are freeze dates alone', () => {
    for (const id of ['oats', 'fava_bell_bean', 'mustard', 'berseem_clover']) expect(fate(id)).toBe('unsure');
    expect(fate('buckwheat')).toBe('dies');
  });

  it('die of the record at Milwaukee', () => {
    for (const id of ['oats', 'field_pea', 'oilseed_radish', 'mustard', 'berseem_clover'])
      expect(fate(id, undefined, milwaukee)).toBe('dies');
  });
});

describe('how a sowing is counted', () => {
  const at = (id: string, sown: string) => situationOf(kind(id), sown, inputIn('5b'));

  it('is over winter for rye sown in autumn, and not for oats', () => {
    expect([at('cereal_rye', '2027-09-15'), at('oats', '2027-09-01')]).toEqual(['overwintered', 'summer-sown']);
  });

  it('is from spring up to midsummer, 1 July', () => {
    expect([at('oats', '2027-04-15'), at('oats', '2027-07-01'), at('oats', '2027-07-02')]).toEqual([
      'spring-sown',
      'spring-sown',
      'summer-sown',
    ]);
  });

  it('is always from summer for kinds that stand no freeze', () => {
    expect(at('buckwheat', '2027-05-20')).toBe('summer-sown');
  });

  it('turns at the end of December in the south', () => {
    const south = inputOf(garden({ place: { latitude: -43, hardinessZone: '8a' } }), frostDates('10-20', '04-20', -43));
    expect(situationOf(kind('oats'), '2027-12-20', south)).toBe('spring-sown');
    expect(situationOf(kind('cereal_rye'), '2028-03-10', south)).toBe('overwintered');
  });
});
