import { describe, expect, it } from 'vitest';
import type { DiseaseFound, DoneMark, Garden } from '../../../src/garden/garden.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, rulesOf, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');
const south = frostDates('11-10', '04-01', -43);

const clubroot: DiseaseFound = { bedId: 'a', cropId: 'cabbage', disease: 'Club root', on: '2027-07-20' };
const cabbage = setOut('cabbage', '2027-05-01', { id: 'cab', harvested: '2027-09-10' });

function all(parts: Parameters<typeof garden>[0], over = climate) {
  return draftsIn(garden({ startedOn: '2027-07-01', ...parts }), over).filter(
    ({ practice }) => practice === 'rotation',
  );
}

/** What the practice asks for beside the yearly plan. */
function rotation(parts: Parameters<typeof garden>[0], over = climate) {
  return all(parts, over).filter(({ kind }) => kind !== 'settle-plan');
}

const doneMark = (key: string, on: string, job: string): DoneMark => ({
  key,
  on,
  practice: 'rotation',
  kind: 'clear-bed',
  title: 'Done',
  job: { id: job, title: 'Done' },
  subject: { type: 'bed', id: 'a', name: 'Bed A' },
  effortMinutes: 10,
  entry: 2,
});

const keysOf = (drafts: readonly { key: string }[]) => drafts.map(({ key }) => key).sort();

