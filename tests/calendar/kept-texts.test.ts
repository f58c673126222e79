import { expect, it } from 'vitest';
import { gardenFeed, PLAIN_VIEW } from '../../src/calendar/feed-events.ts';
import { KeptTexts } from '../../src/calendar/kept-texts.ts';
import { planOf } from './days-of-planning.ts';

it('texts are written once for as long as nothing of them changes', () => {
  const kept = new KeptTexts();
  const written: string[] = [];
  const shown = (id: string, likeness: string) => ({ id, likeness, write: () => `${written.push(id)} ${likeness}` });
  expect(kept.textsOf([shown('a', 'sow'), shown('b', 'cut')])).toEqual(['1 sow', '2 cut']);
  expect(kept.textsOf([shown('b', 'cut'), shown('a', 'sow late')])).toEqual(['2 cut', '3 sow late']);
  expect(written).toEqual(['a', 'b', 'a']);
});

it('what left is forgotten, and is written anew when it comes again', () => {
  const kept = new KeptTexts();
  let written = 0;
  const a = { id: 'a', likeness: 'sow', write: () => String(++written) };
  expect([kept.textsOf([a]), kept.textsOf([]), kept.textsOf([a])]).toEqual([['1'], [], ['2']]);
});

it.each(['job', 'day'] as const)('a feed by %s hands out the very texts it wrote before', (by) => {
  const plan = planOf(
    [{ dayAfterToday: 2, step: 'Sow ⟦120 g⟧.', jobId: 'sow-winter-rye', state: 'open' }],
    'metric',
    0,
  );
  const view = { ...PLAIN_VIEW, shape: { ...PLAIN_VIEW.shape, by } };
  const frame = { calendarName: 'Hollow Lane', description: '', notice: { title: '', description: '' } };
  const kept = new KeptTexts();
  const [first] = gardenFeed(plan, 'metric', frame, { view, kept }).eventTexts;
  const marked = kept.textsOf.bind(kept);
  const asked: number[] = [];
  kept.textsOf = (shown) => marked(shown.map((one) => ({ ...one, write: () => String(asked.push(1)) })));
  expect(gardenFeed(structuredClone(plan), 'metric', frame, { view, kept }).eventTexts).toEqual([first]);
  expect(asked).toEqual([]);
});
