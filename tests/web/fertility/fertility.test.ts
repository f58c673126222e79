import { describe, expect, it } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const poor = { topdressing: { depthMm: 6, season: 'autumn' }, coverStands: [] };
const tomato = { bed: 'North bed', crop: 'tomato', setOut: '2027-06-01' };

describe('the fertility page', () => {
  it('has a band in a word for every bed, and the arithmetic of each line with its source', async () => {
    const { get } = await sampleApp(sampleFile({ ...poor, plantings: [tomato] }));
    const response = await get(`${GARDEN}/fertility`);
    expect(response.status).toBe(200);
    const text = await response.text();
    expect(text).toMatch(/class="band is-short"/);
    expect(text).toContain('Tomato wants');
    expect(text).toContain('University of Maryland');
    expect(text).not.toMatch(/⟦|undefined|NaN/);
  });

  it('names several meals by their analysis where a bed is short, with the care they want', async () => {
    const { get } = await sampleApp(sampleFile({ ...poor, plantings: [tomato] }));
    const text = withoutWhys(await (await get(`${GARDEN}/fertility`)).text());
    for (const analysis of ['12-0-0', '6-2-1', '2.5-0.5-2.5']) expect(text).toContain(analysis);
    expect(text).toMatch(/wear a mask/);
    expect(text).toContain('local rules');
  });

  it('says what to do where no crop is known', async () => {
    const { get } = await sampleApp(sampleFile({ plantings: [], coverStands: [] }));
    expect(await (await get(`${GARDEN}/fertility`)).text()).toContain(`Plan one on <a href="${GARDEN}/beds">`);
  });

  it('is a part of the page of each bed, and led to from the beds', async () => {
    const { get } = await sampleApp(sampleFile({ ...poor, plantings: [tomato] }));
    const bed = withoutWhys(await (await get(`${GARDEN}/beds/north`)).text());
    expect(bed).toContain('What feeds it');
    expect(bed).toContain(`href="${GARDEN}/fertility"`);
    const beds = withoutWhys(await (await get(`${GARDEN}/beds`)).text());
    expect(beds).toContain(`href="${GARDEN}/fertility"`);
    expect(beds).toContain(`href="${GARDEN}/fertility#north">nitrogen</a>: <span class="band is-short">`);
  });
});
