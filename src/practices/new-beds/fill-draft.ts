/**
 * Filling a new bed.
 */
import { seasonOf } from '../../climate/season.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { BARROW_KG, BARROW_LITRES, barrowLoads } from '../barrow.ts';
import { type BedFill, SCOOPED_MM, soilKg } from '../bed-fill.ts';
import { BOUGHT_UNTESTED } from '../cautions.ts';
import type { BedDemand } from '../compost-balance.ts';
import { knownAs } from '../confidence.ts';
import type { Supply, TaskDraft } from '../draft.ts';
import { FILL_MINUTES_PER_M3, START_UP_MINUTES } from '../effort.ts';
import type { BedFilling } from '../fill-window.ts';
import { markOutKey, maturityKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer } from '../seasons.ts';
import { awaitedSqueezeKey } from '../soil-class.ts';
import { bedSubject } from '../subjects.ts';
import { fillReasons } from './fill-reasons.ts';
import { MIX_LEAD_DAYS } from './mix-order-draft.ts';

interface Filled {
  filling: BedFilling;
  fill: BedFill;
  order: TaskDraft | undefined;
  /** The heaps of compost it takes. */
  drawn: BedDemand['drawn'];
}

/** What can hurt whoever fills a bed. */
export const FILL_CAUTIONS: readonly string[] = [
  `A barrow full of moist soil weighs about ${quantity(soilKg(BARROW_LITRES), 'kg')}, twice one of compost (${quantity(BARROW_KG, 'kg')}): fill it half and go twice, bend your knees, and stop before your back does.`,
  'Dry mix and compost raise dust and mould spores: damp them, wear gloves, and a mask if your lungs or immunity are weak.',
  BOUGHT_UNTESTED,
];

/** Fill a bed; marked done, the bed is there. */
export function fillDraft(input: PracticeInput, { filling, fill, order, drawn }: Filled): TaskDraft {
  const { climate } = input;
  const pileIds = [...new Set(drawn.flatMap(({ pileId }) => pileId ?? []))];
  const { bed, window } = filling;
  return {
    key: filling.key,
    practice: 'new-beds',
    kind: 'fill-bed',
    job: { id: 'fill-bed', title: 'Fill the new bed' },
    subject: bedSubject(bed),
    weight: 'work',
    title: `Fill ${bed.name}`,
    steps: fillSteps(fill),
    cautions: FILL_CAUTIONS,
    supplies: supplies(fill),
    window,
    ifMissed: 'still do',
    missedNote: 'Nothing can be sown or set out there until it is filled; what is raised for it waits in its pots.',
    effortMinutes: fillMinutes(fill),
    onceMinutes: START_UP_MINUTES,
    needs: ['soil-fit', 'above-freezing'],
    after: [
      { key: markOutKey(bed.id), minDays: 0 },
      ...waitsForOrder(order, window.latest),
      ...pileIds.map((pileId) => ({ key: maturityKey(pileId), minDays: 0 })),
      ...waitsForHandful(input, window.preferred),
    ],
    confidence: knownAs(climate, 'derived'),
    reasons: fillReasons(filling, fill),
    makes: [
      { makes: 'bed-filled', bedId: bed.id },
      ...(fill.compostL === 0
        ? []
        : [
            {
              makes: 'bed-topdressed' as const,
              bedId: bed.id,
              litres: fill.compostL,
              ...(pileIds.length === 0 ? {} : { pileIds }),
            },
          ]),
    ],
  };
}

/** Minutes to fill a bed, start-up included. */
export function fillMinutes({ movedL }: Pick<BedFill, 'movedL'>): number {
  return Math.ceil(START_UP_MINUTES + (movedL / 1000) * FILL_MINUTES_PER_M3);
}

/** How a bed is filled, step by step. */
export function fillSteps({ topsoilL, scoopedM2, compostL, mixL }: BedFill): string[] {
  const brought = [
    ...(mixL > 0 ? [`${quantity(mixL, 'L')} of bed mix (${barrowLoads(mixL)})`] : []),
    ...(compostL > 0 ? [`${quantity(compostL, 'L')} of your own compost (${barrowLoads(compostL)})`] : []),
  ];
  return [
    'Squeeze a handful from the path, and one of the mix: they crumble, go on; they smear or freeze to the shovel, wait. Soil moved wet sets hard.',
    ...(topsoilL > 0
      ? [
          `Scoop the top ${quantity(SCOOPED_MM.low, 'mm')} off ${quantity(scoopedM2, 'm2')} of path into the bed: ${quantity(topsoilL, 'L')}. Leave it where the path is gravel, rubble or full of running roots, and cover the scooped path with wood chips.`,
        ]
      : []),
    `Bring ${brought.join(' and ')}. Lay it in turns with the topsoil and rake each layer in: mixing as you fill is no digging.`,
    `${compostL > 0 ? 'Keep the compost in the upper half, where roots feed. ' : ''}Heap the bed a little over its frame: it sinks.`,
    'Water it through slowly, let it settle a week, top it up and rake it level. From now on nobody treads there.',
    'Nothing to sow at once? Then sow a cover or lay leaves: bare mix dries out and blows away.',
  ];
}

function supplies({ topsoilL, compostL, mixL, compostMostL }: BedFill): Supply[] {
  const amount = (value: number) => ({ value, unit: 'L' as const });
  return [
    ...(mixL > 0 ? [{ what: 'bed mix', amount: amount(mixL), also: barrowLoads(mixL) }] : []),
    ...(compostL > 0 && compostMostL > 0
      ? [{ what: 'finished compost', amount: amount(compostL), also: barrowLoads(compostL) }]
      : []),
    ...(topsoilL > 0
      ? [{ what: 'topsoil from the paths', amount: amount(topsoilL), also: barrowLoads(topsoilL) }]
      : []),
    { what: 'barrow, shovel, rake and hose' },
  ];
}

/** Delivery and beans take their time, where the filling can wait for them. */
function waitsForOrder(order: TaskDraft | undefined, latest: Day): TaskDraft['after'] {
  if (order === undefined) return [];
  const inTime = addDays(order.window.latest, MIX_LEAD_DAYS) <= latest;
  return inTime ? [{ key: order.key, minDays: MIX_LEAD_DAYS }] : [];
}

/** The handful that says in spring whether the garden's soil is fit; later in the year only the shovel tells. */
function waitsForHandful(input: PracticeInput, day: Day): TaskDraft['after'] {
  const { garden, climate } = input;
  if (isAfterMidsummer(climate, day)) return [];
  const season = seasonOf(climate.seasonTurn, day);
  return [{ key: awaitedSqueezeKey(input, garden.place.soilTexture, season), minDays: 0 }];
}