describe('a crop found sick', () => {
  const drafts = rotation({ plantings: [cabbage], diseases: [clubroot] });
  const remains = draft(drafts, 'disease-remains/');

  it('has what is sick taken out within the week, and no compost made of it', () => {
    expect(remains.key).toBe('disease-remains/planting:cab');
    expect(remains.window).toEqual({ earliest: '2027-07-20', preferred: '2027-07-20', latest: '2027-07-27' });
    expect(remains.title).toBe('Take the sick cabbage out of Bed A, not to the compost');
    // 3 m² at 4 minutes, and 5 to begin.
    expect(remains.effortMinutes).toBe(17);
    const steps = remains.steps.join(' ');
    expect(steps).toContain('shows clubroot, with all its roots');
    expect(steps).toContain('whichever the local rules allow');
    expect(steps).toContain('Nothing of it to the compost');
    expect(steps).toContain('wipe the blades with rubbing alcohol');
    expect(steps).toContain('a plant clinic');
    expect(remains.cautions.join(' ')).toContain('local rules');
  });

  it('says for how long its kin stay out, and by whose word', () => {
    const lock = remains.reasons.find(({ rule }) => rule === 'disease.locked-out');
    expect(lock?.source).toBe('veg:V12');
    expect(lock && reasonSentence(lock)).toBe(
      'Clubroot keeps cabbage and all its kin, turnip and radish among them out of this bed for 7 years from ' +
        '⟦2027-07-20⟧: until ⟦2034-07-20⟧.',
    );
  });

  it('is cleared roots and all at its own time', () => {
    const clear = draft(drafts, 'bed-clear/planting:cab');
    expect(clear.title).toBe('Clear the cabbage from Bed A, roots and all, nothing to the compost');
    expect(clear.window.earliest).toBe('2027-09-10');
    expect(clear.steps.join(' ')).not.toMatch(/soil line|healthy tops into the compost/);
    expect(clear.makes).toEqual([{ makes: 'bed-cleared', plantingId: 'cab' }]);
  });

  it('that is over within the week is one task: its clearing, at once', () => {
    const over = setOut('cabbage', '2027-04-20', { id: 'cab', harvested: '2027-07-25' });
    const only = rotation({ plantings: [over], diseases: [clubroot] });
    expect(keysOf(only)).toEqual(['bed-clear/planting:cab']);
    expect(only[0]?.window).toEqual({ earliest: '2027-07-20', preferred: '2027-07-20', latest: '2027-07-27' });
  });

  it('whose clearing was skipped still has what is sick taken out', () => {
    const over = setOut('cabbage', '2027-04-20', { id: 'cab', harvested: '2027-07-25' });
    const skipped = { 'bed-clear/planting:cab': '2027-07-02' };
    expect(keysOf(rotation({ plantings: [over], diseases: [clubroot], skipped }))).toContain(
      'disease-remains/planting:cab',
    );
  });

  it('taken out whole with what was sick asks for no clearing later; harvested on after that, it does', () => {
    const harvested = (day: string) => setOut('cabbage', '2027-05-01', { id: 'cab', harvested: day });
    const done = [doneMark('disease-remains/planting:cab', '2027-07-22', 'take-out-sick')];
    const early = { startedOn: '2027-07-22', plantings: [harvested('2027-07-22')], diseases: [clubroot], done };
    expect(keysOf(rotation(early))).not.toContain('bed-clear/planting:cab');
    const later = { ...early, startedOn: '2027-09-10', plantings: [harvested('2027-09-10')] };
    expect(keysOf(rotation(later))).toContain('bed-clear/planting:cab');
  });

  it('cleared roots and all has nothing more taken out; cleared as a sound one before, it has', () => {
    const plantings = [setOut('cabbage', '2027-05-01', { id: 'cab', harvested: '2027-07-22' })];
    const cleared = (on: string, job: string) => {
      const done = [doneMark('bed-clear/planting:cab', on, job)];
      return keysOf(rotation({ startedOn: '2027-07-22', plantings, diseases: [clubroot], done }));
    };
    expect(cleared('2027-07-22', 'clear-sick')).toEqual([]);
    expect(cleared('2027-07-20', 'clear-bed')).toEqual(['disease-remains/planting:cab']);
  });

  it('that was gone before has its roots taken out after all', () => {
    const gone = setOut('cabbage', '2027-04-10', { id: 'cab', harvested: '2027-06-25' });
    const stands = [cover('oats', '2027-06-28')];
    const [only, ...others] = rotation({ plantings: [gone], stands, diseases: [clubroot] });
    expect(others).toEqual([]);
    expect(only?.title).toBe('Take the remains of the cabbage out of Bed A, not to the compost');
    expect(only?.steps[0]).toContain('roots that were left in the ground');
  });

  it('of which no planting is known is named by its bed, crop and season, in the south by the southern season', () => {
    expect(keysOf(rotation({ diseases: [clubroot] }))).toEqual(['disease-remains/bed:a/cabbage/2027']);
    const found = { ...clubroot, on: '2028-02-29' };
    const [task] = rotation({ startedOn: '2027-10-01', diseases: [found], place: { latitude: -43 } }, south);
    expect(task?.key).toBe('disease-remains/bed:a/cabbage/2027');
    expect(task?.window.latest).toBe('2028-03-07');
  });

  it('with two diseases is one task that names both', () => {
    const two = rotation({ plantings: [cabbage], diseases: [clubroot, { ...clubroot, disease: 'black rot' }] });
    expect(draft(two, 'disease-remains/').steps.join(' ')).toContain('shows clubroot and black rot');
  });

  it('with something the handbook does not know is told so', () => {
    const odd = rotation({ plantings: [cabbage], diseases: [{ ...clubroot, disease: 'odd spots' }] });
    const remainsOfOdd = draft(odd, 'disease-remains/');
    expect(rulesOf(remainsOfOdd)).toContain('disease.not-in-handbook');
    expect(remainsOfOdd.reasons.map(reasonSentence).join(' ')).toContain('nothing on “odd spots” of cabbage');
  });

  it('in a lasting bed has only what is sick taken out, and the bed closed with no end', () => {
    const asparagus = setOut('asparagus', '2022-04-20', { id: 'asp' });
    const found = { ...clubroot, cropId: 'asparagus', disease: 'fusarium' };
    const only = rotation({ plantings: [asparagus], diseases: [found] });
    expect(keysOf(only)).toEqual(['disease-remains/planting:asp/2027']);
    expect(only[0]?.title).toBe('Take the sick asparagus out of Bed A, not to the compost');
    expect(only[0] && rulesOf(only[0])).toContain('disease.closed');
  });

  it('in an earlier year asks for nothing now', () => {
    expect(rotation({ diseases: [{ ...clubroot, on: '2025-07-20' }] })).toEqual([]);
  });

  it('has a cover of its kin that stands there pulled out with it', () => {
    const stands = [cover('mustard', '2027-06-20')];
    const steps = draft(rotation({ plantings: [cabbage], stands, diseases: [clubroot] }), 'disease-remains/').steps;
    expect(steps.join(' ')).toContain('The mustard standing here carries it too');
  });
});

