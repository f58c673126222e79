import { describe, expect, it } from 'vitest';
import type { Planting, Stand, StandLook } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { cover, draft, draftsIn, frostDates, garden, milwaukee, rulesOf, setOut } from '../gardens.ts';

/** Milwaukee's oats can be sown until 23 September, its rye until the median first freeze on 23 October (cover:S4a, S4b). */
const tomato = setOut('tomato', '2028-05-28');
const looked = (on: Day, covered: StandLook['covered'], weedy = false): StandLook => ({ on, covered, weedy });
const standing = (coverId: string, on: Day, parts: Partial<Stand>): Stand =>
  cover(coverId, on, { sow: { day: on, happened: true }, ...parts });

interface Seen {
  coverId?: string;
  sown?: Day;
  look: StandLook;
  plantings?: readonly Planting[];
  parts?: Partial<Stand>;
  today?: Day;
}

/** The work on bed A, 3 m², after a look at its stand. */
function workAfter({ coverId = 'oats', sown = '2027-09-01', look, plantings = [tomato], parts = {}, today }: Seen) {
  const of = garden({ startedOn: look.on, plantings, stands: [standing(coverId, sown, { looked: [look], ...parts })] });
  return draftsIn(of, milwaukee, today ?? look.on);
}

const keys = (drafts: readonly TaskDraft[]) => drafts.map(({ key }) => key);
const holds = (drafts: readonly TaskDraft[]) =>
  draft(drafts, 'cover-cut/stand:s').reasons.find(({ rule }) => rule === 'cover-cut.holds')?.saw;

describe('a thin young cover', () => {
  it('is sown again with the same while its time and its odds hold, seed for the bare two thirds only', () => {
    const again = draft(workAfter({ look: looked('2027-09-17', 'a-third') }), 'cover-sow-again/stand:s/look:1');
    expect(again.title).toBe('Sow the thin places in Bed A again, with oats');
    expect(again.window).toEqual({ earliest: '2027-09-17', preferred: '2027-09-20', latest: '2027-09-23' });
    // 14.2 g/m² broadcast (the oats row of the handbook) over 3 m² × 0.67.
    expect(again.supplies[0]).toEqual({ what: 'oats seed', amount: { value: 29, unit: 'g' } });
    expect(again.makes).toEqual([
      { makes: 'stand-resown', standId: 's', coverId: 'oats' },
      { makes: 'seed-sown', standId: 's', coverId: 'oats', grams: again.supplies[0]?.amount?.value },
    ]);
    expect(again.reasons.map(reasonSentence).slice(0, 2)).toEqual([
      'On ⟦2027-09-17⟧ about a third of the ground showed green, with few weeds: counted as 33 parts in 100.',
      'The time to sow oats here goes on until ⟦2027-09-23⟧, so that the same is sown again.',
    ]);
  });

  it('is sown with rye, the usual last one, once the time of oats is over; until rye has none left', () => {
    const again = draft(workAfter({ look: looked('2027-09-30', 'a-third') }), 'cover-sow-again/');
    expect(again.title).toBe('Sow the thin places in Bed A again, with winter rye');
    expect(again.window.latest).toBe('2027-10-23');
    expect(rulesOf(again)).toContain('cover-again.later');
    expect(rulesOf(again)).toContain('cover-fit.establish');
  });

  it('is not sown with what has two days left, for no day of work may lie in them', () => {
    const [early, late] = ['2027-09-19', '2027-09-21'].map((on) =>
      draft(workAfter({ look: looked(on, 'a-third') }), 'cover-sow-again/'),
    );
    expect(early?.title).toContain('with oats');
    expect(late?.title).not.toContain('with oats');
  });

  it('is cut in spring once rye is sown into it, though the oats alone would have died', () => {
    const drafts = workAfter({ look: looked('2027-09-30', 'a-third') });
    expect(draft(drafts, 'cover-cut/stand:s').title).toBe('Cut the oats and winter rye in Bed A before it flowers');
    expect(keys(workAfter({ look: looked('2027-09-30', 'nearly-all') }))).not.toContain('cover-cut/stand:s');
  });

  it('is not sown with rye where the bed is wanted too early for rye to be cut and end', () => {
    const peas = setOut('broccoli', '2028-04-15');
    const drafts = workAfter({ look: looked('2027-09-30', 'a-third'), plantings: [peas] });
    expect(keys(drafts).some((key) => key.startsWith('cover-sow-again'))).toBe(false);
    expect(keys(drafts)).toContain('mulch-thin/stand:s');
  });

  it('is mulched where it is bare when nothing can be sown any more: 65 mm over two thirds of 3 m²', () => {
    const mulch = draft(workAfter({ look: looked('2027-10-24', 'a-third') }), 'mulch-thin/stand:s');
    expect(mulch.window.earliest).toBe('2027-10-24');
    expect(mulch.supplies[0]?.amount).toEqual({ value: Math.round(3 * 0.67 * 65), unit: 'L' });
    expect(mulch.subject).toMatchObject({ type: 'stand', id: 's' });
    expect(rulesOf(mulch)).toEqual(['cover-look.seen', 'cover-thin.too-late', 'mulch-bare.amount']);
  });

  it('that was not sown again in its time is mulched then, and says so', () => {
    const look = looked('2027-09-17', 'a-third');
    expect(keys(workAfter({ look, today: '2027-09-23' }))).not.toContain('mulch-thin/stand:s');
    const mulch = draft(workAfter({ look, today: '2027-09-24' }), 'mulch-thin/stand:s');
    expect(mulch.window.earliest).toBe('2027-09-24');
    expect(rulesOf(mulch)).toContain('cover-thin.not-sown');
  });

  it('whose sowing was skipped is mulched from that day', () => {
    const look = looked('2027-09-17', 'a-third');
    const of = garden({
      startedOn: look.on,
      plantings: [tomato],
      stands: [standing('oats', '2027-09-01', { looked: [look] })],
      skipped: { 'cover-sow-again/stand:s/look:1': '2027-09-19' },
    });
    expect(draft(draftsIn(of), 'mulch-thin/stand:s').window.earliest).toBe('2027-09-19');
  });

  it('that is cut within the month is not sown again: buckwheat sown into it would have no time', () => {
    const drafts = workAfter({ coverId: 'buckwheat', sown: '2027-06-10', look: looked('2027-06-26', 'a-third') });
    expect(keys(drafts).some((key) => key.startsWith('cover-sow-again'))).toBe(false);
    expect(keys(drafts)).toContain('mulch-thin/stand:s');
  });

  it('is looked at again two to three weeks after it was sown again', () => {
    const look = looked('2027-09-17', 'a-third');
    expect(draft(workAfter({ look }), 'cover-check/stand:s/look:2').after).toEqual([
      { key: 'cover-sow-again/stand:s/look:1', minDays: 14, maxDays: 21 },
    ]);
    const drafts = workAfter({ look, parts: { resown: [{ on: '2027-09-19', coverId: 'oats' }] }, today: '2027-09-19' });
    expect(draft(drafts, 'cover-check/stand:s/look:2').window.earliest).toBe('2027-10-03');
    expect(keys(drafts).some((key) => key.startsWith('cover-sow-again'))).toBe(false);
  });

  it('asks for nothing more where two thirds are covered', () => {
    const drafts = keys(workAfter({ look: looked('2027-09-17', 'two-thirds') }));
    expect(drafts.filter((key) => /sow-again|mulch-thin|cover-check|cover-weeds/.test(key))).toEqual([]);
  });
});

