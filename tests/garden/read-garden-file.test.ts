import { describe, expect, it } from 'vitest';
import { InputRefused, type Problem } from '../../src/garden/problem.ts';
import { checkGardenFile, readGardenFile } from '../../src/garden/read-garden-file.ts';
import { exampleData, exampleFile } from './example-garden.ts';

function problemsIn(read: () => unknown): readonly Problem[] {
  try {
    read();
  } catch (error) {
    if (error instanceof InputRefused) return error.problems;
    throw error;
  }
  return [];
}

const problemsOf = (change: Record<string, unknown>) =>
  problemsIn(() => checkGardenFile({ ...exampleData(), ...change }));
const problemsOfText = (text: string) => problemsIn(() => readGardenFile(text));

const YAML = `
garden:
  name: Hollow Lane
  latitude: 43.2
  longitude: -88.1
  timeZone: America/Chicago
climate: { nearest: true }
beds:
  - { name: North bed, lengthM: 2.4, widthM: 1.2 }
plantings:
  - bed: North bed
    crop: carrot
    sow: 2027-05-20
`;

describe('a garden file', () => {
  it('is read from YAML, dates in quotes or not, and its gaps filled', () => {
    const file = readGardenFile(YAML);
    expect(file.garden).toEqual({
      id: 'hollow-lane',
      name: 'Hollow Lane',
      latitude: 43.2,
      longitude: -88.1,
      timeZone: 'America/Chicago',
      units: 'metric',
      workDays: ['sat', 'sun'],
      hoursPerWeek: 4,
      soilTexture: 'loam',
      frostRisk: 30,
      bloomRiskPercent: 10,
      frostOffsetDays: 0,
      tempOffsetC: 0,
    });
    expect(file.beds).toEqual([
      { id: 'north-bed', name: 'North bed', lengthM: 2.4, widthM: 1.2, raised: true, watered: false },
    ]);
    expect(file.plantings).toEqual([
      { id: 'north-bed-carrot-2027-05-20', bed: 'north-bed', crop: 'carrot', sow: '2027-05-20' },
    ]);
    expect([file.coverStands, file.piles, file.away]).toEqual([[], [], []]);
  });

  it('is read from JSON alike', () => {
    expect(readGardenFile(JSON.stringify(exampleData()))).toEqual(exampleFile());
  });

  it('may name a bed by its name, its id or the id its name gives it', () => {
    for (const bed of ['North bed', 'n1', 'north-bed']) {
      const beds = [{ id: 'n1', name: 'North bed', lengthM: 2.4, widthM: 1.2 }];
      const plantings = [{ bed, crop: 'carrot', sow: '2027-05-20' }];
      expect(exampleFile({ beds, plantings, coverStands: [] }).plantings[0]?.bed).toBe('n1');
    }
  });

  it('keeps what it says in every optional place', () => {
    const file = exampleFile({
      climate: { monthlyNormals: Array.from({ length: 12 }, () => ({ highC: 10, lowC: 1, precipMm: 80 })) },
      topdressing: { depthMm: 13, season: 'autumn' },
      topdressed: [
        { bed: 'North bed', on: '2026-10-20', litres: 37 },
        { bed: 'North bed', on: '2027-10-20', litres: 37, piles: ['left-bay-2027-05-01'] },
        { bed: 'North bed', on: '2026-11-01', litres: 50, material: 'cow_manure_solid' },
      ],
      compostBought: [{ on: '2026-10-01', litres: 400 }],
      away: [{ from: '2027-07-01', to: '2027-07-01' }],
    });
    expect(file.topdressed).toEqual([
      { bed: 'north-bed', on: '2026-10-20', litres: 37 },
      { bed: 'north-bed', on: '2027-10-20', litres: 37, piles: ['left-bay-2027-05-01'] },
      { bed: 'north-bed', on: '2026-11-01', litres: 50, material: 'cow_manure_solid' },
    ]);
    expect(file.away).toEqual([{ from: '2027-07-01', to: '2027-07-01' }]);
    expect(file.climate.monthlyNormals).toHaveLength(12);
  });
});

