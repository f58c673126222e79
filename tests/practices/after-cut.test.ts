import { describe, expect, it } from 'vitest';
import type { Regrowth, Stand } from '../../src/garden/garden.ts';
import { afterCut, endingTask, freeFrom } from '../../src/practices/after-cut.ts';
import { cover } from './gardens.ts';

/** Rye that was cut on 8 May, with what was told since. */
const rye = (regrowth: Regrowth[] = [], parts: Partial<Stand> = {}): Stand =>
  cover('cereal_rye', '2026-09-20', { cutOn: '2027-05-08', regrowth, ...parts });
const state = (stand: Stand, skipped: Record<string, string> = {}) => {
  const found = afterCut({ skipped }, stand);
  if (found === undefined) throw new Error('It was not cut.');
  return found;
};
const grew = (on: string, answer: 'cut' | 'sheet' = 'cut'): Regrowth => ({ on, what: 'grew-again', answer });
const did = (on: string, what: 'cut-again' | 'sheet-laid' | 'sheet-lifted'): Regrowth => ({ on, what });

describe('a stand that was cut', () => {
  it('is nothing yet before its cut, and over at once where one cut ends it', () => {
    expect(afterCut({ skipped: {} }, cover('cereal_rye', '2026-09-20'))).toBeUndefined();
    expect(state(cover('buckwheat', '2027-06-05', { cutOn: '2027-07-10' })).is).toBe('over');
  });

  it('is watched, and its bed is free when its residue has settled', () => {
    expect(state(rye())).toMatchObject({ is: 'watched', look: 1, regrowths: 0 });
    expect(freeFrom(state(rye()), 14)).toBe('2027-05-22');
  });

  it('is over where nothing green was found; the wait counts from the cut as before', () => {
    const clean = rye([], { regrowthCheckedOn: ['2027-05-19'] });
    expect(state(clean).is).toBe('over');
    expect(freeFrom(state(clean), 21)).toBe('2027-05-29');
  });

  it('is cut again where it grew again, and watched again from that cut', () => {
    expect(state(rye([grew('2027-05-19')]))).toMatchObject({ is: 'green', regrowths: 1 });
    expect(endingTask('s', state(rye([grew('2027-05-19')])))).toBe('cover-cut-again/stand:s/1');
    const cut = state(rye([grew('2027-05-19'), did('2027-05-20', 'cut-again')]));
    expect(cut).toMatchObject({ is: 'watched', on: '2027-05-20', look: 2 });
    expect(freeFrom(cut, 14)).toBe('2027-06-03');
  });

  it('goes under a sheet the second time, whatever was answered, and the first time where that was chosen', () => {
    const again = [grew('2027-05-19'), did('2027-05-20', 'cut-again'), grew('2027-05-31')];
    expect(state(rye(again))).toMatchObject({ is: 'to-sheet', regrowths: 2 });
    expect(state(rye([grew('2027-05-19', 'sheet')])).is).toBe('to-sheet');
  });

  it('keeps its bed for 21 days from the day the sheet was laid, whenever it was meant to be laid', () => {
    const laid = state(rye([grew('2027-05-19', 'sheet'), did('2027-05-24', 'sheet-laid')]));
    expect(freeFrom(laid, 14)).toBe('2027-06-14');
    expect(endingTask('s', laid)).toBe('cover-sheet/stand:s/lift:1');
    const lifted = state(rye([did('2027-05-24', 'sheet-laid'), did('2027-06-20', 'sheet-lifted')]));
    expect([lifted.is, freeFrom(lifted, 14)]).toEqual(['sheeted', '2027-06-20']);
  });

  it('is looked at again where the sheet came off too soon: a week was not enough in Iowa (cover:S39)', () => {
    const early = state(rye([did('2027-05-24', 'sheet-laid'), did('2027-05-31', 'sheet-lifted')]));
    expect(early).toMatchObject({ is: 'watched', on: '2027-05-31', sheet: 2 });
  });

  it('told twice to have grown again has done so once, and the last word says what is to be done', () => {
    const twice = state(rye([grew('2027-05-19'), grew('2027-05-20', 'sheet')]));
    expect(twice).toMatchObject({ is: 'to-sheet', on: '2027-05-19', regrowths: 1 });
  });

  it('is green where it was seen so on the day of a clean look, or after one', () => {
    for (const on of ['2027-05-19', '2027-05-28'])
      expect(state(rye([grew(on)], { regrowthCheckedOn: ['2027-05-19'] })).is).toBe('green');
  });

  it('is let be where what was to be done was skipped, and holds nothing up', () => {
    const skipped = state(rye([grew('2027-05-19')]), { 'cover-cut-again/stand:s/1': '2027-05-20' });
    expect(skipped.letBe).toBe(true);
    expect([endingTask('s', skipped), freeFrom(skipped, 14)]).toEqual([undefined, '2027-05-22']);
  });

  it('forgets what was told before its cut, where the day of the cut was mended since', () => {
    expect(state(rye([grew('2027-05-19')], { cutOn: '2027-05-25' })).is).toBe('watched');
  });

  it('counts over the New Year and 29 February', () => {
    const south = rye([grew('2027-12-20', 'sheet'), did('2027-12-24', 'sheet-laid')], { cutOn: '2027-12-05' });
    expect(freeFrom(state(south), 14)).toBe('2028-01-14');
    expect(freeFrom(state(rye([did('2028-02-20', 'sheet-laid')], { cutOn: '2028-02-01' })), 7)).toBe('2028-03-12');
  });
});
