/** Books and pages behind composting: ids `compost:…`. */
import { entries } from './entries.ts';

const CORNELL = 'Cornell Waste Management Institute';

/** The bibliography of composting. */
export const compostSources = entries('compost', {
  part: {
    S2: 'Common composting materials, Table 3 of an agricultural composting factsheet, metric',
    S3: `${CORNELL}, Compost Chemistry, 1996`,
    S4: `Richard & Trautmann, Moisture Content, ${CORNELL}`,
    S5: `Richard & Trautmann, C/N Ratio, ${CORNELL}`,
    S7: `${CORNELL}, Compost Physics`,
    S8: `${CORNELL}, Monitoring Compost Moisture`,
    S9: "Cornell Cooperative Extension, Municipal Yard Waste Composting Operator's Fact Sheets 1 and 2",
    S10: 'Richard et al., Home Composting, part III, Cornell, 1989',
    S12: 'Trautmann & Krasny, Composting in the Classroom, chapter 3, Cornell, 1998',
    S13: 'Manitoba Agriculture, Composting Solid Manure, 2008, Table 1',
    S16: 'Pace, Miller & Farrell-Poe, The Composting Process, Utah State University Extension, 1995',
    S19: 'Backyard composting column, Nebraska, and Browning, Garden Compost, G2222, University of Nebraska',
    S21: 'University of California Santa Cruz, Teaching Organic Farming and Gardening, unit 1.7',
    S22: '40 CFR part 503, appendix B, US EPA, read as the same text in 40 CFR part 257, appendix II',
    S23: '7 CFR 205.203(c), USDA National Organic Program',
    S24: 'USDA AMS, Soil Building: Manures and Composts',
    S26: 'Texas Commission on Environmental Quality, Turning a compost pile',
    S27: 'USDA NRCS, composting facility operation and maintenance plan',
    S28: 'USDA NRCS, Carbon to Nitrogen Ratios in Cropping Systems, 2011, Table 1',
    S29: 'USDA Central Great Plains Research Station, Feeding the Soil: Carbon/Nitrogen Ratio',
    S33: 'Ferrell et al., persistent herbicides, UF/IFAS AG416; NC State, Herbicide Carryover; Oregon State Small Farms, 2009',
    S34: 'Oregon State University Extension, Coffee grounds in compost, 2008',
    S36: 'University of Minnesota Extension, How much compost should you apply to your garden this spring?',
    S38: 'Horrocks et al. 2016, Municipal compost as a nutrient source, Agronomy 6:35',
    S39: 'US EPA, Volume-to-Weight Conversion Factors, 2016',
    S40: 'US EPA, Business Guide for Reducing Solid Waste, EPA/530-K-92-004, 1993, appendix D',
    S40b: 'US EPA factor for food scraps, in a solid-waste textbook of 2008, Table 2.2',
    S41: 'Oregon Department of Environmental Quality, compost-operator density factors, 2005',
    S43: 'Minnesota Pollution Control Agency, Stormwater Manual: compost specifications',
    S44b: 'Support Document for Compost Quality Criteria, BNQ, CCME and AAFC',
    S46: 'North Carolina DENR, Backyard Composting Made Easy',
    S47: 'Ulster County Resource Recovery Agency, Stages of composting',
    S48: 'City of Plymouth, Minnesota, Guide to backyard composting',
    S49: 'University of Arkansas Extension, Compost resources',
    S50: 'Texas A&M Extension, Composting, chapter 2',
    S51: 'Casady, Value and Use of Rabbit Manure, USDA ARS, 1962',
    S52: "Solomon, Organic Gardener's Composting, 1993",
    S54: 'US EPA, answer on piles freezing in winter',
    S55: 'Penn State, home composting guide',
    S56: "US EPA, Backyard Composting: It's Only Natural",
    S59: 'Deschutes Recycling, Oregon, weight of bulk compost',
  },
  'not read': {
    S1: 'Rynk (ed.), On-Farm Composting Handbook, NRAES-54, 1992, Table A.1',
  },
});