describe('a refused garden file', () => {
  it('tells every problem at once, each with its place, value and mend', () => {
    const problems = problemsOf({
      garden: { ...exampleData().garden, latitude: 430, timeZone: 'Chicago' },
      plantings: [
        { bed: 'Nort bed', crop: 'carot', sow: '2027-02-29', setOut: '2027-05-01' },
        { bed: 'North bed', crop: 'carrot', sow: '2027-05-20', lastHarvest: '2027-05-01', water: true },
      ],
    });
    expect(problems).toEqual([
      {
        where: 'garden.latitude',
        what: '430 cannot be used.',
        mend: 'Give degrees north (negative in the south) from -90 to 90, such as 44.5.',
      },
      { where: 'garden.timeZone', what: '"Chicago" cannot be used.', mend: expect.stringContaining('America/Chicago') },
      { where: 'plantings[0].sow', what: '"2027-02-29" cannot be used.', mend: expect.stringContaining('a real date') },
      {
        where: 'plantings[0]',
        what: expect.any(String),
        mend: 'Give either sow or setOut, such as sow: "2027-05-20".',
      },
      { where: 'plantings[1].water', what: 'is not a key this file knows.', mend: expect.any(String) },
      {
        where: 'plantings[1].lastHarvest',
        what: '"2027-05-01" cannot be used.',
        mend: expect.stringContaining('not before'),
      },
      { where: 'plantings[0].crop', what: '"carot" is not a known crop.', mend: 'Did you mean carrot?' },
      { where: 'plantings[0].bed', what: '"Nort bed" is not a known bed.', mend: expect.stringContaining('North bed') },
    ]);
  });

  it('says so in its message, a line each', () => {
    expect(() => checkGardenFile({ ...exampleData(), beds: [], plantings: [], coverStands: [] })).toThrow(
      'The garden file cannot be used: one problem.\n  beds: [] cannot be used. Give at least one bed.',
    );
  });

  it('suggests the nearest key for each it does not know', () => {
    const [bed] = exampleData().beds;
    expect(problemsOf({ beds: [{ ...bed, lenghtM: 2, wideM: 1 }, exampleData().beds[1]], gardn: 1 })).toEqual([
      { where: 'beds[0].lenghtM', what: 'is not a key this file knows.', mend: 'Did you mean lengthM?' },
      { where: 'beds[0].wideM', what: 'is not a key this file knows.', mend: expect.stringContaining('widthM') },
      { where: 'gardn', what: 'is not a key this file knows.', mend: 'Did you mean garden?' },
    ]);
  });

  it('does not ask for a key that is there but misspelt', () => {
    const plantings = [{ bed: 'North bed', crop: 'tomato', setout: '2027-05-20' }];
    expect(problemsOf({ plantings, climate: { neerest: true } }).map(({ where }) => where)).toEqual([
      'climate.neerest',
      'plantings[0].setout',
    ]);
  });

  it.each([
    [{ climate: {} }, 'climate', 'Give exactly one of'],
    [{ climate: { nearest: true, station: 'USW00014839' } }, 'climate', 'Give exactly one of'],
    [{ climate: { nearest: false } }, 'climate.nearest', 'nearest: true'],
    [
      { climate: { frostDates: { lastSpring: '02-30', firstAutumn: '10-05' } } },
      'climate.frostDates.lastSpring',
      '05-10',
    ],
    [{ climate: { monthlyNormals: [] } }, 'climate.monthlyNormals', 'twelve months'],
    [{ plantings: [{ bed: 'North bed', crop: 'carrot' }] }, 'plantings[0]', 'either sow or setOut'],
    [{ plantings: [{ bed: 'North bed', crop: 'carrot', sow: 20270520 }] }, 'plantings[0].sow', 'date in quotes'],
    [{ plantings: [{ bed: 'North bed', crop: 'carrot', sow: '20.5.2027' }] }, 'plantings[0].sow', 'YYYY-MM-DD'],
    [{ plantings: 'none' }, 'plantings', 'Give a list of plantings'],
    [{ plantings: [{ bed: 7, crop: 'carrot', sow: '2027-05-20' }] }, 'plantings[0].bed', 'id or name of a bed'],
    [{ coverStands: [{ bed: 'North bed', sow: '2027-09-15' }] }, 'coverStands[0]', 'either cover or mix'],
    [{ coverStands: [{ bed: 'North bed', cover: 'oat', sow: '2027-09-15' }] }, 'coverStands[0].cover', 'oats'],
    [{ coverStands: [{ bed: 'North bed', mix: 'rye-vech', sow: '2027-09-15' }] }, 'coverStands[0].mix', 'rye-vetch'],
    [
      { coverStands: [{ bed: 'North bed', cover: 'oats', sow: '2027-09-15', cut: '2027-05-20' }] },
      'coverStands[0].cut',
      'not before',
    ],
    [
      { coverStands: [{ bed: 'North bed', cover: 'oats', sow: '2027-09-15', dead: '2027-03-20' }] },
      'coverStands[0].dead',
      'not before',
    ],
    [{ piles: [{ bin: 'Left bay', built: '2027-05-01', method: 'warm' }] }, 'piles[0].method', 'hot, cold'],
    [
      { piles: [{ bin: 'Left bay', built: '2027-05-01', method: 'hot', turns: ['2026-05-09'] }] },
      'piles[0].turns[0]',
      'built',
    ],
    [
      { piles: [{ bin: 'Left bay', built: '2027-05-01', method: 'hot', readings: [{ on: '2026-05-09', tempC: 50 }] }] },
      'piles[0].readings[0].on',
      'built',
    ],
    [
      {
        piles: [
          { bin: 'Left bay', built: '2027-05-01', method: 'cold', ingredients: [{ material: 'leafs', litres: 9 }] },
        ],
      },
      'piles[0].ingredients[0].material',
      'leaves',
    ],
    [
      { piles: [{ bin: 'Left bay', built: '2027-05-01', method: 'hot', finished: '2026-11-01' }] },
      'piles[0].finished',
      'not before',
    ],
    [{ bins: [{ name: 'Left bay', volumeL: -1 }] }, 'bins[0].volumeL', 'litres from 0'],
    [{ topdressed: [{ bed: 'Shed', on: '2026-10-20', litres: 37 }] }, 'topdressed[0].bed', 'North bed'],
    [
      { topdressed: [{ bed: 'North bed', on: '2026-10-20', litres: 37, piles: ['left-bay'] }] },
      'topdressed[0].piles[0]',
      'left-bay-2027-05-01',
    ],
    [
      { topdressed: [{ bed: 'North bed', on: '2026-10-20', litres: 37, material: 'cow_dung' }] },
      'topdressed[0].material',
      'cow_manure_solid',
    ],
    [
      {
        topdressed: [
          {
            bed: 'North bed',
            on: '2026-10-20',
            litres: 37,
            piles: ['left-bay-2027-05-01'],
            material: 'cow_manure_solid',
          },
        ],
      },
      'topdressed[0].material',
      'not both',
    ],
    [{ away: [{ from: '2027-07-02', to: '2027-07-01' }] }, 'away[0].to', 'not before'],
  ])('refuses %j', (change, where, mend) => {
    expect(problemsOf(change)).toEqual([{ where, what: expect.any(String), mend: expect.stringContaining(mend) }]);
  });

  it.each([
    ['latitude', 91],
    ['latitude', '43.2'],
    ['longitude', -181],
    ['hoursPerWeek', 0],
    ['frostRisk', 20],
    ['bloomRiskPercent', 0],
    ['bloomRiskPercent', 51],
    ['bloomRiskPercent', 'low'],
    ['hardinessZone', '5'],
    ['units', 'imperial'],
    ['workDays', []],
    ['workDays', ['saturday']],
    ['soilTexture', 'mud'],
    ['name', '  '],
    ['id', 'Hollow Lane'],
    ['tempOffsetC', Number.NaN],
  ])('refuses garden.%s: %j', (key, value) => {
    const problems = problemsOf({ garden: { ...exampleData().garden, [key]: value } });
    expect(problems.map(({ where }) => where.replace(/\[0\]$/, ''))).toEqual([`garden.${key}`]);
  });

  it('refuses a name or an id that stands twice', () => {
    const [bed] = exampleData().beds;
    const twice = [
      { ...bed, id: 'a' },
      { ...bed, id: 'a' },
    ];
    expect(problemsOf({ beds: twice }).map(({ where, what }) => `${where}: ${what}`)).toEqual([
      'beds[1].name: "North bed" is the name of two.',
      'beds[1].id: "a" is the id of two.',
    ]);
    const planting = { id: 'p', bed: 'North bed', crop: 'carrot', sow: '2027-05-20' };
    expect(problemsOf({ plantings: [planting, planting] })).toHaveLength(1);
  });

  it('takes who does what, beds by name or id', () => {
    const ida = { name: ' Ida ', practices: ['composting'], beds: ['North bed', 'north-bed'] };
    const file = checkGardenFile({ ...exampleData(), household: { people: 4, members: [ida, { name: 'Jonas' }] } });
    expect(file.household?.members).toEqual([
      { id: 'ida', name: 'Ida', practices: ['composting'], beds: ['north-bed', 'north-bed'] },
      { id: 'jonas', name: 'Jonas' },
    ]);
  });

  it('refuses members whose work nothing is known by, and two of one name', () => {
    const members = [
      { name: 'Ida', practices: ['compostin'], beds: ['Nort bed'] },
      { name: 'Ida', beds: [] },
      { name: 'all', task: 1 },
    ];
    const problems = problemsOf({ household: { people: 4, members } });
    expect(problems.map(({ where, mend }) => `${where}: ${mend}`).sort()).toEqual([
      'household.members[0].beds[0]: Did you mean North bed or north-bed or South bed?',
      'household.members[0].practices[0]: Did you mean composting?',
      'household.members[1].beds: Give at least one bed, or leave the list out for all of them.',
      'household.members[1].name: Give each its own name.',
      'household.members[2].name: Give another name: "all" stands for everybody.',
      expect.stringMatching(/^household\.members\[2\]\.task: /),
    ]);
  });

  it('says what is missing', () => {
    expect(problemsOfText('')).toEqual([
      { where: 'the file', what: 'null cannot be used.', mend: expect.stringContaining('garden, climate, beds') },
    ]);
    const missing = problemsOfText('beds: []').map(({ where, what }) => `${where} ${what}`);
    expect(missing).toEqual(['garden is missing.', 'climate is missing.', 'beds [] cannot be used.']);
  });
});

