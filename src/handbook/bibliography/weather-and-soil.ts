/** Books, pages and data behind weather, soil and frost: ids `agro:…` and `climate:…`. */
import { entries } from './entries.ts';

/** The bibliography of weather, soil and frost. */
export const agrometSources = entries('agro', {
  part: {
    S1: 'Allen et al. 1998, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, Table 19',
    S2: 'NOAA NCDC, README of the 1981–2010 Supplemental (Agricultural) Normals',
    S3: 'NOAA NCDC, freeze and frost probability maps, metadata text',
    S5: 'Utah Climate Center, Utah State University, freeze-date table help',
    S6: 'USDA NRCS National Cooperative Soil Survey, frost-free-days routine and its test',
    S7: 'US National Weather Service Blacksburg, newsletter of autumn 2007: the frost and freeze programme',
    S12: 'McMaster & Wilhelm 1997, Growing degree-days: one equation, two interpretations, Agric. For. Meteorol. 87:291–300',
    S34: 'University of Minnesota Extension, Estimating soil moisture by feel and appearance',
    S35: 'California State University Fresno, Center for Irrigation Technology, depletion chart by feel',
    S41: 'Jabro et al. 2009, Estimating in situ soil-water retention and field water capacity, Irrigation Science 27:223–229',
    S42: "Kansas State University newsletters on not working wet soil, relayed by a community garden's page",
    S13: 'Zalom et al. 1983, Degree-days: the calculation and use of heat units in pest management, UC DANR Leaflet 21373, Table 7',
    S23: 'Baxter, Graves & Moore 2005, a climatology of snow-to-liquid ratio, Weather and Forecasting 20:729–744',
    S24: 'Jennings et al. 2018, rain–snow temperature threshold across the Northern Hemisphere, Nature Communications 9',
    S25: 'Kansas State University Weather Data Library, notes on fresh snow, 2018',
    S44: 'UC Cooperative Extension Sacramento, GN 154, after California Master Gardener Handbook, Table 5.2',
    S49: 'Daly et al. 2012, a new USDA plant hardiness zone map, J. Appl. Meteor. Climatol. 51:242–264',
    S50: 'USDA ARS, 2023 Plant Hardiness Zone Map release',
    S51: 'US Forest Service, RDS-2019-0001, plant hardiness zones from daily minima',
    S53: 'Frost damage by crop and part, PMC10202904, Table 2, 2023',
    S57: 'Oregon State University 1988, Row cover effects on minimum air temperature, North Willamette station',
    S59: 'Penn State Extension demonstration garden, note on frost protection, April 2020',
  },
  secondary: {
    S19: 'USDA NRCS 2004, National Engineering Handbook Part 630 chapter 11, Snowmelt',
    S22: 'Westenbroek et al., USGS Soil-Water-Balance code, method appendix; frozen ground after Molnau & Bissell 1983',
    S33: 'USDA NRCS, guidelines for estimating soil moisture conditions by feel',
    S37: 'Optimum water content for tillage, an encyclopaedia page that sums up papers on tillage',
    S30: 'University of Montana, Biome-BGC: soil temperature from the mean air temperature of eleven days',
    S45: "Harrington & Minges 1954, Vegetable Seed Germination, in Knott's Handbook, reprinted by UC Santa Cruz",
    S46: 'University of Florida IFAS, germination temperatures',
    S52: 'Tables of the hardiness zones, several copies',
  },
});

/** Public climate data. */
export const climateSources = entries('climate', {
  whole: {
    'NCEI-8110': 'NOAA NCEI, US Climate Normals 1981–2010: freeze dates and monthly means',
  },
});
