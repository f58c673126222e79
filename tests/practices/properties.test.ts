/**
 * What holds of every draft in every garden.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Garden } from '../../src/garden/garden.ts';
import { isDay } from '../../src/measures/days.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { reasonSentence, sourceLine } from '../../src/schedule/explain.ts';
import { orderedWindows } from '../../src/schedule/windows.ts';
import { runs } from '../runs.ts';
import { type AnyCase, anyCase, inputIn } from './any-garden.ts';

/** All properties are tried on the same gardens, so that each of them is planned once. */
const RUNS = { numRuns: runs(40, 400), seed: Math.trunc(Math.random() * 2 ** 31) };

/** Keys one practice's task may wait for without knowing whether it is there. */
const KNOWN_KEY =
  /^((bed-clear|sow|set-out|start-indoors|harden-off)\/planting:|cover-sow\/stand:|cover-cut\/stand:|cover-(regrowth|cut-again|sheet)\/stand:|pile-maturity\/pile:|compost-order\/garden\/|compost-test\/garden\/|topdress\/bed:.+\/\d{4}(\/before-winter)?$|soil-sample\/(garden|bed:.+)\/\d{4}$|squeeze-test\/soil:[a-z_]+\/\d{4}\/\d+$)/;

const known = new Map<string, readonly TaskDraft[]>();

function draftsIn(each: AnyCase): readonly TaskDraft[] {
  const name = JSON.stringify(each);
  const drafts = known.get(name) ?? draftsOf(inputIn(each));
  known.set(name, drafts);
  return drafts;
}

function inEveryGarden(check: (drafts: readonly TaskDraft[], of: Garden) => void) {
  fc.assert(
    fc.property(anyCase, (each) => check(draftsIn(each), each.of)),
    RUNS,
  );
}

function textsOf({ title, job, steps, cautions, missedNote, supplies, reasons }: TaskDraft): string[] {
  const amounts = supplies.map(({ what, also }) => `${what} ${also ?? ''}`);
  return [title, job.title, ...steps, ...cautions, missedNote, ...amounts, ...reasons.map(reasonSentence)];
}

function byKey(drafts: readonly TaskDraft[]): TaskDraft[] {
  return [...drafts].sort((a, b) => (a.key < b.key ? -1 : 1));
}

