import { describe, expect, it } from 'vitest';
import { coverCropById } from '../../src/handbook/cover-crops.ts';
import { diseaseNamed, diseasesOf, strikes } from '../../src/handbook/disease-names.ts';
import { diseases } from '../../src/handbook/diseases.ts';
import { vegetableById, vegetables } from '../../src/handbook/vegetables.ts';

const named = (words: string, crop: string) => diseaseNamed(words, vegetableById(crop))?.id;

describe('a disease by its name', () => {
  it.each([
    ['Clubroot', 'cabbage', 'clubroot'],
    ['club-root', 'kale', 'clubroot'],
    ['club root, again', 'radish', 'clubroot'],
    ['finger and toe', 'turnip', 'clubroot'],
    ['WHITE ROT', 'garlic', 'white-rot'],
    ['white mold', 'snap-bean', 'white-mould'],
    ['Sclerotinia', 'tomato', 'white-mould'],
    ['sclerotinia', 'lettuce-head', 'white-mould'],
    ['verticillium', 'okra', 'verticillium-wilt'],
    ['blight', 'potato', 'late-blight'],
    ['early blight', 'tomato', 'early-blight'],
    ['fusarium', 'asparagus', 'asparagus-fusarium'],
    ['leaf spot', 'swiss-chard', 'cercospora'],
    ['leaf spot', 'cucumber', 'cucurbit-leaf-spot'],
  ])('"%s" on %s is %s', (words, crop, id) => {
    expect(named(words, crop)).toBe(id);
  });

  it.each([
    ['clubroot', 'tomato'],
    ['scab', 'potato'],
    ['something odd', 'cabbage'],
    ['roots', 'cabbage'],
    ['--', 'cabbage'],
  ])('"%s" is not known on %s', (words, crop) => {
    expect(named(words, crop)).toBeUndefined();
  });

  it('is never held by two diseases of one crop under the same whole name', () => {
    for (const crop of vegetables) {
      for (const disease of diseasesOf(crop)) expect(named(disease.name, crop.id)).toBe(disease.id);
    }
  });
});

describe('the table of diseases', () => {
  it('strikes something with each of them', () => {
    for (const disease of diseases) {
      expect(vegetables.filter((crop) => strikes(disease, crop)).length, disease.id).toBeGreaterThan(0);
    }
  });

  it('speaks of known crops and covers only', () => {
    for (const { id, cropIds, coverIds } of diseases) {
      for (const cropId of cropIds) expect(vegetableById(cropId).id).toBe(cropId);
      expect(
        coverIds.filter((cover) => !coverCropById.has(cover)),
        id,
      ).toEqual([]);
    }
  });

  it('holds the longer gap that a crop is planned by once it is sick', () => {
    for (const crop of vegetables) {
      if (crop.rotationYearsIfDisease === undefined) continue;
      const known = diseasesOf(crop).map(({ years }) => years);
      expect(known, crop.id).toContain(crop.rotationYearsIfDisease);
    }
  });
});