describe('the plan after a disease', () => {
  const kale = setOut('kale', '2028-05-20', { id: 'kale' });
  const again = (parts: Partial<Omit<Garden, 'place'>>) =>
    rotation({ plantings: [cabbage, kale], diseases: [clubroot], ...parts }).filter(
      ({ kind }) => kind === 'plan-again',
    );

  it('is settled again from the finding on, a task for the season that it breaks', () => {
    const [task, ...others] = again({ beds: [bed('a'), bed('b')] });
    expect(others).toEqual([]);
    expect(task?.key).toBe('plan-again/bed:a/2028');
    expect(task?.title).toBe('Settle the plan for Bed A again: no kale');
    expect(task?.window).toEqual({ earliest: '2027-07-20', preferred: '2027-07-20', latest: '2028-05-19' });
    expect(task?.steps[0]).toContain('until ⟦2034-07-20⟧. Change places with a crop of another family.');
  });

  it('looks a year ahead where the finding is older', () => {
    const later = setOut('kale', '2029-05-20', { id: 'kale' });
    const [task] = draftsIn(
      garden({ startedOn: '2028-06-01', plantings: [later], diseases: [clubroot] }),
      climate,
    ).filter(({ kind }) => kind === 'plan-again');
    expect(task?.window.earliest).toBe('2028-06-01');
  });

  it('names every cover that is dropped, and sends no crop to a bed that is closed too', () => {
    const stands = [cover('mustard', '2028-08-20', { id: 'm' })];
    const both = [clubroot, { ...clubroot, bedId: 'b' }];
    const [task] = again({ beds: [bed('a'), bed('b')], stands, diseases: both });
    expect(task?.title).toBe('Settle the plan for Bed A again: no kale, no mustard');
    expect(task?.steps[0]).toContain('No other bed is open to it: leave it out.');
    expect(task?.steps[1]).toBe(
      'Mustard from ⟦2028-08-20⟧ is dropped: it carries clubroot. Sow another kind, or mulch.',
    );
  });

  it('is left alone where nothing of the family is planned', () => {
    expect(again({ plantings: [cabbage, sown('carrot', '2028-04-20')] })).toEqual([]);
  });

  it('is warned of where the next crop breaks it', () => {
    const lettuce = sown('lettuce-leaf', '2028-04-10', { harvested: '2028-05-15' });
    const parts = { startedOn: '2028-01-01', plantings: [lettuce, kale], diseases: [clubroot] };
    const clear = draft(rotation(parts), 'bed-clear/planting:lettuce');
    expect(clear.reasons.map(reasonSentence).join(' ')).toContain(
      'kale is planned here for ⟦2028-05-20⟧, and clubroot keeps it out until ⟦2034-07-20⟧',
    );
  });

  it('no longer names a dropped cover as what comes next', () => {
    const stands = [cover('mustard', '2027-09-15')];
    const clear = draft(rotation({ plantings: [cabbage], stands, diseases: [clubroot] }), 'bed-clear/planting:cab');
    expect(clear.steps.join(' ')).not.toContain('mustard');
  });

  it('has the bed’s lock-out named where the next season is settled, until it is over', () => {
    const settling = (on: string) =>
      draft(all({ diseases: [{ ...clubroot, on }] }), 'settle-plan/garden/2028').steps.join(' ');
    expect(settling('2027-07-20')).toContain('Clubroot was found there: it is closed to cabbage and all its kin');
    expect(settling('2027-07-20')).toContain('until ⟦2034-07-20⟧');
    expect(settling('2020-12-20')).not.toContain('Clubroot');
  });
});
