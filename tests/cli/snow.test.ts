import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

/** Tomatoes set out rashly early, so that snow has something to hurt. */
const TENDER = SMALL_GARDEN.replace(
  'coverStands:',
  '  - { bed: North bed, crop: tomato, setOut: "2027-04-10" }\ncoverStands:',
);

async function running(...argv: string[]) {
  const { folder, loamtide } = await withGarden(TENDER);
  const outcome = await loamtide(...argv);
  const view = await openedIn(folder, ({ steward }) => steward.view('hollow-lane'));
  return { ...outcome, weather: view.garden.weather, plan: view.plan };
}

const isCover = ({ kind }: { kind: string }): boolean => kind === 'cover-beds';

describe('snow', () => {
  test('shows what it would bring and why, and keeps nothing', async () => {
    const { code, out, weather, plan } = await running('snow', '--on', '2027-04-18', '--depth', '6in');
    expect(code).toBe(0);
    expect(out).toContain('Weather of April 18, 2027: snow lying 6 in');
    expect(out).toContain(
      'What is added:\n  Snow tonight: shelter tomato: April 18, 2027\n    Snow lies or is expected about April 18',
    );
    expect(out).toContain('Nothing was changed. Add --apply to take it in.');
    expect(weather).toEqual([]);
    expect(plan.tasks.some(isCover)).toBe(false);
  });

  test('takes it in with --apply, in either unit, as a forecast where the day is to come', async () => {
    const { out, weather, plan } = await running('snow', '--on', '2027-04-19', '--depth', '15cm', '--apply');
    expect(out).not.toContain('Nothing was changed');
    expect(weather).toEqual([{ day: '2027-04-19', kind: 'expected', snowDepthMm: 150 }]);
    expect(plan.tasks.filter(isCover).map(({ day }) => day)).toEqual(['2027-04-18', '2027-04-19']);
  });

  test('says the same as JSON', async () => {
    const { out } = await running('snow', '--on', '2027-04-18', '--depth', '15cm', '--format', 'json');
    expect(JSON.parse(out)).toMatchObject({
      garden: 'hollow-lane',
      applied: false,
      days: [{ day: '2027-04-18', kind: 'observed', snowDepthMm: 150 }],
      moved: [],
      clashes: [],
      added: [{ keys: ['frost-cover/night:2027-04-18'], title: 'Snow tonight: shelter tomato', to: '2027-04-18' }],
      dropped: [],
    });
  });

  test.each([
    [['--on', '2027-04-18', '--depth', '15'], '--depth: "15" cannot be used. Give a depth with its unit'],
    [['--on', '2027-04-18', '--depth', '16m'], '--depth: "16m" cannot be used.'],
    [['--depth', '15cm'], '--on: is missing. Give a real date as YYYY-MM-DD, such as 2027-04-18.'],
    [['--on', 'today', '--depth', '15cm'], '--on: "today" cannot be used.'],
    [['--on', '2027-05-18', '--depth', '15cm'], 'Give a day from 2027-04-18 to 2027-04-28.'],
  ])('refuses %j', async (options, complaint) => {
    const { code, err, weather } = await running('snow', ...options);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
    expect(weather).toEqual([]);
  });
});

describe('report weather', () => {
  test('takes whatever was measured of a day, today unless told otherwise', async () => {
    const { weather } = await running(
      ...[
        'report',
        'weather',
        '--low',
        '-1C',
        '--high',
        '50F',
        '--rain',
        '12mm',
        '--new-snow',
        '3in',
        '--watering',
        '1cm',
      ],
      '--apply',
    );
    expect(weather).toEqual([
      { day: '2027-04-18', kind: 'observed', tminC: -1, tmaxC: 10, rainMm: 12, newSnowMm: 76.2, wateringMm: 10 },
    ]);
  });

  test('takes a forecast, and shows what it asks for this evening', async () => {
    const { out } = await running('report', 'weather', '--on', '2027-04-19', '--low', '30F', '--expected');
    expect(out).toContain('Weather expected of April 19, 2027: low 30 °F');
    expect(out).toContain('Frost tonight, 30 °F: shelter tomato: April 18, 2027');
  });

  test.each([
    [['--low', '9C', '--high', '-1C'], "The day's highest, -1 °C, is below its lowest, 9 °C."],
    [[], 'Nothing is measured.'],
    [['--new-snow', '3m'], '--new-snow: "3m" cannot be used.'],
    [['--low', '99C'], '--low: "99C" cannot be used.'],
    [['--on', '2027-04-19', '--rain', '5mm'], 'Give a day from'],
  ])('refuses %j', async (options, complaint) => {
    const { code, err, weather } = await running('report', 'weather', ...options, '--apply');
    expect(code).toBe(2);
    expect(err).toContain(complaint);
    expect(weather).toEqual([]);
  });
});
