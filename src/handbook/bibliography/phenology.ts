/** Books and pages behind bloom and cold: ids `phenology:…`. */
import { entries } from './entries.ts';

/** The bibliography of bloom and cold. */
export const phenologySources = entries('phenology', {
  whole: {
    P2: 'North Dakota Agricultural Weather Network, small-grain heat-unit tables, after Bauer et al. 1984 and 1992',
    P3: 'WOFOST 7.2 crop parameters, after Boons-Prins et al. 1993 and van Heemst 1988',
  },
  part: {
    'OSU-spring-forage': 'Hartschuh, Ohio State University Extension, spring forage note citing North Dakota',
    P1: 'Kantar & Porter 2014, Crop Management 13(1):1–9, sowing dates of rye in Minnesota',
    P6: 'Teasdale et al. 2004, Agronomy Journal 96:1266–1271',
    P7: 'Butler et al. 2002, Crop Science, crimson clover flowering',
    P9: 'Patrick & Stoddard, Physiology of flowering and grain filling in faba bean, Field Crops Research',
    P11: 'Wilson & Robson 1996, Pea phenology responses, Australian Agronomy Conference',
    P12: 'Saskatchewan Pulse Growers, pea description and adaptation',
    P15: 'Hunter et al. 2017, Journal of Agricultural and Ecological Research International 11(4):1–8',
    P17: 'Kansas State University Agronomy eUpdate 661, sorghum heat units',
    P18: 'Ellis et al., Time to flowering in six annual crops: cowpea, Experimental Agriculture; Hadley et al. 1983',
    P19: 'Cornell Field Crops, small grains growth stages',
    P20: 'University of Wisconsin-Madison Extension, rye varieties for organic no-till soybeans',
    P21: 'University of Vermont Extension, Roller crimping cereal rye, 2024',
    P23: 'Mirsky et al. 2009, Agronomy Journal 101:1589–1596',
    P24: 'Bartin University, phacelia sowing dates and flowering, 2013–14',
    P31: 'University of Wisconsin, red clover cutting, 23 April 2000',
    P33: 'Cardinal temperatures of winter and spring peas, United States government authors, 2025 (PubMed 40596089)',
    P34: 'Managing Cover Crops Profitably, 3rd edition, SARE, 2007, pages 105–119',
    P40: 'Aase & Siddoway 1979, Soil Science Society of America Journal 43:1229–1233',
    P41: 'University of Saskatchewan, Winter Wheat Production Manual, chapter 12',
    P43: 'Fall-sown cereals in eastern Ontario, 1986, Canadian Journal of Plant Science 66:25–37',
    P44: 'Factors affecting the cold survival of winter cereals, Canadian Journal of Plant Science',
    P45: 'Skinner & Garland-Campbell 2008, Canadian Journal of Plant Science 88:885–889',
    P47: 'Meyer & Badaruddin 2001, Crop Science 41:1838–1842',
    P48: 'Wiering et al. 2018, Crop Science, hairy vetch freezing tolerance',
    P50: 'Caradus et al. 1989, Journal of Agricultural Science, white clover frost hardiness',
    P55: 'Kansas State University eUpdate, cold and field pea',
    P58: 'When cover crops die, university no-till vegetable project, October 2014',
  },
  secondary: {
    P42: 'NDSU Extension, winter wheat, January 2012',
    P46: 'Iowa State University Extension, note of May 2020',
    P52: 'USDA ARS Pullman, registration of winter faba germplasm WH-1 to WH-4',
    P60: 'Unsigned page on berseem clover and cold',
  },
});
