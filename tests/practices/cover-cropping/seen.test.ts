import { describe, expect, it } from 'vitest';
import type { StageSeen, Stand } from '../../../src/garden/garden.ts';
import { daysBetween } from '../../../src/measures/days.ts';
import { bloomClose, modelledBloom } from '../../../src/practices/cover-cropping/bloom.ts';
import { bloomMemory } from '../../../src/practices/cover-cropping/bloom-memory.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { cover, draft, draftsIn, garden, inputOf, milwaukee } from '../gardens.ts';

const rye = (parts: Partial<Stand> = {}): Stand => ({
  ...cover('cereal_rye', '2026-09-20', { sow: { day: '2026-09-20', happened: true } }),
  ...parts,
});
const inBloom = (on: string, modelled?: string): StageSeen => ({
  coverId: 'cereal_rye',
  on,
  stage: 'in-bloom',
  ...(modelled === undefined ? {} : { modelled }),
});

const cutOf = (stands: readonly Stand[], today = '2027-05-15') =>
  draft(draftsIn(garden({ startedOn: today, stands })), `cover-cut/stand:${stands.at(-1)?.id}`);

describe('a stage seen in a stand', () => {
  it('in bloom has it cut within four days, whatever the figures have', () => {
    const cut = cutOf([rye({ seen: [inBloom('2027-05-14', '2027-06-01')] })]);
    expect(cut.window).toEqual({ earliest: '2027-05-14', preferred: '2027-05-14', latest: '2027-05-18' });
    expect(reasonSentence(cut.reasons[0] ?? missing())).toBe(
      'Flowers were seen on the winter rye on ⟦2027-05-14⟧ (the figures had its flowering about ⟦2027-06-01⟧). ' +
        'The plant outranks the reckoning: cut by ⟦2027-05-18⟧.',
    );
  });

  it('names the event its figure is of: wheat’s is its heading', () => {
    const wheat: Stand = {
      ...cover('winter_wheat', '2026-09-20', { sow: { day: '2026-09-20', happened: true } }),
      seen: [{ coverId: 'winter_wheat', on: '2027-05-20', stage: 'first-buds', modelled: '2027-05-29' }],
    };
    expect(reasonSentence(cutOf([wheat], '2027-05-20').reasons[0] ?? missing())).toContain(
      '(the figures had its heading about ⟦2027-05-29⟧)',
    );
  });

  it('buds give it a week', () => {
    const cut = cutOf([rye({ seen: [{ ...inBloom('2027-05-14'), stage: 'first-buds' }] })]);
    expect(cut.window.latest).toBe('2027-05-21');
  });

  it('the newest counts, in the order they were told', () => {
    const seen = [{ ...inBloom('2027-05-10'), stage: 'first-buds' as const }, inBloom('2027-05-16')];
    expect(cutOf([rye({ seen })]).window.latest).toBe('2027-05-20');
  });

  it('buckwheat in flower may stand its ten days before seed (Cornell, cover:S4a)', () => {
    const buckwheat: Stand = {
      ...cover('buckwheat', '2027-06-05', { sow: { day: '2027-06-05', happened: true } }),
      seen: [{ coverId: 'buckwheat', on: '2027-07-08', stage: 'in-bloom' }],
    };
    expect(cutOf([buckwheat], '2027-07-08').window.latest).toBe('2027-07-18');
  });
});

