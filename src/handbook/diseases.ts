/**
 * Diseases that stay in a bed: what they strike, how long their hosts keep out of it, and the covers that carry them.
 *
 * Remains of none of them go to the compost: a home pile is rarely hot all through (compost:S19).
 */
import { coverCrops } from './cover-crops.ts';
import type { RotationGroup } from './shapes/plant.ts';
import type { Row, SourceId } from './shapes/row.ts';

/** Figures of a disease whose origin is kept. */
type DiseaseField = 'years' | 'lingerYears' | 'coverIds' | 'cropIds' | 'stays';

/** One disease as the handbook knows it. */
export interface Disease extends Row<DiseaseField> {
  id: string;
  /** For the middle of a sentence. */
  name: string;
  /** Other names and spellings, in small letters. */
  alsoCalled: readonly string[];
  /** Groups of crops that catch it, whole. */
  groups: readonly RotationGroup[];
  /** Single crops of other groups that catch it. */
  cropIds: readonly string[];
  /** Everything that catches it, in words for the middle of a sentence. */
  hosts: string;
  /**
   * Years its hosts keep out of the bed, the long end of what is published; `for good` where no end is known. Absent
   * where only words such as "several" are published: then each crop's own ordinary interval holds.
   */
  years?: number | 'for good';
  /** Years for which some still count it alive, where that is longer. */
  lingerYears?: number;
  /** Covers that carry it. */
  coverIds: readonly string[];
  /** Where it lives on and what that asks for, in sentences. */
  stays: string;
}

const brassicaCovers = coversOf('cabbage');
const legumeCovers = coversOf('legume');

/** Covers counted to a group of crops. */
function coversOf(group: RotationGroup): readonly string[] {
  return coverCrops.filter(({ rotationGroup }) => rotationGroup === group).map(({ id }) => id);
}

const cabbageKin = {
  groups: ['cabbage'],
  cropIds: [],
  hosts: 'cabbage and all its kin, turnip and radish among them',
  coverIds: brassicaCovers,
} as const;
const onionKin = { groups: ['onion'], cropIds: [], hosts: 'onions, garlic, leeks and chives', coverIds: [] } as const;
const nightshadeKin = {
  groups: ['nightshade'],
  cropIds: [],
  hosts: 'tomato, potato, pepper and their kin',
  coverIds: [],
} as const;
const cucurbitKin = {
  groups: ['cucurbit'],
  cropIds: [],
  hosts: 'cucumbers, squash and melons, all together',
  coverIds: [],
} as const;
const legumeKin = { groups: ['legume'], cropIds: [], hosts: 'peas and beans', coverIds: legumeCovers } as const;

/** The long end of V12's table unless a row says otherwise; kin among covers counted as V37 and V62 do. */
const uconn: readonly SourceId[] = ['veg:V12'];
const withLegumeCovers = { sources: ['veg:V12', 'veg:V62'], marks: { coverIds: 'derived' } } as const;

