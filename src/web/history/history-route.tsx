/**
 * History, and taking entries back.
 */
import { type Context, Hono } from 'hono';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { undoneEntries } from '../../garden/project.ts';
import type { GardenView, Steward, UndoPreview } from '../../steward/doings/steward.ts';
import { historyPath } from '../addresses/addresses.ts';
import { readForm } from '../requests/form.ts';
import { BY, gardenView, wholeNumber } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { factInWords } from '../words/ledger-words.ts';
import { type HistoryAbout, historyPage } from './history.tsx';
import { undoPage } from './undo.tsx';

/** The history and undo pages. */
export function historyRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/gardens/:gardenId/history', async (c) => {
      const view = await gardenView(steward, c);
      const about = aboutIn(view.garden, c.req.query('about'));
      return c.html(historyPage(view, { before: wholeNumber(c.req.query('before')), about }));
    })
    .get('/gardens/:gardenId/undo', async (c) => {
      const asked = c.req.query('entry');
      const view = await gardenView(steward, c);
      if (asked !== undefined && wholeNumber(asked) === undefined) return refused(c, view, [notANumber(asked)]);
      let preview: UndoPreview | undefined;
      const gone = takenBackAlready(view, wholeNumber(asked));
      if (gone !== undefined) return refused(c, view, [gone]);
      const problems = await refusalsOf(async () => {
        preview = await steward.previewUndo(view.garden.id, wholeNumber(asked));
      });
      return problems.length > 0 ? refused(c, view, problems) : c.html(undoPage({ view, preview }));
    })
    .post('/gardens/:gardenId/undo', async (c) => {
      const form = await readForm(c);
      const view = await gardenView(steward, c);
      const entry = wholeNumber(form.text('entry'));
      if (entry === undefined) return refused(c, view, [notANumber(form.text('entry'))]);
      const gone = takenBackAlready(view, entry);
      const problems = gone ? [gone] : await refusalsOf(() => steward.undo(view.garden.id, entry, BY));
      return problems.length > 0 ? refused(c, view, problems) : c.redirect(historyPath(view.garden.id), 303);
    });
}

/** What is said of an entry that is taken back already: a button was pressed twice, or somebody else was first. */
function takenBackAlready({ garden, ledger }: GardenView, wanted: number | undefined): Problem | undefined {
  const entry = ledger.find((each) => each.entry === wanted);
  if (entry === undefined || !undoneEntries(ledger).has(entry.entry)) return undefined;
  return {
    where: `“${factInWords(entry.fact, garden, entry.recordedOn)}”`,
    what: 'It is taken back already.',
    mend: 'Nothing more has to be done; to have it again, take the taking-back back in History.',
  };
}

/** The bed or the pile a history is asked of; of everything where none is named. */
function aboutIn({ beds, bins, piles }: Garden, asked: string | undefined): HistoryAbout | undefined {
  if (asked === undefined) return undefined;
  const bed = beds.find(({ id }) => asked === `bed:${id}`);
  if (bed !== undefined) return { type: 'bed', id: bed.id, name: bed.name };
  const pile = piles.find(({ id }) => asked === `pile:${id}`);
  if (pile === undefined) throw notFound(`"${asked.slice(0, 60)}" is no bed and no pile of this garden.`);
  return {
    type: 'pile',
    id: pile.id,
    name: `the pile in ${bins.find(({ id }) => id === pile.binId)?.name ?? pile.id}`,
  };
}

function refused(c: Context, view: Parameters<typeof undoPage>[0]['view'], problems: readonly Problem[]) {
  return c.html(undoPage({ view, preview: undefined, problems }), 422);
}

function notANumber(text: string): Problem {
  return {
    where: 'entry',
    what: `"${text.slice(0, 20)}" is not the number of an entry.`,
    mend: 'Choose one from the list.',
  };
}