describe('the mulch on thin places', () => {
  const waitsFor = (weedy: boolean) =>
    draft(workAfter({ look: { ...looked('2027-10-24', 'a-third'), weedy } }), 'mulch-thin/').after.map(
      ({ key }) => key,
    );

  it('waits for the weeds where there are any, and for nothing else', () => {
    expect(waitsFor(false)).toEqual([]);
    expect(waitsFor(true)).toEqual(['cover-weeds/stand:s/look:1']);
  });
});

describe('a cover of which hardly any came up', () => {
  it('is begun anew: with rye alone, whose growth counts from its own sowing', () => {
    const drafts = workAfter({ look: looked('2027-09-30', 'hardly-any') });
    // 21.1 g/m² three weeks before the freeze (cover:S4b, between 15.7 and 22.4) over 3 m² × 0.95.
    expect(draft(drafts, 'cover-sow-again/').supplies[0]?.amount).toEqual({ value: 61, unit: 'g' });
    expect(draft(drafts, 'cover-cut/stand:s').title).toBe('Cut the winter rye in Bed A before it flowers');
  });

  it('leaves a bare bed once nothing can be sown: mulched whole, nothing to cut, no look in late winter', () => {
    const drafts = workAfter({ look: looked('2027-10-24', 'hardly-any') });
    const mulch = draft(drafts, 'mulch-bare/bed:a/2028');
    expect(mulch.supplies[0]?.amount).toEqual({ value: 195, unit: 'L' });
    expect(reasonSentence(mulch.reasons[0] ?? missing())).toBe(
      'Hardly any of the oats was up on ⟦2027-10-24⟧, so that the bed counts as bare.',
    );
    expect(keys(drafts).filter((key) => key.endsWith('/stand:s'))).toEqual([]);
  });

  it('in summer gives its bed back to the next cover', () => {
    const look = looked('2027-06-26', 'hardly-any');
    const skipped = { 'cover-sow-again/stand:s/look:1': look.on };
    const stands = [standing('buckwheat', '2027-06-10', { looked: [look] })];
    const drafts = draftsIn(garden({ startedOn: look.on, stands, skipped }));
    expect(keys(drafts)).not.toContain('cover-cut/stand:s');
    expect(draft(drafts, 'cover-sow/').reasons.map(({ rule }) => rule)).toContain('cover-none.failed');
  });
});

