/**
 * Weather files of which no day is used, by what is wrong with them.
 */
/** The header of the shared form. */
export const HEADER = 'date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm';
/** Rows under it. */
export const csv = (...rows: string[]): string => [HEADER, ...rows].join('\n');
/** A month of an element, as GHCN-Daily has it. */
export const dly = (element: string, values: string): string => `USC00000001202701${element}${values}`;
/** One day of it. */
export const day = (value: string, flags = '   '): string => value.padStart(5) + flags;

/** Files of which no day can be used, with what is to be said of each. */
export const REFUSED: Readonly<Record<string, readonly [string, RegExp]>> = {
  nothing: ['', /no header/],
  'blank lines': ['\n\n\n', /no header/],
  'a header alone': [HEADER, /./],
  'another header': ['day,low,high\n2027-01-01,1,2', /no header/],
  'a header of prototypes': ['date,tmin_c,tmax_c,__proto__,constructor\n2027-01-01,1,2,3,4', /not a column/],
  'a header told twice': ['date,tmin_c,tmin_c,tmax_c\n2027-01-01,1,2,3', /stands twice/],
  'a table for another program': ['date\ttmin_c\ttmax_c\n2027-01-01\t1\t2', /no header/],
  semicolons: ['date;tmin_c;tmax_c\n2027-01-01;1;2', /no header/],
  'rows too short': [csv('2027-01-01,1'), /2 cells/],
  'rows too long': [csv('2027-01-01,1,2,3,4,5,6,7'), /8 cells/],
  'a quote never closed': [csv('2027-01-01,"1,2,0,0,0', '2027-01-02,1,2,0,0,0'), /quotes/],
  'quotes within a cell': [csv('2027-01-01,1"2,3,0,0,0'), /quotes/],
  'days that do not exist': [csv('2027-02-29,1,2,0,0,0', '0000-00-00,1,2,0,0,0'), /not a real date/],
  'days of another calendar': [csv('01/02/2027,1,2,0,0,0', '2026-W54,1,2,0,0,0'), /not a real date/],
  'days beyond all years': [csv('+275760-09-13,1,2,0,0,0', '10000-01-01,1,2,0,0,0'), /not a real date/],
  'no numbers': [csv('2027-01-01,NaN,2,0,0,0', '2027-01-02,1,inf,0,0,0', '2027-01-03,1,1e999,0,0,0'), /is "/],
  'the mark of a missing value': [csv('2027-01-01,-9999,-9999,0,0,0'), /-9999/],
  'degrees Fahrenheit': [csv('2027-07-01,68,95,0,0,0'), /is "68"/],
  'units mixed': [csv('2027-07-01,20C,95F,0,0,0'), /is "/],
  'commas for points': [csv('2027-07-01,"1,5","2,5",0,0,0'), /is "1,5"/],
  'a high below the low': [csv('2027-07-01,20,10,0,0,0'), /below its lowest/],
  'figures of another script': [csv('2027-07-01,١,٢,0,0,0'), /is "/],
  'letters of nothing': ['\u0000\u0000\u0000\u0000', /no header/],
  'one line without an end': ['x'.repeat(2_000_000), /more than 10000 characters/],
  'a picture': ['\u0089PNG\r\n\u001a\n', /no header/],
  'a station without a day': [`${dly('TMIN', '')}`, /./],
  'days of a station that do not exist': [dly('TMIN', Array(40).fill(day('10')).join('')), /not a real date/],
  'two stations': [
    `${dly('TMIN', day('10'))}\n${dly('TMIN', day('10')).replace('USC00000001', 'USC00000002')}`,
    /second station/,
  ],
  'GHCN without figures': [dly('TMIN', day('x')), /TMIN of/],
  'GHCN by station, cut off': ['USC00000001,20270229,TMIN,10,,,S', /not a real date/],
};