describe('every draft of every garden', () => {
  it('has a key of its own', () => {
    inEveryGarden((drafts) => {
      const keys = drafts.map(({ key }) => key);
      expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
    });
  });

  it('has a window of real days in order', () => {
    inEveryGarden((drafts) => {
      for (const { key, window } of drafts) {
        const { earliest, preferred, latest } = window;
        expect([earliest, preferred, latest].every(isDay), key).toBe(true);
        expect(earliest <= preferred && preferred <= latest, `${key} ${earliest} ${preferred} ${latest}`).toBe(true);
      }
    });
  });

  it('waits only for drafts that are there, or for keys another practice may give, and never in a ring', () => {
    inEveryGarden((drafts) => {
      const keys = new Set(drafts.map(({ key }) => key));
      for (const { key, after } of drafts) {
        for (const before of after) {
          expect(keys.has(before.key) || KNOWN_KEY.test(before.key), `${key} waits for ${before.key}`).toBe(true);
          expect(before.minDays).toBeGreaterThanOrEqual(0);
        }
      }
      expect(() => orderedWindows(drafts)).not.toThrow();
    });
  });

  it('says everything it says in whole words, in both systems of units', () => {
    inEveryGarden((drafts) => {
      for (const text of drafts.flatMap(textsOf)) {
        for (const units of ['us', 'metric'] as const) {
          expect(readableIn(units, text)).not.toMatch(/undefined|NaN|Infinity|null|\[object|⟦|⟧/);
        }
        expect(text.replace(/⟦[^⟧]*⟧/g, '')).not.toMatch(/\d\s?(°[CF]|mm|cm|kg|litres?|inch(es)?)\b/);
      }
    });
  });

  it('names where each figure comes from', () => {
    inEveryGarden((drafts) => {
      for (const { key, reasons } of drafts) {
        expect(reasons.length, key).toBeGreaterThan(0);
        for (const { source } of reasons) if (source.includes(':')) expect(sourceLine(source), key).not.toBe(source);
      }
    });
  });

  it('asks for amounts and minutes that can be measured out', () => {
    inEveryGarden((drafts) => {
      for (const { key, supplies, effortMinutes, makes } of drafts) {
        const litres = makes.flatMap((effect) => ('litres' in effect ? (effect.litres ?? []) : []));
        for (const value of [...supplies.flatMap(({ amount }) => amount?.value ?? []), ...litres]) {
          expect(Number.isFinite(value) && value >= 0, `${key} ${value}`).toBe(true);
        }
        expect(Number.isInteger(effortMinutes) && effortMinutes > 0, `${key} ${effortMinutes}`).toBe(true);
      }
    });
  });

  it('does not hang on the order in which the garden was written down', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const input = inputIn(each);
        const { garden } = input;
        const turned: Garden = {
          ...garden,
          beds: [...garden.beds].reverse(),
          plantings: [...garden.plantings].reverse(),
          stands: [...garden.stands].reverse(),
          piles: [...garden.piles].reverse(),
          topdressed: [...garden.topdressed].reverse(),
          compostBought: [...garden.compostBought].reverse(),
          soilSqueezes: [...garden.soilSqueezes].reverse(),
          soilTests: [...garden.soilTests].reverse(),
        };
        expect(byKey(draftsOf({ ...input, garden: turned }))).toEqual(byKey(draftsIn(each)));
      }),
      RUNS,
    );
  });
});

describe('compost in every garden', () => {
  it('is never shared out beyond what piles and orders give', () => {
    inEveryGarden((drafts, { piles, compostBought }) => {
      const shared = drafts
        .flatMap(({ reasons }) => reasons)
        .filter(({ rule }) => rule === 'topdress.supply')
        .reduce((sum, { saw }) => sum + Number(saw.fromBins), 0);
      const built = piles.flatMap(({ ingredients }) => ingredients).reduce((sum, { litres }) => sum + litres, 0);
      const bought = compostBought.reduce((sum, { litres }) => sum + litres, 0);
      // Four tenths of each pile is left, rounded to a litre.
      expect(shared).toBeLessThanOrEqual(0.4 * built + piles.length + bought);
    });
  });

  it('is asked for once a bed and season', () => {
    inEveryGarden((drafts) => {
      const seasons = drafts
        .filter(({ kind }) => kind === 'topdress')
        .map(({ key }) => key.replace('/before-winter', ''));
      expect(new Set(seasons).size).toBe(seasons.length);
    });
  });
});

describe('stands in every garden', () => {
  it('are cut after they were sown', () => {
    inEveryGarden((drafts, { stands }) => {
      for (const stand of stands.filter(({ sow }) => sow.happened)) {
        const cut = drafts.find(({ key }) => key === `cover-cut/stand:${stand.id}`);
        if (cut) expect(cut.window.earliest > stand.sow.day, cut.key).toBe(true);
      }
    });
  });

  it('are suggested only where no crop stands, and early enough to grow', () => {
    inEveryGarden((drafts, { plantings }) => {
      for (const { key, window, subject } of drafts.filter(
        ({ reasons }) => reasons[0]?.rule === 'cover-sow.suggested',
      )) {
        const bedId = subject.type === 'stand' ? subject.bedId : '';
        const next = plantings
          .filter((row) => row.bedId === bedId && row.start.day > window.earliest)
          .map(({ start }) => start.day)
          .sort()[0];
        if (next !== undefined) expect(window.latest < next, `${key} ${window.latest} ${next}`).toBe(true);
      }
    });
  });
});