/** Every disease the handbook has a word on, in the order of its families. */
export const diseases: readonly Disease[] = [
  {
    ...cabbageKin,
    id: 'clubroot',
    name: 'clubroot',
    alsoCalled: ['club root', 'clubfoot', 'finger and toe', 'plasmodiophora'],
    years: 7,
    stays:
      'Its spores rest in the soil and live on in weeds of the cabbage family too: pull those. Lime lowers it only ' +
      'where the soil is at pH 7 or more when the crop goes in, and does not end it.',
    sources: ['veg:V12', 'veg:V35', 'veg:V37', 'veg:V34'],
    marks: {},
    readIn: { coverIds: 'veg:V37', stays: 'veg:V34' },
  },
  {
    ...cabbageKin,
    id: 'blackleg',
    name: 'blackleg',
    alsoCalled: ['black leg', 'phoma'],
    years: 4,
    stays: 'It lives on in the stalks and leaves that are left: none may stay.',
    sources: ['veg:V12', 'veg:V37'],
    marks: { stays: 'from memory' },
    readIn: { coverIds: 'veg:V37' },
  },
  {
    ...cabbageKin,
    id: 'black-rot',
    name: 'black rot',
    alsoCalled: ['blackrot', 'xanthomonas'],
    years: 3,
    stays: 'It lives on in what is left of the crop, and comes with seed: buy that fresh.',
    sources: ['veg:V12', 'veg:V37'],
    marks: { stays: 'from memory' },
    readIn: { coverIds: 'veg:V37' },
  },
  {
    ...cabbageKin,
    id: 'fusarium-yellows',
    name: 'fusarium yellows',
    alsoCalled: ['cabbage yellows', 'yellows', 'fusarium', 'fusarium wilt'],
    years: 7,
    stays: 'It stays in the soil for many years, nobody says how many: a resistant kind is the way round it.',
    sources: ['veg:V12', 'veg:V37'],
    marks: { years: 'house default', stays: 'from memory' },
    readIn: { coverIds: 'veg:V37' },
  },
  {
    ...onionKin,
    id: 'white-rot',
    name: 'white rot',
    alsoCalled: ['whiterot', 'onion white rot', 'garlic white rot', 'sclerotium', 'sclerotium cepivorum'],
    years: 20,
    lingerYears: 40,
    stays: 'Its black grains wait in the soil for an onion root: count the bed as closed, and carry no soil out of it.',
    sources: ['veg:V30', 'veg:V31', 'veg:V32', 'veg:V33'],
    marks: {},
    readIn: { lingerYears: 'veg:V32' },
  },
  {
    ...nightshadeKin,
    id: 'verticillium-wilt',
    name: 'verticillium wilt',
    alsoCalled: ['verticillium', 'verticilium', 'verticilium wilt', 'early dying'],
    groups: ['nightshade', 'mallow'],
    hosts: 'tomato, potato, pepper and their kin, okra, strawberries and brambles',
    years: 4,
    lingerYears: 10,
    stays: 'Corn and cereals do not catch it, though they help only a little.',
    sources: ['veg:V12', 'veg:V63', 'veg:V64'],
    marks: { lingerYears: 'secondary' },
    readIn: { lingerYears: 'veg:V63', stays: 'veg:V64' },
  },
  {
    ...nightshadeKin,
    id: 'early-blight',
    name: 'early blight',
    alsoCalled: ['alternaria blight', 'target spot'],
    stays:
      'It comes back stronger in each year that the family stays: in one field leaf loss went from 3 % in the first year ' +
      'to 74 % in the third.',
    sources: ['veg:V13'],
    marks: {},
  },
  {
    ...nightshadeKin,
    id: 'late-blight',
    name: 'late blight',
    alsoCalled: ['blight', 'potato blight', 'tomato blight', 'phytophthora'],
    stays:
      'It lives on in living tissue only: lift every tuber, pull potatoes that come up by themselves, and tell the ' +
      'neighbours, for it flies. Bag the plants whole and leave the bags in the sun for a few days.',
    sources: ['veg:USABLIGHT', 'veg:GUGINO'],
    marks: {},
  },
  {
    ...cucurbitKin,
    id: 'cucurbit-scab',
    name: 'scab',
    alsoCalled: ['cucumber scab', 'gummosis'],
    years: 2,
    stays: 'It lives on in vines and leaves that are left.',
    sources: uconn,
    marks: { stays: 'from memory' },
  },
  {
    ...cucurbitKin,
    id: 'cucurbit-leaf-spot',
    name: 'leaf spot',
    alsoCalled: ['leaf spots', 'angular leaf spot', 'alternaria leaf spot', 'septoria leaf spot'],
    years: 2,
    stays: 'It lives on in vines and leaves that are left.',
    sources: uconn,
    marks: { stays: 'from memory' },
  },
  {
    ...legumeKin,
    ...withLegumeCovers,
    id: 'bean-anthracnose',
    name: 'anthracnose',
    alsoCalled: ['bean anthracnose', 'colletotrichum'],
    years: 2,
    stays: 'It comes with seed saved from sick plants: save none.',
    marks: { coverIds: 'derived', stays: 'from memory' },
  },
  {
    ...legumeKin,
    ...withLegumeCovers,
    id: 'bacterial-blight',
    name: 'bacterial blight',
    alsoCalled: ['common blight', 'halo blight', 'common bacterial blight', 'bean blight'],
    years: 2,
    stays: 'It comes with seed saved from sick plants: save none. Keep out of the rows while the leaves are wet.',
    marks: { coverIds: 'derived', stays: 'from memory' },
  },
  {
    ...legumeKin,
    ...withLegumeCovers,
    id: 'white-mould',
    name: 'white mould',
    alsoCalled: ['white mold', 'sclerotinia', 'sclerotinia white mould', 'sclerotinia white mold'],
    cropIds: ['potato', 'tomato', 'lettuce-leaf', 'lettuce-head', 'cabbage'],
    hosts: 'peas, beans, potato, tomato, lettuce and cabbage',
    stays: 'Its black grains lie in the soil for several years. Room and air between plants hold it back.',
    marks: { coverIds: 'derived', stays: 'from memory' },
  },
  {
    ...legumeKin,
    id: 'fusarium-root-rot',
    name: 'fusarium root rot',
    alsoCalled: ['root rot', 'fusarium', 'dry root rot'],
    years: 3,
    stays: 'It is worst in cold, wet or trodden soil.',
    sources: ['veg:V62'],
    marks: { years: 'secondary', coverIds: 'derived', stays: 'from memory' },
  },
  {
    id: 'carrot-leaf-blight',
    name: 'leaf blight',
    alsoCalled: ['carrot leaf blight', 'leaf blights', 'alternaria', 'alternaria leaf blight', 'celery blight'],
    groups: ['carrot'],
    cropIds: [],
    hosts: 'carrots, parsnips, celery, parsley and their kin',
    coverIds: [],
    stays: 'It lives on for a few years in the leaves that are left.',
    sources: uconn,
    marks: {},
  },
  {
    id: 'cercospora',
    name: 'cercospora leaf spot',
    alsoCalled: ['cercospora', 'leaf spot', 'leaf spots', 'beet leaf spot'],
    groups: ['beet-spinach'],
    cropIds: [],
    hosts: 'beet, chard and spinach',
    years: 3,
    coverIds: [],
    stays: 'It lives on in the leaves that are left.',
    sources: uconn,
    marks: { stays: 'from memory' },
  },
  {
    id: 'lettuce-drop',
    name: 'drop or bottom rot',
    alsoCalled: ['drop', 'lettuce drop', 'bottom rot', 'sclerotinia drop', 'sclerotinia', 'rhizoctonia'],
    groups: ['lettuce-daisy'],
    cropIds: [],
    hosts: 'lettuce, endive and radicchio',
    years: 3,
    coverIds: [],
    stays: 'It begins where the lowest leaves touch wet soil: lift the whole plant with a little soil.',
    sources: uconn,
    marks: { stays: 'from memory' },
  },
  {
    id: 'yellow-leaf-blight',
    name: 'yellow leaf blight',
    alsoCalled: ['corn leaf blight', 'leaf blight'],
    groups: [],
    cropIds: ['sweet-corn'],
    hosts: 'sweet corn',
    years: 3,
    coverIds: [],
    stays: 'It lives on in stalks and leaves that lie on the ground: none may stay as mulch.',
    sources: uconn,
    marks: { stays: 'from memory' },
  },
  {
    id: 'asparagus-fusarium',
    name: 'fusarium crown rot',
    alsoCalled: ['fusarium', 'crown rot', 'fusarium crown and root rot', 'fusarium wilt', 'root rot'],
    groups: [],
    cropIds: ['asparagus'],
    hosts: 'asparagus',
    years: 'for good',
    coverIds: [],
    stays: 'Asparagus is not set in that ground again.',
    sources: uconn,
    marks: {},
  },
];
