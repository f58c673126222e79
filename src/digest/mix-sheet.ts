/**
 * A compost mix in words, for the terminal and the page: what it is, what it wants, how it is laid, what to mind.
 */
import { BROWNS_TO_GREENS } from '../handbook/feedstocks.ts';
import { quantity } from '../measures/quantity.ts';
import { mixCautions } from '../practices/composting/mix/cautions.ts';
import { additionWords, middleWords } from '../practices/composting/mix/in-words.ts';
import { type Layers, layersOf, type Room } from '../practices/composting/mix/layers.ts';
import { type Mix, mixOf } from '../practices/composting/mix/mix.ts';
import { type Band, contentsOf, isReckoned, makeupOf, type Portion } from '../practices/composting/mix/portion.ts';
import { GOOD_START, type Standing, standingOf, WILL_DO } from '../practices/composting/mix/target.ts';
import { type AtHand, type Hindrance, type WhatToAdd, whatToAdd } from '../practices/composting/mix/what-to-add.ts';

/** One figure of a mix: its band and how its middle stands. */
export interface MixFigure {
  band: Band;
  standing: Standing;
}

/** All that is said of a mix. Texts may hold marked amounts. */
export interface MixSheet {
  mix: Mix;
  parts: readonly { name: string; kind: string; litres?: number; kg?: number }[];
  carbonToNitrogen: MixFigure;
  moisture: MixFigure;
  inWords: readonly string[];
  byVolume: string;
  answer: WhatToAdd;
  toAdd: readonly string[];
  layers: Layers | undefined;
  layerLines: readonly string[];
  cautions: readonly string[];
}

/** What is said of some portions; nothing where none of them has a ratio to reckon with. */
export function mixSheet(portions: readonly Portion[], atHand?: readonly AtHand[], room?: Room): MixSheet | undefined {
  const mix = mixOf(portions);
  const { carbonToNitrogen, moisturePct } = mix;
  if (carbonToNitrogen === undefined || moisturePct === undefined) return undefined;
  const ratio = figureOf(carbonToNitrogen, 'carbonToNitrogen');
  const wet = figureOf(moisturePct, 'moisturePct');
  const answer = whatToAdd(portions, atHand);
  const laid = answer.reach === 'not' ? mix : answer.after;
  const layers = room && layersOf(laid, room);
  return {
    mix,
    parts: portions.map(partOf),
    carbonToNitrogen: ratio,
    moisture: wet,
    inWords: [ratioWords(ratio), waterWords(wet), ...leftOutWords(mix)],
    byVolume: volumeWords(mix),
    answer,
    toAdd: addWords(answer, ratio.standing, wet.standing),
    layers,
    layerLines: layerWords(layers, answer),
    cautions: mixCautions([...portions, ...(answer.reach === 'not' ? [] : answer.add)].map(({ material }) => material)),
  };
}

function figureOf(band: Band, which: 'carbonToNitrogen' | 'moisturePct'): MixFigure {
  return { band, standing: standingOf(band.usual, GOOD_START[which], WILL_DO[which]) };
}

function partOf({ material, amount }: Portion): MixSheet['parts'][number] {
  const about = { name: material.name, kind: material.class };
  if (!isReckoned(material)) return { ...about, ...amount };
  const { litres, wetKg } = contentsOf(amount, makeupOf(material));
  return { ...about, litres, kg: wetKg };
}

const whole = (value: number): string => String(Math.round(value));

function ratioWords({ band, standing }: MixFigure): string {
  const { low, high } = GOOD_START.carbonToNitrogen;
  const verdict: Record<Standing, string> = {
    good: 'That is a good start.',
    'will do': band.usual < low ? 'It will do, on the rich side.' : 'It will do, on the brown side: slower, not sour.',
    'too low': 'Too rich: it will smell of ammonia and lose its nitrogen.',
    'too high': 'Too brown: it will hardly warm and rot slowly.',
  };
  return (
    `Carbon to nitrogen: about ${whole(band.usual)} to 1, somewhere from ${whole(band.low)} to ${whole(band.high)} as ` +
    `such stuff varies. Good is ${low} to ${high}; ${WILL_DO.carbonToNitrogen.low} to ${WILL_DO.carbonToNitrogen.high} will do. ${verdict[standing]}`
  );
}