describe('text that is no YAML', () => {
  it.each([
    ['garden:\n\tname: x', 'line 2'],
    ['garden: {name: "x', 'line 1'],
    ['beds: []\nbeds: []', 'line 2'],
    ['garden: 1\n---\ngarden: 2', 'line 2'],
  ])('%j is told by its line', (text, where) => {
    const [problem] = problemsOfText(text);
    expect(problem?.where).toBe(where);
    expect(problem?.what).toMatch(/^[A-Z].*[^:]\.$/);
  });

  it('cannot swell: a file of anchors within anchors is refused', () => {
    const layers = Array.from({ length: 9 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(', ')}]`);
    const bomb = ['a0: &a0 [x, x, x, x, x, x, x, x, x]', ...layers].join('\n');
    expect(problemsOfText(bomb)).toEqual([
      {
        where: 'the file',
        what: expect.stringContaining('alias'),
        mend: expect.stringContaining('Write the text out'),
      },
    ]);
  });

  it('is refused where it points at an anchor that is not there', () => {
    expect(problemsOfText('garden: *home')[0]?.what).toContain('home');
  });

  it('cannot reach into the program by the name of a key', () => {
    const problems = problemsOfText('__proto__: { polluted: true }\nconstructor: 1');
    expect(problems.map(({ where }) => where)).toEqual(expect.arrayContaining(['__proto__', 'constructor']));
    expect(Reflect.get({}, 'polluted')).toBeUndefined();
  });
});
