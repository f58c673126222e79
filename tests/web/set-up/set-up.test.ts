/**
 * Setting a garden up in the browser, step by step, as forms are sent.
 */
import { describe, expect, test } from 'vitest';
import { seenByIcalJs } from '../../calendar/read-feed.ts';
import { plain } from '../plain-text.ts';
import { HOST, sampleApp } from '../sample-garden.ts';
import { ABOUT, begun, leadsTo, MADISON, TWELVE, toldTo } from './set-up-told.ts';

describe('where', () => {
  test.each([
    ['a pasted pair', { latitude: '43.07,-89.40', longitude: '' }],
    ['letters', { latitude: '43°4\'12"N', longitude: "89°24' W" }],
    ['comma decimals', { latitude: '43,07', longitude: '-89,4' }],
  ])('takes %s and goes on', async (_, fields) => {
    const { tell, show } = await begun();
    expect(leadsTo(await tell('where', fields))).toBe('…/climate');
    expect(plain(await show('where'))).toContain('43.07° N, 89.40° W');
  });

  test('finds a station by name and state, and takes its place and height', async () => {
    const { get, base, tell, show } = await begun();
    const found = await (await get(`${base}/where?words=madison&state=WI`)).text();
    const [, id = ''] = /name="station" value="(\w+)"/.exec(found) ?? [];
    expect(plain(found)).toContain('Madison Dane Regional Airport, Wisconsin');
    expect(leadsTo(await tell('where', { station: id }))).toBe('…/climate');
    expect(plain(await show('where'))).toContain('Madison Dane Regional Airport, Wisconsin 0 mi away');
  });

  test('before the place is told, heights are in the units of the browser’s own country', async () => {
    const { get, base } = await begun();
    const found = async (language: string) =>
      plain(await (await get(`${base}/where?words=madison&state=WI`, { 'Accept-Language': language })).text());
    expect(await found('en-US,en;q=0.9')).toContain('866 ft above the sea');
    expect(await found('de-AT,de;q=0.9,en-US;q=0.5')).toContain('264 m above the sea');
  });

  test('says when no station is called so', async () => {
    const { get, base } = await begun();
    expect(plain(await (await get(`${base}/where?words=zzyzx`)).text())).toContain('No station is called so.');
  });

  test.each([
    ['words=gren+bay', 'Did you mean Green Bay'],
    ['words=de+pere', 'Try the next larger town'],
    ['words=&state=', 'Nothing was asked for'],
  ])('a search for %s says what to try', async (query, words) => {
    const { get, base } = await begun();
    expect(plain(await (await get(`${base}/where?${query}`)).text())).toContain(words);
  });

  test('a longitude that may have lost its minus is asked about, and a letter answers', async () => {
    const { tell } = await begun();
    const lost = await tell('where', { latitude: '44.5', longitude: '88' });
    expect([lost.status, plain(await lost.text())]).toEqual([
      422,
      expect.stringMatching(/Is the sign right\?.*44\.50° N, 88\.00° W is \d+ (mi|km) from/),
    ]);
    expect(leadsTo(await tell('where', { latitude: '44.5', longitude: '88 E' }))).toBe('…/climate');
  });

  test('the height says its unit, that of the place once it is told', async () => {
    const { get, base, tell } = await begun();
    const shown = async () => plain(await (await get(`${base}/where`, { 'Accept-Language': 'de' })).text());
    expect(await shown()).toContain('In metres where no unit is written');
    await tell('where', MADISON);
    expect(await shown()).toContain('In feet where no unit is written');
  });

  test('what follows from the place stands beside it, and beside the frost until that is told', async () => {
    const { show } = await toldTo('climate');
    for (const step of ['where', 'climate']) {
      const text = plain(await show(step));
      // Sunrise to sunset at 43° N: 15 h 22 min and 9 h 1 min, by published sun tables, from memory.
      expect(text).toMatch(/Longest day 15 h 2\d min of light Shortest day 9 h \d min of light/);
    }
    const dates = /(April|May) \d+ to (September|October) \d+/;
    expect(plain(await show('where'))).toMatch(new RegExp(`Frost at the nearest stations .* ${dates.source}`));
    // On the page of the frost they are the choices themselves.
    expect(plain(await show('climate'))).not.toContain('Frost at the nearest stations');
  });

  test('names every wrong field at once, and keeps what was typed', async () => {
    const { tell } = await begun();
    const answer = await tell('where', { latitude: '143', longitude: 'west', elevationM: 'high' });
    const text = await answer.text();
    expect(answer.status).toBe(422);
    for (const words of ['"143" is not a latitude.', '"west" is not a longitude.', '"high" is not a height.'])
      expect(plain(text)).toContain(words);
    expect(text).toContain('value="143"');
  });
});

