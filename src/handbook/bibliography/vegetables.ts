/** Books and pages behind the vegetables, rotation and fertility: ids `veg:…`. */
import { entries } from './entries.ts';

/** The vegetables' bibliography. */
export const vegetableSources = entries('veg', {
  whole: {
    V1: 'University of Maine Cooperative Extension, Planting Chart for the Home Vegetable Garden',
  },
  part: {
    V2: 'Colorado State University Extension, Vegetable Planting Guide, CMG GardenNotes 720',
    V3: 'Delahaut & Binning, Fresh Market Vegetable Production: Planting and Harvest Dates, University of Wisconsin Extension, archived 2008',
    V4: 'Texas A&M AgriLife, Check Soil Temperature, Earth-Kind Gardening',
    V6: 'University of Illinois Extension, Planting Vegetables, 2017, and When can I plant my garden, 2021',
    V7: 'Utah State University Extension, Suggested Vegetable Planting Dates for Utah, 2024',
    V8: "Iowa State University, There's Still Time to Plant the Vegetable Garden, Horticulture & Home Pest News, 7 June 2013",
    V12: 'University of Connecticut IPM, Having Problems Controlling Vegetable Crop Diseases: Try Rotation',
    V13: 'MacNab & Zitter, Do Rotations Matter within Disease Management Programs?, Penn State and Cornell',
    V17: 'Miller & Mann, How to Use Compost in Gardens and Landscapes, EM 9308, Oregon State University Extension, 2021',
    V22: 'Growing Healthy Soil, Natural Lawn & Garden guide of the Seattle-area water utilities',
    V28: 'Iowa State University Extension, Yard and Garden: Broccoli, Cabbage, Cauliflower Seedlings',
    V30: 'University of California IPM, Onion and Garlic: White Rot, Pest Management Guidelines',
    V31: 'UMass Extension Vegetable Program, Alliums, White Rot',
    V32: 'Johnson, White Rot of Garlic and Onions, Bulletin 2062, University of Maine Cooperative Extension',
    V33: 'PNW Plant Disease Management Handbook, Garlic: White Rot, revised 2024',
    V34: 'Sullivan, Integrated Clubroot Control Strategies for PNW Brassica Producers, SARE OW15-005, final report',
    V36: 'Nebraska Extension, Spring Vegetable Gardening Help, 15 May 2013',
    V37: 'UMass Extension, Cover Crops, Brassicas',
    V42: 'Fuller, garlic advice, University of Maine Extension, 14 September 2015',
    V49: 'Utah Department of Agriculture and Food, cold-hardiness groups for planting',
    V50: 'Grandpre, Can I Grow That Here?, MontGuide MT199308AG, Montana State University Extension, 2018',
    USABLIGHT: 'USAblight, Information about Late Blight for Gardeners, usablight.org',
    V64: 'PNW Plant Disease Management Handbook, Okra: Verticillium Wilt',
    V68: 'Iowa State University Extension, Rhubarb Stalks Exposed to Frost Can Become Toxic',
    V69: 'Arora, Wisniewski & Makus, Frost Hardiness of Asparagus officinalis L., HortScience 27(7):823–824',
  },
  secondary: {
    V5: 'Harrington & Minges, Vegetable Seed Germination, University of California Agricultural Extension, 1954',
    V9: 'Iowa State University Extension, Planting and Harvesting Times for Garden Vegetables, PM 534',
    V10: 'Traunfeld, Fertilizing Vegetables, University of Maryland Home & Garden Information Center',
    V27: 'Iowa State University Extension, indoor seed-starting weeks, 2014',
    V29: 'Upham, seed-starting lead time for cole crops, Kansas State University',
    V35: 'Managing Clubroot, agency fact sheet, publisher not shown in the copy read',
    V41: 'Rosen, garlic advice, University of Minnesota',
    V43: 'University of Minnesota Extension, when to plant garlic',
    V62: 'Proper crop rotation fights disease, extension column, 30 January 2006',
    GUGINO: 'Gugino, Penn State, quoted in Preventing tomato late blight next year, Greenhouse Management',
    V63: 'Verticillium Wilt Control Challenges, Growing Magazine, August 2014',
  },
  'not read': {
    V55: "Maynard & Hochmuth, Knott's Handbook for Vegetable Growers, Wiley",
  },
});
