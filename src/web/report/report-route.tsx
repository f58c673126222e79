/**
 * What the gardener reports: the list of it, and the cold night.
 */
import { Hono } from 'hono';
import { readTemperature } from '../../measures/typed-temperature.ts';
import { fahrenheit, type UnitSystem } from '../../measures/units.ts';
import type { Report, Steward } from '../../steward/doings/steward.ts';
import { weekPath } from '../addresses/addresses.ts';
import { keptReport } from '../changes/kept-report.ts';
import { type Form, readForm } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { coldNightPage } from './cold-night.tsx';
import { reportPage } from './report.tsx';

const COLD_NIGHT_PATH = '/gardens/:gardenId/report/cold-night';

/** The list of reports and the form for a cold night. */
export function reportRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/gardens/:gardenId/report', async (c) => {
      const { garden } = await gardenView(steward, c);
      return c.html(reportPage(garden));
    })
    .get(COLD_NIGHT_PATH, async (c) => {
      const { garden, plan } = await gardenView(steward, c);
      return c.html(coldNightPage({ garden, today: plan.today }));
    })
    .post(COLD_NIGHT_PATH, async (c) => {
      const form = await readForm(c);
      const { garden, plan } = await gardenView(steward, c);
      const report = coldNightIn(form, garden.place.units, plan.today);
      const path = weekPath(garden.id, report?.evening);
      const { leadsTo, problems } = await keptReport(steward, garden.id, report, path);
      if (leadsTo !== undefined) return c.redirect(leadsTo, 303);
      const entered = { evening: form.text('evening'), low: form.text('low'), how: form.text('how') };
      const told = [...form.problems, ...problems];
      return c.html(coldNightPage({ garden, today: plan.today, entered, problems: told }), 422);
    });
}

type ColdNight = Extract<Report, { kind: 'cold-night-told' }>;

/** The night a form tells of; nothing when a field cannot be used, which the form then says. */
function coldNightIn(form: Form, units: UnitSystem, today: string): ColdNight | undefined {
  const evening = form.day('evening', 'The evening it begins on', today);
  const lowC = lowIn(form, units);
  const how = form.text('how');
  if (how !== 'expected' && how !== 'measured') {
    form.refuse({ where: 'Expected or measured', what: 'Neither is chosen.', mend: 'Choose one of the two.' });
    return undefined;
  }
  return evening === undefined || lowC === undefined ? undefined : { kind: 'cold-night-told', evening, lowC, how };
}

function lowIn(form: Form, units: UnitSystem): number | undefined {
  const text = form.text('low');
  const lowC = readTemperature(text, units === 'us' ? 'F' : 'C');
  if (lowC !== undefined) return lowC;
  const what = text === '' ? 'It is empty.' : `"${text.slice(0, 60)}" is not a night's low.`;
  const [example, unit] = units === 'us' ? [fahrenheit(-1).toFixed(0), '°F'] : ['-1', '°C'];
  form.refuse({ where: `The low of the night, ${unit}`, what, mend: `Give degrees, such as ${example}.` });
  return undefined;
}
