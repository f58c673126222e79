/**
 * A look at a pile, told on a page.
 */
import { Hono } from 'hono';
import { clock } from '../../garden/file-values.ts';
import { readDegrees } from '../../measures/typed-temperature.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { ReportedReading, Steward } from '../../steward/doings/steward.ts';
import { reportPath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { type Form, readForm, SHOWN_CHARACTERS } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { type PileEntered, pileReadingPage } from './pile-reading.tsx';

const PATH = '/gardens/:gardenId/report/pile';

/** Core temperatures a pile can have, °C. */
const CORE_C = { least: -30, most: 95 } as const;

/** The form and what takes it in. */
export function pileReadingRoutes(steward: Steward): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const { garden, plan } = await gardenView(steward, c);
      const entered = { ...NOTHING, on: plan.today, pile: c.req.query('pile') ?? '' };
      return c.html(pileReadingPage({ garden, today: plan.today, entered }));
    })
    .post(PATH, async (c) => {
      const form = await readForm(c);
      const { garden, plan } = await gardenView(steward, c);
      const reading = readingIn(form, garden.place.units, plan.today);
      let leadsTo = reportPath(garden.id, 'pile');
      const keep = async (read: ReportedReading) => {
        leadsTo = await keptChange(steward, garden.id, leadsTo, () => steward.readPile(garden.id, read, BY));
      };
      const problems = reading === undefined ? form.problems : await refusalsOf(() => keep(reading));
      if (problems.length === 0) return c.redirect(leadsTo, 303);
      return c.html(pileReadingPage({ garden, today: plan.today, entered: enteredIn(form), problems }), 422);
    });
}

const NOTHING: PileEntered = { pile: '', on: '', at: '', temp: '', moisture: '', smell: '', pests: '', slumped: '' };

function enteredIn(form: Form): PileEntered {
  const names = Object.keys(NOTHING) as (keyof PileEntered)[];
  return { ...NOTHING, ...Object.fromEntries(names.map((name) => [name, form.text(name)])) };
}

function readingIn(form: Form, units: UnitSystem, today: string): ReportedReading | undefined {
  const on = form.day('on', 'The day', today);
  const at = hourIn(form);
  const tempC = coreIn(form, units);
  const moisture = ['dry', 'damp', 'wet'].find((word) => word === form.text('moisture'));
  const smell = ['earthy', 'ammonia', 'sour'].find((word) => word === form.text('smell'));
  const seen = {
    ...(tempC === undefined ? {} : { tempC }),
    ...(tempC === undefined || at === undefined ? {} : { at }),
    ...(moisture === undefined ? {} : { moisture: moisture as NonNullable<ReportedReading['moisture']> }),
    ...(smell === undefined ? {} : { smell: smell as NonNullable<ReportedReading['smell']> }),
    ...(form.text('pests') === '' ? {} : { pests: true as const }),
    ...(form.text('slumped') === '' ? {} : { slumped: true as const }),
  };
  if (Object.keys(seen).length === 0 && form.problems.length === 0)
    form.refuse({ where: 'The look', what: 'Nothing is filled in.', mend: 'Say at least one thing of the pile.' });
  return on === undefined || form.problems.length > 0 ? undefined : { pileId: form.text('pile'), on, ...seen };
}

/** An hour counts only beside a temperature: it is what hours in the heat are reckoned by. */
function hourIn(form: Form): string | undefined {
  const text = form.text('at');
  if (text === '' || clock.safeParse(text).success) return text === '' ? undefined : text;
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is no hour.`;
  form.refuse({ where: 'The hour', what, mend: 'Give an hour such as 14:30, or leave it out.' });
  return undefined;
}

function coreIn(form: Form, units: UnitSystem): number | undefined {
  const text = form.text('temp');
  if (text === '') return undefined;
  const tempC = readDegrees(text, units === 'us' ? 'F' : 'C');
  if (tempC !== undefined && tempC >= CORE_C.least && tempC <= CORE_C.most) return Math.round(tempC * 10) / 10;
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is no core of a pile.`;
  form.refuse({ where: 'In the middle', what, mend: `Give degrees, such as ${units === 'us' ? '136' : '58'}.` });
  return undefined;
}
