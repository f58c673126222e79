/**
 * The beds by seasons, and wishes.
 */
import { type Context, Hono } from 'hono';
import type { Fact } from '../../garden/facts.ts';
import type { CropWish } from '../../garden/garden.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { bedsPath } from '../addresses/addresses.ts';
import { areaIn } from '../fields/areas.ts';
import { Form, readForm, SHOWN_CHARACTERS } from '../requests/form.ts';
import { BY, gardenView, wholeNumber } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { askedIn, type BedsRoom, PROPOSING, show } from './beds-shown.tsx';
import { wishSeasons, wishWord } from './wishes.tsx';

/** The page and its wishes. */
export function bedsRoutes(room: BedsRoom): Hono {
  return new Hono()
    .get('/gardens/:gardenId/beds', async (c) => {
      const view = await gardenView(room.steward, c);
      const query = new Form(new Map(Object.entries(c.req.queries())));
      const asked = askedIn(query);
      const shown = { view, asked, problems: query.problems };
      if (asked === undefined || view.garden.wishes.length === 0) return show(c, room, shown);
      return room.underWay.start(c, {
        garden: view.garden,
        title: PROPOSING,
        work: async (say) => {
          await room.proposalFor(view, asked, say);
          return bedsPath(view.garden.id, asked);
        },
        failed: bedsPath(view.garden.id),
        atOnce: () => show(c, room, shown),
      });
    })
    .post('/gardens/:gardenId/wishes', async (c) => wish(c, room, await readForm(c)));
}

async function wish(c: Context, room: BedsRoom, form: Form) {
  const view = await gardenView(room.steward, c);
  const { garden } = view;
  const dropped = form.text('do') === 'drop';
  const said = dropped ? wishDropped(form, garden.wishes) : wishMade(form, view);
  const problems =
    said === undefined ? form.problems : await refusalsOf(() => room.steward.report(garden.id, said, BY));
  if (problems.length === 0) return c.redirect(bedsPath(garden.id), 303);
  const sent = dropped
    ? {}
    : {
        sent: {
          crop: form.text('crop'),
          amount: form.text('amount'),
          in: form.text('in'),
          season: form.text('season'),
        },
      };
  return show(c, room, { view, problems, ...sent });
}

type Said<Kind extends Fact['kind']> = Extract<Fact, { kind: Kind }> | undefined;

function wishDropped(form: Form, wishes: readonly CropWish[]): Said<'wish-dropped'> {
  const wish = wishes.find((each) => wishWord(each) === form.text('wish'));
  if (wish === undefined) {
    form.refuse({ where: 'The wish', what: 'It is not wished for any more.', mend: 'Look at the list once more.' });
    return undefined;
  }
  const { cropId, season } = wish;
  return { kind: 'wish-dropped', cropId, ...(season === undefined ? {} : { season }) };
}

/** The wish a form asks for; it takes the place of that of the same crop and season. */
function wishMade(form: Form, view: GardenView): Said<'crop-wished'> {
  const word = form.text('crop');
  const ids = vegetables.map(({ id }) => id);
  if (!ids.includes(word)) {
    const what = word === '' ? 'None is chosen.' : `"${word.slice(0, SHOWN_CHARACTERS)}" is not a known crop.`;
    form.refuse({ where: 'The crop', what, mend: word === '' ? 'Choose one from the list.' : suggestion(word, ids) });
  }
  const season = form.text('season');
  const asked = wholeNumber(season);
  if (season !== '' && (asked === undefined || !wishSeasons(view).includes(asked)))
    form.refuse({ where: 'For', what: 'That season cannot be planned.', mend: 'Choose one from the list.' });
  const amount = amountIn(form, view);
  if (amount === undefined || form.problems.length > 0) return undefined;
  return { kind: 'crop-wished', cropId: word, amount, ...(asked === undefined ? {} : { season: asked }) };
}

/** Most whole beds a wish may name: as in a garden file. */
const MOST_BEDS = 200;

function amountIn(form: Form, view: GardenView): CropWish['amount'] | undefined {
  const where = 'How much';
  const text = form.text('amount');
  if (text === '') {
    form.refuse({ where, what: 'It is empty.', mend: 'Give a number, such as 3.' });
    return undefined;
  }
  const unit = form.text('in');
  if (unit !== 'beds' && unit !== 'area') {
    const what =
      unit === '' ? 'It is not told in what.' : `"${unit.slice(0, SHOWN_CHARACTERS)}" is not counted in here.`;
    form.refuse({ where, what, mend: 'Count in whole beds or in area.' });
    return undefined;
  }
  if (unit === 'area') {
    const areaM2 = areaIn(form, 'amount', where, view.garden.place.units);
    return areaM2 === undefined ? undefined : { areaM2 };
  }
  const beds = wholeNumber(text);
  if (beds !== undefined && beds <= MOST_BEDS) return { beds };
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is no count of whole beds.`;
  form.refuse({ where, what, mend: 'Give a whole number, such as 1, or count in area.' });
  return undefined;
}