describe('frost', () => {
  test('shows three stations with distance, height and dates, the mean, and a picture with a table beside it', async () => {
    const { show } = await toldTo('climate');
    const text = await show('climate');
    expect(text.match(/value="station:/g)).toHaveLength(3);
    expect(plain(text)).toMatch(
      /\d+ mi away; \d+ ft (higher|lower) than the garden; (April|May) \d+ to (September|October) \d+/,
    );
    expect(text).toContain('value="nearest" checked=""');
    expect(text).toMatch(/<svg[^>]*role="img"/);
    expect(plain(text)).toContain('no freeze comes on or after the day in one, five and nine years of ten');
  });

  test('says afterwards what it comes to: both freezes, the days between, and the first peas', async () => {
    const { show } = await toldTo('garden');
    expect(plain(await show('climate'))).toMatch(
      /Last freeze, even odds (April|May) \d+ First freeze, even odds (September|October) \d+ Between them 1\d\d days Peas from (March|April)/,
    );
  });

  test('far from every station own dates are said to be better, and chosen', async () => {
    const { tell, show } = await begun();
    await tell('where', { latitude: '52.52 N', longitude: '13.4 E' });
    const text = await show('climate');
    expect(plain(text)).toContain('your own dates are better');
    expect(text).toContain('value="own" checked=""');
    const own = { from: 'own', 'frostDates.lastSpring:month': '04', 'frostDates.lastSpring:day': '28' };
    const incomplete = await tell('climate', own);
    expect([incomplete.status, plain(await incomplete.text())]).toEqual([
      422,
      expect.stringContaining('First freeze of autumn, in an ordinary year: It is empty.'),
    ]);
    const whole = { ...own, 'frostDates.firstAutumn:month': '10', 'frostDates.firstAutumn:day': '20' };
    expect(leadsTo(await tell('climate', whole))).toBe('…/garden');
  });

  test('in the southern half the stations are left out, and spring is in September', async () => {
    const { tell, show } = await begun();
    await tell('where', { latitude: '43.53 S', longitude: '172.64 E' });
    const dates = (last: string, first: string) => ({
      from: 'own',
      'frostDates.lastSpring:month': last,
      'frostDates.lastSpring:day': '20',
      'frostDates.firstAutumn:month': first,
      'frostDates.firstAutumn:day': '10',
    });
    expect(await show('climate')).not.toContain('value="station:');
    const northern = await tell('climate', dates('05', '10'));
    expect([northern.status, plain(await northern.text())]).toEqual([
      422,
      expect.stringContaining('The last freeze of spring on 20 May and the first of autumn on 10 October do not lie'),
    ]);
    expect(leadsTo(await tell('climate', dates('09', '05')))).toBe('…/garden');
    expect(plain(await show('climate'))).toMatch(/Last freeze, even odds 20 September First freeze, even odds 10 May/);
  });

  test('29 February is a day of frost like another, and 30 February is none', async () => {
    const { tell } = await begun();
    await tell('where', { latitude: '30.4', longitude: '31.2' });
    const dates = (day: string) => ({
      from: 'own',
      'frostDates.lastSpring:month': '02',
      'frostDates.lastSpring:day': day,
      'frostDates.firstAutumn:month': '12',
      'frostDates.firstAutumn:day': '20',
    });
    expect((await tell('climate', dates('30'))).status).toBe(422);
    expect(leadsTo(await tell('climate', dates('29')))).toBe('…/garden');
  });

  test('nothing chosen is said so', async () => {
    const { tell } = await toldTo('climate');
    const answer = await tell('climate', { from: 'station:NONE' });
    expect([answer.status, plain(await answer.text())]).toEqual([
      422,
      expect.stringContaining('Nothing of the list is chosen.'),
    ]);
  });
});

describe('the garden and the time', () => {
  test('the zone is worked out, may be overruled, and a wrong one is told with everything else', async () => {
    const { tell, show } = await toldTo('garden');
    expect(await show('garden')).toContain('value="America/Chicago"');
    const answer = await tell('garden', {
      ...ABOUT,
      name: '',
      timeZone: 'Middle-earth',
      hoursPerWeek: '0',
      workDays: [],
    });
    const text = plain(await answer.text());
    expect(answer.status).toBe(422);
    for (const words of ['It is empty.', '"Middle-earth" is no time zone.', '"0" cannot be.', 'Nothing is chosen.'])
      expect(text).toContain(words);
    expect(leadsTo(await tell('garden', { ...ABOUT, timeZone: 'America/New_York' }))).toBe('…/beds');
  });

  test('at sea the zone is that of the hour', async () => {
    const { tell, show } = await begun();
    await tell('where', { latitude: '30', longitude: '-45' });
    await tell('climate', {
      from: 'own',
      'frostDates.lastSpring:month': '03',
      'frostDates.lastSpring:day': '01',
      'frostDates.firstAutumn:month': '12',
      'frostDates.firstAutumn:day': '01',
    });
    expect(await show('garden')).toContain('value="Etc/GMT+3"');
  });
});

describe('beds', () => {
  test('twelve alike go in at once, with the compost and the hours they want beside them', async () => {
    const { tell, show } = await toldTo('beds');
    expect(leadsTo(await tell('beds', TWELVE))).toBe('…/beds');
    const text = plain(await show('beds'));
    expect(text).toContain('Bed 12 2.4 m by 1.2 m, 30 cm deep, raised');
    // 12 × 2.4 m × 1.2 m × 25 mm = 864 L, and 75 L a barrow: worked out by hand.
    expect(text).toMatch(/Ground 34\.6 m² A yearly layer of 25 mm 864 L of compost, 12 barrow loads/);
    expect(text).toMatch(/A work day has 120 minutes A year gives 208 h It wants \d+ h/);
  });

  test('are named by a name of the gardener’s, changed and taken out', async () => {
    const { tell, show } = await toldTo('beds');
    await tell('beds', { ...TWELVE, count: '2', name: 'Long bed' });
    await tell('beds', { ...TWELVE, count: '1', name: 'Wall bed' });
    expect(plain(await show('beds'))).toMatch(/Long bed 1.*Long bed 2.*Wall bed/);
    await tell('beds', { do: 'change', bed: 'wall-bed', name: 'Sunny bed', lengthM: '10 ft', widthM: '1.2' });
    expect(plain(await show('beds'))).toContain('Sunny bed 3.05 m by 1.2 m, level with the ground');
    await tell('beds', { do: 'out:long-bed-1' });
    expect(plain(await show('beds'))).not.toContain('Long bed 1');
  });

  test('what stands in the fields counts when there is no bed yet', async () => {
    const { tell } = await toldTo('beds');
    expect(leadsTo(await tell('beds', { ...TWELVE, do: 'on', count: '1' }))).toBe('…/bins');
  });

  /** The form of new beds as it is handed out to a reader of metres, and sent back. */
  const HANDED = { do: 'on', count: '1', name: '', lengthM: '2.4', widthM: '1.2', depthM: '30', raised: 'yes' };

  test.each([
    ['how many', { count: '12' }, 'Bed 12 2.4 m by 1.2 m'],
    ['a tick taken away', { raised: '' }, 'Bed 2 2.4 m by 1.2 m, 30 cm deep, level with the ground'],
  ])('going on adds what was typed beside a bed that is there: %s', async (_, typed, words) => {
    const { tell, show } = await toldTo('beds');
    await tell('beds', { ...TWELVE, count: '1' });
    const { raised, ...sent } = { ...HANDED, ...typed };
    expect(leadsTo(await tell('beds', { ...sent, ...(raised === '' ? {} : { raised }) }))).toBe('…/bins');
    expect(plain(await show('beds'))).toContain(words);
  });

  test('a form as it was handed out adds none, and what cannot be is told, going back too', async () => {
    const { tell, show } = await toldTo('beds');
    await tell('beds', { ...TWELVE, count: '1' });
    expect(leadsTo(await tell('beds', HANDED))).toBe('…/bins');
    expect(leadsTo(await tell('beds', { ...HANDED, do: 'back' }))).toBe('…/garden');
    expect(plain(await show('beds'))).toContain('One bed');
    for (const asks of ['on', 'back'])
      expect((await tell('beds', { ...HANDED, do: asks, lengthM: 'long' })).status).toBe(422);
  });

  test('several are taken out at once', async () => {
    const { tell, show } = await toldTo('beds');
    await tell('beds', TWELVE);
    await tell('beds', { do: 'out-ticked', ticked: ['bed-2', 'bed-3', 'bed-12'] });
    expect(plain(await show('beds'))).toContain('9 beds');
    expect(plain(await (await tell('beds', { do: 'out-ticked' })).text())).toContain('Nothing is ticked.');
  });

  test('a name that only capitals tell from another is asked about', async () => {
    const { tell } = await toldTo('beds');
    await tell('beds', TWELVE);
    const answer = await tell('beds', { ...TWELVE, count: '1', name: 'bed  3' });
    expect([answer.status, plain(await answer.text())]).toEqual([
      422,
      expect.stringContaining('"Bed 3" is a bed already. Is it the same one?'),
    ]);
  });

  test('one still to be made wants its depth and a day to come', async () => {
    const { tell } = await toldTo('beds');
    const answer = await tell('beds', { ...TWELVE, depthM: '', plannedFor: '2027-04-01', count: '0' });
    const text = plain(await answer.text());
    expect(answer.status).toBe(422);
    for (const words of ['1 April 2027 is past.', 'what fills the bed is reckoned by it', '"0" cannot be.'])
      expect(text).toContain(words);
    expect(leadsTo(await tell('beds', { ...TWELVE, count: '1', plannedFor: '2027-06-01' }))).toBe('…/beds');
  });

  test('cannot be gone past without one', async () => {
    const { get, base } = await toldTo('beds');
    expect(leadsTo(await get(`${base}/growing`))).toBe('…/beds');
  });
});

describe('bins, last year and what grows', () => {
  test('beds and bins at their most say what to do instead of a count that cannot be', async () => {
    const { tell } = await toldTo('bins');
    await tell('bins', { do: 'add', count: '20', size: '760 L' });
    const full = await tell('bins', { do: 'add', count: '1', size: '760 L' });
    expect(full.status).toBe(422);
    expect(plain(await full.text())).toMatch(/"1" cannot be\. Take some out, or add them once the garden is made/);
  });

  test('bins are told by their volume or their sides, or passed over', async () => {
    const { tell, show } = await toldTo('bins');
    await tell('bins', { do: 'add', count: '2', size: '1 x 1 x 0.8 m' });
    await tell('bins', { do: 'add', count: '1', name: 'Barrel', size: '200 L', closed: 'yes' });
    expect(plain(await show('bins'))).toMatch(/Bin 1 800 L.*Bin 2 800 L.*Barrel 200 L, closed/);
    const wrong = await tell('bins', { do: 'add', count: '1', size: 'large' });
    expect([wrong.status, plain(await wrong.text())]).toEqual([
      422,
      expect.stringContaining('"large" is not a volume.'),
    ]);
    expect(leadsTo(await tell('bins', {}))).toBe('…/last-year');
  });

  test('a bin half told is not dropped, and one that is there is changed', async () => {
    const { tell, show } = await toldTo('bins');
    const half = await tell('bins', { count: '3', name: '', size: '' });
    expect([half.status, plain(await half.text())]).toEqual([
      422,
      expect.stringContaining('How much each holds: It is empty.'),
    ]);
    expect(leadsTo(await tell('bins', { count: '1', name: '', size: '' }))).toBe('…/last-year');
    await tell('bins', { do: 'add', count: '1', size: '3 ft x 3 ft x 4 ft' });
    // 3 × 3 × 4 ft is 36 cu ft, and 28.3168 L each: 1,019 L, worked out by hand.
    expect(plain(await show('bins'))).toContain('Bin 1 1019 L');
    await tell('bins', { do: 'change', bin: 'bin-1', name: 'Left bay', size: '1 by 1 by 0.8', closed: 'yes' });
    expect(plain(await show('bins'))).toContain('Left bay 800 L, closed');
  });

  test('what grew last year keeps its family away, bed by bed', async () => {
    const { tell, show } = await toldTo('last-year');
    await tell('last-year', {
      'past:bed-1:2026:0': 'tomato',
      'past:bed-2:2026:0': 'cabbage',
      'past:bed-2:2026:1': 'pea',
    });
    const text = plain(await show('last-year'));
    // The handbook's table: tomatoes come back after four years (veg:V12), cabbages and peas after three.
    expect(text).toContain('Bed 1: tomatoes and potatoes until 2030');
    expect(text).toMatch(/Bed 2: cabbage family until 2029; .* until 2029/);
  });

  test('passing it over says what that costs', async () => {
    const { show } = await toldTo('last-year');
    expect(plain(await show('last-year'))).toContain('cannot tell which family is to stay away');
  });

  test('crops and covers go into several beds, to the day or roughly, and bring their first work', async () => {
    const { tell, show } = await toldTo('growing');
    await tell('growing', { do: 'add', what: 'crop:garlic', beds: ['bed-1', 'bed-2'], rough: '2026-10-15' });
    await tell('growing', { do: 'add', what: 'cover:cereal_rye', beds: 'bed-3', on: '2026-09-20' });
    await tell('growing', { do: 'add', what: 'crop:tomato', beds: 'bed-4', on: '2027-05-28' });
    const text = plain(await show('growing'));
    expect(text).toContain('Garlic in Bed 1 planted on 15 October 2026');
    expect(text).toContain('Winter rye in Bed 3 sown on 20 September 2026');
    expect(text).toContain('Tomato in Bed 4 to be set out on 28 May 2027');
    expect(text).toMatch(/The first work \d+ April: /);
  });

  test('two crops in one bed at once are refused by their names, and nothing is kept', async () => {
    const { tell, show } = await toldTo('growing');
    await tell('growing', { do: 'add', what: 'crop:tomato', beds: 'bed-4', on: '2027-05-28' });
    const answer = await tell('growing', { do: 'add', what: 'crop:pepper', beds: 'bed-4', on: '2027-06-20' });
    expect([answer.status, plain(await answer.text())]).toEqual([422, expect.stringContaining('Pepper in Bed 4:')]);
    expect(plain(await show('growing'))).not.toContain('Pepper in Bed 4');
  });

  test('two crops that stand in one bed now are refused in the same way', async () => {
    const { tell, show } = await toldTo('growing');
    await tell('growing', { do: 'add', what: 'crop:garlic', beds: 'bed-4', on: '2026-10-15' });
    const answer = await tell('growing', { do: 'add', what: 'crop:pea', beds: 'bed-4', on: '2027-04-05' });
    const text = plain(await answer.text());
    expect([answer.status, text]).toEqual([422, expect.stringMatching(/in Bed 4: .*garlic stands there from/)]);
    expect(text).toContain('Two that share a bed are told once the garden is made');
    expect(plain(await show('growing'))).not.toContain('ea in Bed 4');
  });

  test('what is hardly meant is asked about: a season, a width, a year long gone', async () => {
    const { tell, show } = await toldTo('growing');
    await tell('beds', { do: 'change', bed: 'bed-1', name: 'Bed 1', lengthM: '8 ft', widthM: '5 ft', depthM: '30' });
    await tell('growing', { do: 'add', what: 'crop:leek', beds: 'bed-2', on: '2026-12-25' });
    await tell('growing', { do: 'add', what: 'crop:tomato', beds: 'bed-3', on: '2020-06-01' });
    await tell('growing', { do: 'add', what: 'crop:asparagus', beds: 'bed-4', on: '2020-05-01' });
    for (const step of ['growing', 'look-over']) {
      const text = plain(await show(step));
      expect(text).toContain('Is that meant?');
      expect(text).toContain('Bed 1: Bed 1 is 1.52 m across');
      expect(text).toMatch(/Leek in Bed 2: Leek is set out on 25 December 2026, long (after|before) its time here/);
      expect(text).toMatch(/Tomato in Bed 3: Tomato was set out on 1 June 2020 and would be over since about/);
      expect(text).not.toContain('Asparagus in Bed 4:');
    }
  });

  test('nothing is asked about a garden that is as it should be', async () => {
    const { show } = await toldTo('growing');
    expect(plain(await show('growing'))).not.toContain('Is that meant?');
  });

  test('a crop before its bed is there is refused in the words of the form and the reader’s dates', async () => {
    const { tell } = await toldTo('growing');
    await tell('beds', { ...TWELVE, count: '1', name: 'New bed', plannedFor: '2027-09-01' });
    const answer = await tell('growing', { do: 'add', what: 'crop:tomato', beds: 'new-bed', on: '2027-06-01' });
    const text = plain(await answer.text());
    expect([answer.status, text]).toEqual([422, expect.stringContaining('not there before 1 September 2027')]);
    expect(text).toContain('an earlier day by which New bed is to be made');
    expect(text).not.toMatch(/plannedFor of|on 2027-/);
  });

  test('what is missing is told at once', async () => {
    const { tell } = await toldTo('growing');
    const answer = await tell('growing', { do: 'add', what: '', on: '' });
    expect([answer.status, plain(await answer.text())]).toEqual([
      422,
      expect.stringContaining('Neither a day nor a rough one is told.'),
    ]);
  });

  test('a pile that lies in a bin is told with what went in', async () => {
    const { tell, show } = await toldTo('growing');
    await tell('bins', { do: 'add', count: '1', size: '760' });
    await tell('growing', {
      do: 'add-pile',
      bin: 'bin-1',
      built: '2027-04-06',
      method: 'hot',
      material0: 'leaves_dry_loose',
      litres0: '400',
    });
    expect(plain(await show('growing'))).toMatch(/A hot pile in Bin 1 built on 6 April 2027; 400 L of .*leaves/);
  });
});

describe('making it', () => {
  test('shows everything on one page with a way to change each', async () => {
    const { show } = await toldTo('look-over');
    const text = await show('look-over');
    expect(text.match(/>Change</g)).toHaveLength(7);
    expect(plain(text)).toContain('Hollow Lane');
    expect(text).toContain('Make the garden');
  });

  test('keeps the name of every bed within a run, and says which bin is closed', async () => {
    const { tell, show } = await toldTo('look-over');
    await tell('beds', { ...TWELVE, count: '8' });
    await tell('beds', {
      do: 'change',
      bed: 'bed-3',
      name: 'Long bed',
      lengthM: '2.4',
      widthM: '1.2',
      depthM: '30',
      raised: 'yes',
    });
    await tell('bins', { do: 'add', count: '1', size: '200', closed: 'yes' });
    const text = plain(await show('look-over'));
    expect(text).toContain('Bed 1, Bed 2, Long bed and Bed 4 to Bed 12, 12 beds: 2.4 m by 1.2 m');
    expect(text).toContain('Bin 1: 200 L, closed');
  });

  test('in a garden that reads miles, so stand the distances of the stations', async () => {
    const { tell, show } = await toldTo('look-over');
    await tell('garden', { ...ABOUT, units: 'us' });
    const text = plain(await show('look-over'));
    expect(text).toMatch(/\(\d+ mi\)/);
    expect(text).not.toMatch(/\d km\b/);
  });

  test('lands on This week with the address of a calendar, shown once', async () => {
    const { base, send, get, steward } = await toldTo('look-over');
    const made = await send(`${base}/make`, {});
    expect(made.headers.get('location')).toBe('/gardens/hollow-lane?begun=feed-1');
    const week = await get('/gardens/hollow-lane?begun=feed-1');
    const text = await week.text();
    const [, token = ''] = /feed\/([\w-]+)\.ics/.exec(text) ?? [];
    expect(week.headers.get('cache-control')).toBe('no-store');
    expect(plain(text)).toContain('How to subscribe');
    expect(plain(text)).toMatch(
      /\.ics This address works on this computer only.*a phone cannot\..*LOAMTIDE_PUBLIC_URL/,
    );
    expect(text).toContain('href="/handbook/running#settings"');
    expect(seenByIcalJs((await steward.feedBody(token))?.body ?? '').length).toBeGreaterThan(0);
    expect(await (await get('/gardens/hollow-lane')).text()).not.toContain(token);
  });

  test('pressed twice makes one garden, and the set-up leads to it from then on', async () => {
    const { base, send, get, steward } = await toldTo('look-over');
    const pressed = await Promise.all([send(`${base}/make`, {}), send(`${base}/make`, {})]);
    expect(pressed.map((answer) => answer.headers.get('location'))).toEqual(
      Array(2).fill('/gardens/hollow-lane?begun=feed-1'),
    );
    expect(await steward.gardenIds()).toEqual(['hollow-lane']);
    expect((await get(`${base}/beds`)).headers.get('location')).toBe('/gardens/hollow-lane');
    expect((await get(base)).headers.get('location')).toBe('/gardens/hollow-lane');
  });

  test('before its time says what is still to be told', async () => {
    const { base, send, get } = await toldTo('beds');
    expect(plain(await (await get(`${base}/look-over`)).text())).toContain('Still to be told: Beds');
    const answer = await send(`${base}/make`, {});
    expect([answer.status, plain(await answer.text())]).toEqual([
      422,
      expect.stringContaining('is not told to its end'),
    ]);
  });

  test.each([
    ['near the pole', '78.2', '15.6', ['06', '10'], ['08', '20']],
    ['in the far south', '-54.8', '-68.3', ['11', '20'], ['03', '05']],
  ])('works %s with own dates', async (_, latitude, longitude, last, first) => {
    const { tell, base, send, get } = await begun();
    await tell('where', { latitude, longitude });
    await tell('climate', {
      from: 'own',
      'frostDates.lastSpring:month': last[0] ?? '',
      'frostDates.lastSpring:day': last[1] ?? '',
      'frostDates.firstAutumn:month': first[0] ?? '',
      'frostDates.firstAutumn:day': first[1] ?? '',
    });
    await tell('garden', { ...ABOUT, timeZone: 'UTC' });
    await tell('beds', { ...TWELVE, do: 'on', count: '2' });
    await tell('last-year', { 'past:bed-1:2026:0': 'potato' });
    const made = await send(`${base}/make`, {});
    expect(made.status).toBe(303);
    expect((await get(made.headers.get('location') ?? '')).status).toBe(200);
  });
});

describe('coming and going', () => {
  test('a step is gone back from with what was told of it kept', async () => {
    const { tell, show } = await toldTo('garden');
    expect(leadsTo(await tell('garden', { ...ABOUT, do: 'back' }))).toBe('…/climate');
    expect(await show('garden')).toContain('value="Hollow Lane"');
  });

  test('from the beds on the rest can be left for later, and what was typed is kept', async () => {
    const { tell, show } = await toldTo('beds');
    expect(leadsTo(await tell('beds', { ...TWELVE, count: '2', name: 'Long', do: 'to-the-end' }))).toBe('…/look-over');
    expect(plain(await show('look-over'))).toContain('Long 1 and Long 2');
    expect(await show('garden')).not.toContain('The rest later');
  });

  test('a step come back to leads on to what is still open, then to the page that shows all', async () => {
    const early = await toldTo('bins');
    expect(leadsTo(await early.tell('where', MADISON))).toBe('…/bins');
    const late = await toldTo('look-over');
    expect(leadsTo(await late.tell('garden', { ...ABOUT, name: 'Other Lane' }))).toBe('…/look-over');
  });

  test('another place asks for the frost anew', async () => {
    const { tell, base, get } = await toldTo('look-over');
    await tell('where', { latitude: '45', longitude: '-93' });
    expect(plain(await (await get(`${base}/look-over`)).text())).toContain('Still to be told: Frost');
  });

  test('it is listed to go on with, and thrown away only when asked twice', async () => {
    const { get, send, base } = await toldTo('beds');
    expect(plain(await (await get('/gardens')).text())).toContain('Go on with Hollow Lane');
    expect(leadsTo(await get(base))).toBe('…/beds');
    expect(plain(await (await get(`${base}/throw-away`)).text())).toContain('Throw away Hollow Lane?');
    await send(`${base}/throw-away`, {});
    expect((await get(base)).status).toBe(404);
    expect(plain(await (await get('/gardens')).text())).not.toContain('Go on with');
  });

  test('an address of no step, or of no set-up, is not there', async () => {
    const { get, base } = await begun();
    expect([(await get(`${base}/nonsense`)).status, (await get('/set-up/none/where')).status]).toEqual([404, 404]);
  });

  test('another site cannot begin one', async () => {
    const { app, steward } = await sampleApp(null);
    const headers = { Host: HOST, Origin: 'https://elsewhere.example' };
    expect((await app.request('/set-up', { method: 'POST', headers })).status).toBe(403);
    expect(await steward.drafts()).toEqual([]);
  });
});