describe('what is remembered of a kind in a garden', () => {
  const earlier = (...seen: StageSeen[]) => [rye({ id: 'old', cutOn: '2027-05-16', seen })];
  const memory = (
    stands: readonly Stand[],
    stage: StageSeen['stage'] = 'in-bloom',
    seasonTurn: '01-01' | '07-01' = '01-01',
  ) => bloomMemory({ stands }, 'cereal_rye', '2027-09-20', { errorDays: 5, stage, seasonTurn });

  it('is half of what one year showed', () => {
    expect(memory(earlier(inBloom('2027-05-24', '2027-06-01')))).toMatchObject({
      moveDays: -4,
      years: 1,
      lastOffDays: -8,
    });
  });

  it('is held to the error of the reckoning in one year, and two thirds of what two showed', () => {
    expect(memory(earlier(inBloom('2027-05-12', '2027-06-01')))).toMatchObject({ moveDays: -5, heldToDays: 5 });
    const two = [
      ...earlier(inBloom('2027-05-20', '2027-06-01')),
      rye({ id: 'older', seen: [inBloom('2026-05-20', '2026-06-01')] }),
    ];
    expect(memory(two)).toMatchObject({ moveDays: -8, years: 2 });
  });

  it('says that one year moves the figures no further than they err, where it showed more', () => {
    const close = bloomClose(
      coverParts('cereal_rye'),
      '2027-09-20',
      inputOf(garden({ startedOn: '2027-09-25', stands: earlier(inBloom('2027-05-12', '2027-06-01')) }), milwaukee),
    );
    expect(reasonSentence(close?.reasons.at(-1) ?? missing())).toMatch(
      /20 days before the figures; one year moves them no further than they err, by 5 days: cut by ⟦2028-05-\d\d⟧\.$/,
    );
  });

  it('counts growing seasons: two stands of one southern summer, on either side of the New Year, are one', () => {
    const stands = [
      rye({ id: 'old', seen: [inBloom('2026-12-28', '2027-01-06')] }),
      rye({ id: 'other', seen: [inBloom('2027-01-02', '2027-01-06')] }),
    ];
    expect(memory(stands, 'in-bloom', '07-01')?.years).toBe(1);
    expect(memory(stands)?.years).toBe(2);
  });

  it('is of kinds with days only too, held against the middle of those days', () => {
    // Common vetch flowers 60 to 80 days after a spring sowing, from memory, and is cut by the sixtieth.
    const vetch = (id: string, sow: string, seen: StageSeen[] = []): Stand => ({
      ...cover('common_vetch', sow, { sow: { day: sow, happened: true } }),
      id,
      seen,
    });
    const input = inputOf(garden({ startedOn: '2028-04-20' }), milwaukee);
    const modelled = modelledBloom('common_vetch', '2027-04-10', input) ?? missing();
    expect(daysBetween('2027-04-10', modelled)).toBe(70);
    const close = (stands: Stand[]) =>
      bloomClose(coverParts('common_vetch'), '2028-04-10', { ...input, garden: { ...input.garden, stands } })?.close ??
      '';
    const seen: StageSeen = { coverId: 'common_vetch', on: '2027-06-11', stage: 'in-bloom', modelled };
    expect(daysBetween(close([]), close([vetch('old', '2027-04-10', [seen])]))).toBe(-4);
  });

  it('is nothing of buds, of another kind, of what no figure stood beside, or of a later year', () => {
    const buds: StageSeen = { ...inBloom('2027-05-14', '2027-06-01'), stage: 'first-buds' };
    const vetch: StageSeen = { ...inBloom('2027-05-14', '2027-06-01'), coverId: 'hairy_vetch' };
    expect(memory(earlier(buds, vetch, inBloom('2027-05-14')))).toBeUndefined();
    expect(memory(earlier(inBloom('2027-10-14', '2027-10-20')))).toBeUndefined();
  });

  it('is the first sight of a stand, however often it is told of', () => {
    const seen = [inBloom('2027-05-30', '2027-06-01'), inBloom('2027-05-24', '2027-06-01')];
    expect(memory(earlier(...seen))?.moveDays).toBe(-4);
  });

  it('is of the stage the figures are of: flowers of wheat, which come after its heads, do not put off its cut', () => {
    const wheat = (seen: StageSeen[]) => {
      const old = { ...cover('winter_wheat', '2026-09-20'), sow: { day: '2026-09-20', happened: true }, seen };
      const input = inputOf(garden({ startedOn: '2027-09-25', stands: [old] }), milwaukee);
      return bloomClose(coverParts('winter_wheat'), '2027-09-20', input);
    };
    const seen = (stage: StageSeen['stage']): StageSeen => ({
      coverId: 'winter_wheat',
      on: '2027-06-10',
      stage,
      modelled: '2027-06-02',
    });
    expect(wheat([seen('in-bloom')])?.close).toBe(wheat([])?.close);
    const moved = wheat([seen('first-buds')]);
    expect(daysBetween(wheat([])?.close ?? '', moved?.close ?? '')).toBe(4);
    expect(reasonSentence(moved?.reasons.at(-1) ?? missing())).toContain(
      'buds or heads were last seen on the winter wheat',
    );
  });

  it('moves the odds of a choice as it moves the close', () => {
    const closeWith = (stands: readonly Stand[]) =>
      bloomClose(
        coverParts('cereal_rye'),
        '2027-09-20',
        inputOf(garden({ startedOn: '2027-09-25', stands }), milwaukee),
      );
    const [plain, moved] = [closeWith([]), closeWith(earlier(inBloom('2027-05-24', '2027-06-01')))];
    expect(daysBetween(plain?.close ?? '', moved?.close ?? '')).toBe(-4);
    expect(daysBetween(plain?.expected?.day ?? '', moved?.expected?.day ?? '')).toBe(-4);
  });

  it('has a day to hold crimson clover against, which goes by the calendar', () => {
    const inZone6 = inputOf(garden({ place: { hardinessZone: '6b' } }), milwaukee);
    expect(modelledBloom('crimson_clover', '2026-08-20', inZone6)).toBeDefined();
  });

  it('moves the close of the next stand of that kind, and says so', () => {
    const next: Stand = {
      ...cover('cereal_rye', '2027-09-20', { sow: { day: '2027-09-20', happened: true } }),
      id: 'next',
    };
    const plain = cutOf([next], '2028-03-01');
    const moved = cutOf([...earlier(inBloom('2027-05-24', '2027-06-01')), next], '2028-03-01');
    expect(daysBetween(plain.window.latest, moved.window.latest)).toBe(-4);
    const said = moved.reasons.find(({ rule }) => rule === 'cover-cut.seen-before');
    expect(reasonSentence(said ?? missing())).toContain(
      'Here flowers were last seen on the winter rye on ⟦2027-05-24⟧, 8 days before the figures; of what that year showed, 1 part in 2 is believed',
    );
  });

  it('is held against the figures alone, never against what was remembered before', () => {
    const input = inputOf(
      garden({ startedOn: '2027-05-01', stands: earlier(inBloom('2026-05-14', '2026-06-01')) }),
      milwaukee,
      '2027-05-01',
    );
    const plain = inputOf(garden({ startedOn: '2027-05-01' }), milwaukee, '2027-05-01');
    expect(modelledBloom('cereal_rye', '2026-09-20', input)).toBe(modelledBloom('cereal_rye', '2026-09-20', plain));
  });
});

function missing(): never {
  throw new Error('There is no such reason.');
}