function waterWords({ band, standing }: MixFigure): string {
  const { low, high } = GOOD_START.moisturePct;
  const verdict: Record<Standing, string> = {
    good: 'That is a good start.',
    'will do': band.usual < low ? 'It will do, on the dry side.' : 'It will do, on the wet side: fluff it up well.',
    'too low': 'Too dry: it will not begin to work.',
    'too high': 'Too wet: it will pack down and go sour.',
  };
  return (
    `Water: about ${whole(band.usual)} % of its weight, somewhere from ${whole(band.low)} to ${whole(band.high)} %. Good ` +
    `is ${low} to ${high} %; ${WILL_DO.moisturePct.low} to ${WILL_DO.moisturePct.high} % will do. ${verdict[standing]} ` +
    'The squeeze test has the last word: damp, a drop or two at most.'
  );
}

function leftOutWords({ leftOut }: Mix): string[] {
  if (leftOut.length === 0) return [];
  const names = leftOut.map(({ material }) => material.name.toLowerCase()).join(', ');
  return [`Not in the reckoning, because nobody has published a ratio for it: ${names}.`];
}

/** The rule of thumb beside what was worked out. */
function volumeWords({ brownsL, greensL }: Mix): string {
  const rule = `the rule of thumb is ${BROWNS_TO_GREENS} to 1`;
  if (greensL === 0) return `By volume it is all browns; ${rule}.`;
  const parts = Math.round((brownsL / greensL) * 10) / 10;
  return `By volume ${parts} of browns to 1 of greens; ${rule}.`;
}

const HINDRANCE: Readonly<Record<Hindrance, string>> = {
  'too rich': 'nothing there is brown enough, or there is too little of it',
  'too brown': 'nothing there is rich enough, or there is too little of it',
  'too wet': 'nothing there is dry enough to take up the water without making it too brown or too rich',
};

function addWords(answer: WhatToAdd, ratio: Standing, wet: Standing): string[] {
  if (answer.reach === 'not') {
    return [
      `With what is there a pile that works cannot be reached: ${HINDRANCE[answer.hindrance]}.`,
      ...(answer.instead
        ? [`It would be with ${additionWords(answer.instead)}: then ${middleWords(answer.instead.after)}.`]
        : ['Compost it a little at a time, or gather other stuff first.']),
    ];
  }
  if (answer.add.length === 0 && answer.waterL === 0) {
    return [
      answer.reach === 'good'
        ? 'Nothing: it is a good start as it is.'
        : 'Nothing: with what is there it gets no better, and it will do as it is.',
    ];
  }
  const asItIs = [ratio, wet].every((each) => each === 'good' || each === 'will do');
  return [
    `${asItIs ? 'It will do as it is. Better with ' : ''}${additionWords(answer)}: then ${middleWords(answer.after)}${
      answer.reach === 'good' ? ', a good start' : ', which will do; with what is there it gets no better'
    }.`,
  ];
}

function layerWords(layers: Layers | undefined, answer: WhatToAdd): string[] {
  if (layers === undefined) return [];
  const { greens, browns, greensCm, brownsCm, heightCm, overL } = layers;
  const added = answer.reach !== 'not' && answer.add.length > 0 ? ' with what is to be added' : '';
  return [
    `In this bin${added}: ${browns} layers of browns, ${quantity(round(brownsCm), 'cm')} each, and ${greens} of greens between ` +
      `them, ${quantity(round(greensCm), 'cm')} each: browns at the bottom and on top${overL > 0 ? '' : `, ${quantity(Math.round(heightCm), 'cm')} high`}.`,
    ...(overL > 0
      ? [`${quantity(Math.ceil(overL), 'L')} are over: keep them beside it and fill up when it has sunk.`]
      : []),
  ];
}

function round(cm: number): number {
  return Math.round(cm * 2) / 2;
}
