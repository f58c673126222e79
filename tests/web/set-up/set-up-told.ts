/**
 * A set-up in the browser, told up to a step.
 */
import { expect } from 'vitest';
import { type SampleApp, sampleApp } from '../sample-garden.ts';

type Fields = Record<string, string | string[]>;

/** A set-up that was begun: its steps are shown and sent by their names. */
export async function begun(): Promise<
  SampleApp & {
    base: string;
    show(step: string): Promise<string>;
    tell(step: string, fields: Fields): Promise<Response>;
  }
> {
  const app = await sampleApp(null);
  const answer = await app.send('/set-up', {});
  const base = (answer.headers.get('location') ?? '').replace(/\/where$/, '');
  return {
    ...app,
    base,
    show: async (step) => (await app.get(`${base}/${step}`)).text(),
    tell: (step, fields) => app.send(`${base}/${step}`, { do: 'on', ...fields }),
  };
}

export const MADISON = { latitude: '43.07, -89.40', longitude: '', elevationM: '270 m' };
export const ABOUT = {
  name: 'Hollow Lane',
  timeZone: 'America/Chicago',
  units: 'metric',
  workDays: ['sat', 'sun'],
  hoursPerWeek: '4',
  soilTexture: 'loam',
};
export const TWELVE = { do: 'add', count: '12', lengthM: '2.4', widthM: '1.2', depthM: '30 cm', raised: 'yes' };

/** A set-up told up to a step. */
export async function toldTo(step: 'climate' | 'garden' | 'beds' | 'bins' | 'last-year' | 'growing' | 'look-over') {
  const app = await begun();
  const steps: [string, Fields][] = [
    ['where', MADISON],
    ['climate', { from: 'nearest' }],
    ['garden', ABOUT],
    ['beds', { ...TWELVE, count: '4' }],
    ['beds', {}],
    ['bins', {}],
    ['last-year', {}],
    ['growing', {}],
  ];
  for (const [name, fields] of steps) {
    if (name === step) return app;
    const answer = await app.tell(name, fields);
    expect([name, answer.status]).toEqual([name, 303]);
  }
  return app;
}

export const leadsTo = (answer: Response) =>
  (answer.headers.get('location') ?? '').replace(/^\/set-up\/[0-9a-f]+/, '…');
