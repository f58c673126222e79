import { describe, expect, test } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp } from '../sample-garden.ts';

const DAYS = { from: '2027-04-22', to: '2027-05-16' };
const ASKED = `${GARDEN}/report/away?from=${DAYS.from}&to=${DAYS.to}`;

describe('the page of times away', () => {
  test('asks for two days, and shows no preview before it has them', async () => {
    const { get } = await sampleApp();
    const text = await (await get(`${GARDEN}/report/away`)).text();
    expect(text).toContain('name="from"');
    expect(text).not.toContain('We are away then');
  });

  test('shows what would move and what would be missed, and keeps nothing', async () => {
    const { get, steward } = await sampleApp();
    const response = await get(ASKED);
    const text = await response.text();
    expect(response.status).toBe(200);
    expect(text).toContain('Away from April 22, 2027 to May 16, 2027');
    expect(text).toMatch(/Pulled forward|Waits for you/);
    expect(text).toContain('If nobody does it: ');
    expect(text).not.toMatch(/[⟦⟧]/);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test('takes it in, lists it with its sheet, and History can take it back', async () => {
    const { get, send, steward } = await sampleApp();
    const response = await send(`${GARDEN}/report/away`, DAYS);
    expect([response.status, response.headers.get('location')]).toEqual([303, `${GARDEN}/report/away?kept=2`]);
    expect(await (await get(`${GARDEN}/report/away`)).text()).toContain(`${GARDEN}/away-sheet?day=${DAYS.from}`);
    expect(await (await get(`${GARDEN}/history`)).text()).toContain('Away from April 22, 2027 to May 16, 2027');
    await steward.undo('mill-row', undefined, 'test');
    expect(await (await get(`${GARDEN}/report/away`)).text()).not.toContain('away-sheet?day');
  });

  test.each([
    [{ from: '2027-04-22', to: '' }, 'Away to:</strong> It is empty.'],
    [{ from: 'soon', to: '2027-04-30' }, 'Away from:</strong> &quot;soon&quot; is not a date.'],
    [{ from: '2027-04-22', to: '2027-04-21' }, 'away to:</strong> &quot;2027-04-21&quot; cannot be used.'],
    [{ from: '2031-04-22', to: '2031-04-23' }, 'away from:</strong>'],
  ])('refuses %j, looked at or sent, with what was typed still there', async (days, complaint) => {
    const { get, send, steward } = await sampleApp();
    for (const response of [
      await get(`${GARDEN}/report/away?${new URLSearchParams(days)}`),
      await send(`${GARDEN}/report/away`, days),
    ]) {
      expect(response.status).toBe(422);
      const text = await response.text();
      expect(text).toContain(complaint);
      expect(text).toContain(`name="from" value="${days.from}"`);
    }
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });
});

describe('the sheet for whoever minds the garden', () => {
  test('says where to tell a time away while none comes', async () => {
    const { get } = await sampleApp();
    const text = await (await get(`${GARDEN}/away-sheet`)).text();
    expect(text).toContain('No time away is known.');
    expect(text).toContain(`${GARDEN}/report/away`);
  });

  test('asks for the cut that cannot wait, names the beds, and says what to leave alone', async () => {
    const { get, steward } = await sampleApp();
    await steward.report('mill-row', { kind: 'away-told', from: '2027-04-20', to: '2027-06-20' }, 'test');
    const text = await (await get(`${GARDEN}/away-sheet`)).text();
    expect(text).toContain('Cut the winter rye in North bed off at the ground');
    for (const words of ['<dt>Wall bed</dt>', '<dt>Left bay</dt>', 'Pull nothing up', 'Take care'])
      expect(text).toContain(words);
    expect(text).not.toMatch(/[⟦⟧]/);
  });

  test('asks for seed to be kept damp where a bed was sown lately', async () => {
    const { get, steward } = await sampleApp();
    await steward.report('mill-row', { kind: 'away-told', from: '2027-05-01', to: '2027-05-09' }, 'test');
    const text = await (await get(`${GARDEN}/away-sheet`)).text();
    expect(text).toContain('South bed was sown');
  });

  test('of a later time away is reached by a day in it; a day that is none means the next', async () => {
    const { get, steward } = await sampleApp();
    await steward.report('mill-row', { kind: 'away-told', from: '2027-04-22', to: '2027-04-25' }, 'test');
    await steward.report('mill-row', { kind: 'away-told', from: '2027-08-01', to: '2027-08-09' }, 'test');
    const sheet = async (query: string) => withoutWhys(await (await get(`${GARDEN}/away-sheet${query}`)).text());
    expect(await sheet('?day=2027-08-01')).toContain('August 1, 2027 to August 9, 2027');
    expect(await sheet('?day=tomorrow')).toContain('April 22, 2027 to April 25, 2027');
  });
});
