/**
 * Sentences of the handbook that tasks show as they stand.
 */
import { describe, expect, it } from 'vitest';
import { coverCropById, coverCrops } from '../../src/handbook/cover-crops.ts';
import { feedstocks } from '../../src/handbook/feedstocks.ts';
import { vegetables } from '../../src/handbook/vegetables.ts';
import { readableIn } from '../../src/measures/quantity.ts';

const BARE_AMOUNT = /\d\s?(°[CF]|mm|cm|m|kg|g|L|litres?|inch(es)?|in|ft|lb)\b/;

const texts = [
  ...coverCrops.flatMap(({ cautions, cutStage }) => [...cautions.map(({ text }) => text), cutStage]),
  ...vegetables.flatMap(({ cautions }) => cautions.map(({ text }) => text)),
  ...feedstocks.flatMap(({ cautions }) => cautions),
];

describe('amounts in the handbook’s sentences', () => {
  it('are all marked, so that each reader gets their own units', () => {
    const unmarked = texts.map((text) => text.replace(/⟦[^⟧]*⟧/g, '')).filter((text) => BARE_AMOUNT.test(text));
    expect(unmarked).toEqual([]);
  });

  it('read in inches and °F where those are read', () => {
    const sorghum = coverCropById.get('sorghum_sudangrass')?.cutStage ?? '';
    expect(readableIn('us', sorghum)).toContain('19 ¾ in to 29 ½ in tall, leaving 6 in of stubble');
    const vetch =
      coverCropById
        .get('hairy_vetch')
        ?.cautions.map(({ text }) => text)
        .join(' ') ?? '';
    expect(readableIn('us', vetch)).toContain('below 5 °F');
    expect(readableIn('metric', vetch)).toContain('below -15 °C');
  });
});
