/** A garden told only by its freeze dates, where nobody has said how cold its winters are. */
import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import type { Place } from '../../../src/garden/garden.ts';
import { sentenceOf } from '../../../src/practices/catalogue.ts';
import type { GapFit } from '../../../src/practices/cover-cropping/fit/fit.ts';
import { gapFits } from '../../../src/practices/cover-cropping/fit/gap-fits.ts';
import { gapsAhead } from '../../../src/practices/cover-cropping/fit/gaps-ahead.ts';
import type { Reason } from '../../../src/practices/draft.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, inputOf, setOut, sown } from '../gardens.ts';

/** Freezes 20 April and 1 November at 51° north: London has such dates, and so has a far colder inland place. */
const mild = frostDates('04-20', '11-01', 51);
const tomatoes = setOut('tomato', '2028-06-05');

function fitOf(coverId: string, place: Partial<Place> = {}, climate: Climate = mild): GapFit {
  const plantings = [sown('lettuce-leaf', '2027-05-01', { harvested: '2027-08-20' }), tomatoes];
  const input = inputOf(garden({ startedOn: '2027-08-01', place, plantings }), climate);
  const [span] = gapsAhead(input, bed('a'));
  const found = span && gapFits(input, bed('a'), span).find((each) => each.name.toLowerCase().startsWith(coverId));
  if (found === undefined) throw new Error(`no fit for ${coverId}`);
  return found;
}

const wordsOf = (reasons: readonly Reason[]) => reasons.map((why) => sentenceOf(why.rule)?.(why)).join(' ');
const said = ({ pros, cons }: GapFit) => wordsOf([...pros, ...cons]);

describe('a kind that winter is meant to kill', () => {
  it('is not promised to die: nobody knows, and it is said so', () => {
    const fava = fitOf('fava');
    expect([fava.winter?.fate, fava.winter?.coldKnown, fava.verdict]).toEqual(['unsure', false, 'possible']);
    expect(said(fava)).toContain('How cold it gets here is not known, so nobody can say whether winter kills it');
    expect(said(fava)).not.toContain('By its zone');
  });

  it('is promised to die again once the zone is stated: fava in zone 5, −26 °C, dies at −9.4 °C (from memory)', () => {
    const fava = fitOf('fava', { hardinessZone: '5b' });
    expect([fava.winter?.fate, fava.winter?.coldKnown]).toEqual(['dies', true]);
    expect(said(fava)).toContain('By its zone, the winters of this zone kill it');
  });

  it('gets a cut before what follows and a look in late winter, which says what is missing', () => {
    const drafts = draftsIn(
      garden({ startedOn: '2027-09-10', plantings: [tomatoes], stands: [cover('fava_bell_bean', '2027-09-05')] }),
      mild,
    );
    const cut = draft(drafts, 'cover-cut/');
    expect(cut.window.latest < '2028-06-05').toBe(true);
    const look = draft(drafts, 'cover-dead-check/');
    expect(look.window.latest < cut.window.latest).toBe(true);
    expect(wordsOf(look.reasons)).toContain('how cold it gets here is not known');
  });

  it('still has its flowers looked for in its first autumn: mustard sown on 20 July', () => {
    const drafts = draftsIn(garden({ startedOn: '2027-08-01', stands: [cover('mustard', '2027-07-20')] }), mild);
    // Cornell: four to six weeks from a late-summer sowing (cover:S4e).
    expect(draft(drafts, 'cover-cut/stand:s').window.latest).toBe('2027-08-17');
  });
});

it('rye lives without a word of a zone nobody knows: it stands zone 3', () => {
  const rye = fitOf('winter rye');
  expect(rye.winter?.fate).toBe('lives');
  expect(said(rye)).toContain('How cold it gets here is not known, but it stands winters as cold as those of zone 3');
});
