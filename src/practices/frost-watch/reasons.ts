/**
 * Why an evening is what it is.
 */
import type { ToldNight } from '../../garden/told-nights.ts';
import type { Reason, ReasonSource } from '../draft.ts';
import { isTender } from '../frozen.ts';
import { ON_BEFORE_SUNSET_MINUTES } from './hours.ts';
import { FORECAST_MARGIN_C } from './risk.ts';
import type { Standing } from './standing.ts';
import type { Tonight } from './tonight.ts';
import { cropNames } from './words.ts';

/** The reasons of an evening's task. */
export function tonightReasons(tonight: Tonight, told: ToldNight, hasHour: boolean): Reason[] {
  const { evening, lowC, covered, pick, unsheltered, carryIn } = tonight;
  const crops = [...covered.flatMap(({ risk }) => risk.crops), ...pick, ...unsheltered, ...carryIn];
  const [first] = covered;
  return [
    told.from === 'snow'
      ? { rule: 'frost-watch.snow', saw: { evening, tempC: told.lowC }, source: 'house default' }
      : {
          rule: 'frost-watch.expected-low',
          saw: { evening, tempC: told.lowC, offsetC: lowC - told.lowC },
          source: "the garden's own plan",
        },
    ...limitReasons(crops),
    ...(crops.some(({ crop }) => isTender(crop))
      ? [{ rule: 'frost-watch.margin', saw: {}, limit: FORECAST_MARGIN_C, source: 'agro:S7' as const }]
      : []),
    ...(first === undefined || new Set(crops.map(({ bed }) => bed.id)).size === 1
      ? []
      : [
          {
            rule: 'frost-watch.most-to-lose',
            saw: { bed: first.risk.bed.name, m2Days: Math.round(first.risk.toLoseM2Days) },
            source: 'house default' as const,
          },
        ]),
    ...gainReasons(tonight),
    ...(hasHour
      ? [
          {
            rule: 'frost-watch.before-sunset',
            saw: {},
            limit: ON_BEFORE_SUNSET_MINUTES,
            source: 'house default' as const,
          },
        ]
      : []),
  ];
}

/** One reason for each temperature at which some of the crops are hurt. */
export function limitReasons(crops: readonly Standing[]): Reason[] {
  const limits = [...new Set(crops.map(({ crop }) => crop.damageTempC))].sort((a, b) => b - a);
  return limits.map((limit) => {
    const hurt = crops.filter(({ crop }) => crop.damageTempC === limit);
    return { rule: 'frost-watch.damage', saw: { crops: cropNames(hurt) }, limit, source: sourceOf(hurt) };
  });
}

function sourceOf([first]: readonly Standing[]): ReasonSource {
  if (first === undefined) return 'from memory';
  const { readIn, marks, sources } = first.crop;
  if (marks.damageTempC === 'from memory' || marks.damageTempC === 'house default') return marks.damageTempC;
  return readIn?.damageTempC ?? sources[0] ?? 'from memory';
}

function gainReasons({ covered }: Tonight): Reason[] {
  const used = new Map(covered.flatMap(({ cover }) => (cover === undefined ? [] : [[cover.kind, cover] as const])));
  return [...used.values()].map(({ name, gainC, source }) => ({
    rule: 'frost-watch.cover-gain',
    saw: { cover: name },
    limit: gainC,
    source,
  }));
}