describe('the cut of a stand that was looked at', () => {
  const rye = (covered: StandLook['covered'], weedy = false) =>
    workAfter({ coverId: 'cereal_rye', sown: '2027-09-20', look: looked('2027-10-10', covered, weedy) });

  it('says what was seen where all is well, and nothing else is asked', () => {
    const cut = draft(rye('nearly-all'), 'cover-cut/stand:s');
    expect(cut.reasons.map(reasonSentence)).toContain(
      'On ⟦2027-10-10⟧ nearly all of the ground showed green, with few weeds: counted as 95 parts in 100.',
    );
    expect(keys(rye('nearly-all')).filter((key) => /again|thin|weeds|check\/stand:s$/.test(key))).toEqual([]);
  });

  it('takes its minutes from the ground that is covered: 2 minutes a square metre of two thirds of 3 m², and 5', () => {
    expect(draft(rye('two-thirds'), 'cover-cut/').effortMinutes).toBe(Math.ceil(5 + 2 * 3 * 0.67));
    expect(draft(rye('nearly-all'), 'cover-cut/').effortMinutes).toBe(Math.ceil(5 + 2 * 3 * 0.95));
  });

  it('holds nitrogen and dry matter for the ground that is covered', () => {
    const [most, less] = [holds(rye('nearly-all')), holds(rye('two-thirds'))];
    expect(Number(less?.dryHighKg) / Number(most?.dryHighKg)).toBeCloseTo(0.67 / 0.95, 1);
    expect(Number(less?.highGPerM2) / Number(most?.highGPerM2)).toBeCloseTo(0.67 / 0.95, 1);
  });

  it('of a stand nobody looked at counts the whole bed', () => {
    const whole = draftsIn(
      garden({ startedOn: '2027-10-10', plantings: [tomato], stands: [standing('cereal_rye', '2027-09-20', {})] }),
    );
    expect(Number(holds(whole)?.dryHighKg)).toBeGreaterThanOrEqual(Number(holds(rye('nearly-all'))?.dryHighKg));
    expect(rulesOf(draft(whole, 'cover-cut/stand:s'))).not.toContain('cover-look.seen');
  });
});

describe('weeds among a young cover', () => {
  it('are cut within three weeks of the look, as a deadline', () => {
    const weeds = draft(workAfter({ look: looked('2027-09-17', 'nearly-all', true) }), 'cover-weeds/stand:s/look:1');
    expect(weeds.weight).toBe('deadline');
    expect(weeds.window).toEqual({ earliest: '2027-09-17', preferred: '2027-09-24', latest: '2027-10-08' });
    expect(weeds.steps.join(' ')).toContain('this cover grows again');
  });

  it('are cut among what is up, not among what is still to be sown', () => {
    const drafts = workAfter({ look: looked('2027-09-30', 'a-third', true) });
    expect(draft(drafts, 'cover-sow-again/').title).toContain('winter rye');
    expect(draft(drafts, 'cover-weeds/').title).toBe('Cut the weeds among the oats in Bed A before they seed');
  });

  it('are not to be mown with a cover that does not grow again', () => {
    const drafts = workAfter({
      coverId: 'buckwheat',
      sown: '2027-08-01',
      look: looked('2027-08-15', 'nearly-all', true),
    });
    const work = drafts.find(({ key }) => key.startsWith('cover-weeds/')) ?? draft(drafts, 'cover-cut/stand:s');
    expect(work.steps.join(' ')).not.toContain('grows again');
  });

  it('go with the cut of the stand where that opens before they seed: one task, not two', () => {
    const drafts = workAfter({
      coverId: 'buckwheat',
      sown: '2027-06-10',
      look: looked('2027-06-26', 'nearly-all', true),
    });
    expect(keys(drafts).some((key) => key.startsWith('cover-weeds'))).toBe(false);
    const cut = draft(drafts, 'cover-cut/stand:s');
    expect(rulesOf(cut)).toContain('cover-cut.weedy');
    expect(cut.window.latest <= addDays('2027-06-26', 21)).toBe(true);
  });

  it('bring the cut forward where it would come after their seed', () => {
    const clean = { coverId: 'oats', sown: '2027-04-05', plantings: [] };
    const look = (weedy: boolean) => looked('2027-05-10', 'nearly-all', weedy);
    const [late, soon] = [false, true].map((weedy) =>
      draft(workAfter({ ...clean, look: look(weedy) }), 'cover-cut/stand:s'),
    );
    expect(late?.window.latest).toBe('2027-06-05');
    expect(soon?.window.latest).toBe(addDays('2027-05-10', 21));
  });
});

describe('where two stated freeze dates are all that is known', () => {
  const stated = frostDates('05-10', '10-05');
  const thinOn = (on: Day) =>
    keys(
      draftsIn(
        garden({
          startedOn: on,
          plantings: [setOut('tomato', '2028-06-20')],
          stands: [standing('oats', '2027-08-25', { looked: [looked(on, 'a-third')] })],
        }),
        stated,
      ),
    ).filter((key) => /sow-again|mulch-thin/.test(key));

  it('rye is sown into thin places up to the first freeze, and they are mulched after it', () => {
    expect(thinOn('2027-09-12')).toEqual(['cover-sow-again/stand:s/look:1']);
    expect(thinOn('2027-10-06')).toEqual(['mulch-thin/stand:s']);
  });
});

function missing(): never {
  throw new Error('There is no such reason.');
}
