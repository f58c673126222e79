/**
 * Hoses, tools and a look for slugs before the first hard freeze.
 */

import { freezeDay, freezeOdds } from '../../climate/freeze.ts';
import { addDays } from '../../measures/days.ts';
import { celsius } from '../../measures/units.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { freezeWords } from '../odds-of.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';

/** The freeze that bursts hoses and taps left full: 28 °F. Common practice calls it the first hard one. */
const HARD_F = 28;
/** Days before that freeze in which the work is done. House default. */
const BEFORE_DAYS = { first: 21, usual: 7, last: 1 } as const;
/** Minutes to drain and put away hoses and clean the tools of a household's garden. House default. */
const CLOSE_MINUTES = 60;
const TENTHS = 10;

/** One closing of the garden a season, by the odds the household plans tender things by; nothing where no such freeze comes. */
export function closeDownDrafts({ garden, climate }: PracticeInput, season: number): TaskDraft[] {
  const percent = garden.place.frostRisk;
  const ask = { event: 'first-autumn', limitF: HARD_F, season } as const;
  const day = freezeDay(climate, { ...ask, chancePercent: percent });
  if (day === undefined) return [];
  const tempC = Math.round(celsius(HARD_F) * TENTHS) / TENTHS;
  const latest = addDays(day, -BEFORE_DAYS.last);
  return [
    {
      key: `close-down/garden/${season}`,
      practice: 'season-end',
      kind: 'close-down',
      job: { id: 'close-down', title: 'Drain the hoses and clean the tools' },
      subject: gardenSubject(garden),
      weight: 'work',
      title: 'Drain the hoses and clean the tools',
      steps: [
        'Unscrew the hoses and drip lines, walk the water out of them and hang them up under cover.',
        'Shut the water off indoors if you can, and leave outside taps open. Empty the barrel and turn it over.',
        'Keep one can in use: beds sown or planted this autumn may still want water in a dry spell.',
        'Scrape the tools clean, dry them, sharpen what cuts, and wipe blades and handles with oil.',
        'Lift boards, pots and mulch in a few places: gather slugs and their clear round eggs, and thin the residue where there are many.',
      ],
      cautions: [
        'Sharpen away from yourself, with gloves on.',
        'Spread oily rags out flat to dry: in a heap they can catch fire by themselves.',
      ],
      supplies: [{ what: 'file, rag and oil' }],
      window: { earliest: addDays(day, -BEFORE_DAYS.first), preferred: addDays(day, -BEFORE_DAYS.usual), latest },
      ifMissed: 'still do',
      missedNote: 'What froze full may have split: try hoses and taps for leaks before you rely on them.',
      effortMinutes: CLOSE_MINUTES,
      needs: ['above-freezing'],
      after: [],
      confidence: knownAs(climate, 'derived'),
      odds: freezeOdds(climate, ask),
      oddsOf: freezeWords(ask),
      reasons: [
        { rule: 'close-down.freeze', saw: { tempC, day, percent }, limit: latest, source: "the garden's climate" },
        { rule: 'close-down.slugs', saw: {}, source: 'common practice' },
      ],
      makes: [],
    },
  ];
}
