/**
 * The garden file: handed out, and brought in when it was seen what it changes.
 */
import { type Context, Hono } from 'hono';
import { gardenFileText } from '../../garden/export-garden-file.ts';
import { linesIn } from '../../garden/line-of.ts';
import type { Problem } from '../../garden/problem.ts';
import type { HandedFile, Steward } from '../../steward/doings/steward.ts';
import { bringInPath, gardenFilePath, incomingFilePath, longRecordPath, weekPath } from '../addresses/addresses.ts';
import { Offered } from '../changes/offered.ts';
import { BY, gardenView, wholeNumber } from '../requests/garden-view.ts';
import { Trouble } from '../requests/trouble.ts';
import type { UnderWayPages } from '../under-way/under-way.tsx';
import { bringInPage, gardenFilePage } from './garden-file.tsx';
import { handedForm } from './handed-form.ts';
import { incomingFilePage, withLines } from './incoming-file.tsx';

const PATH = '/gardens/:gardenId/garden-file';
const NEW_PATH = '/bring-in';
/** Files held at once. House default: a file has at most a mebibyte. */
const MOST_HELD = 20;

interface Room {
  steward: Steward;
  underWay: UnderWayPages;
  files: Offered<HandedFile>;
}

/** The pages of the garden file, and of a new garden from one. */
export function gardenFileRoutes(steward: Steward, underWay: UnderWayPages): Hono {
  const room: Room = { steward, underWay, files: new Offered<HandedFile>(MOST_HELD) };
  return new Hono()
    .get(PATH, async (c) => {
      const { garden, ledger } = await gardenView(steward, c);
      const asked = wholeNumber(c.req.query('brought'));
      const entry = ledger.find((row) => row.entry === asked && row.fact.kind === 'garden-imported');
      return c.html(gardenFilePage({ garden, ...(entry === undefined ? {} : { brought: entry.entry }) }));
    })
    .get('/gardens/:gardenId/garden-file.yaml', async (c) => {
      const { garden } = await gardenView(steward, c);
      return c.body(gardenFileText(await steward.fileNow(garden.id)), 200, {
        'Content-Type': 'application/yaml; charset=utf-8',
        'Content-Disposition': `attachment; filename="${garden.id}.yaml"`,
      });
    })
    .post(PATH, (c) => handOver(c, room))
    .get(`${PATH}/:word`, (c) => look(c, room))
    .post(`${PATH}/:word`, (c) => bringIn(c, room))
    .get(NEW_PATH, (c) => c.html(bringInPage({})))
    .post(NEW_PATH, (c) => handOver(c, room))
    .get(`${NEW_PATH}/:word`, (c) => look(c, room))
    .post(`${NEW_PATH}/:word`, (c) => bringIn(c, room));
}

/** The garden an address names; none for a new one. */
async function gardenAsked({ steward }: Room, c: Context) {
  return c.req.param('gardenId') === undefined ? undefined : await gardenView(steward, c);
}

/** Reads what was handed over: refused with the form as it was, or shown on a page of its own. */
async function handOver(c: Context, room: Room): Promise<Response> {
  const view = await gardenAsked(room, c);
  const garden = view?.garden;
  const { text, prefer, problems } = await handedForm(c);
  const refused = (found: readonly Problem[]) => {
    const shown = withLines(toldHere(found, garden?.id), linesIn(text));
    const shownPage =
      garden === undefined
        ? bringInPage({ text, problems: shown })
        : gardenFilePage({ garden, entered: { text, prefer }, problems: shown });
    return c.html(shownPage, 422);
  };
  if (problems.length > 0) return refused(problems);
  const handed: HandedFile = { text, prefer, ...(garden === undefined ? {} : { gardenId: garden.id }) };
  return room.underWay.start(c, {
    ...(garden === undefined ? {} : { garden }),
    title: 'Reading the garden file',
    work: async (say) => {
      await say('The file is read, and a plan is made from it.');
      await room.steward.previewImport(handed);
      return incomingFilePath(room.files.keep(handed), garden?.id);
    },
    failed: garden === undefined ? bringInPath() : gardenFilePath(garden.id),
    refused,
  });
}

/** What is said of a weather record that is not here, in words of these pages. */
function toldHere(problems: readonly Problem[], gardenId: string | undefined): Problem[] {
  return problems.map((problem) => {
    if (problem.where !== 'climate.dailyRecord') return problem;
    const mend =
      gardenId === undefined
        ? 'Write nearest: true in its place for now. Once the garden is here, bring the record in on the Weather log; it is planned by from then on.'
        : `Bring the record in on the Weather log first (${longRecordPath(gardenId)}), then this file.`;
    return { ...problem, mend };
  });
}

async function look(c: Context, room: Room): Promise<Response> {
  const view = await gardenAsked(room, c);
  const { handed, word } = heldFile(c, room);
  const preview = await room.steward.previewImport(handed);
  const { units } = view?.garden.place ?? preview.view.garden.place;
  const known = view === undefined ? {} : { known: view };
  return c.html(
    incomingFilePage({ preview, word, prefer: handed.prefer, lineOf: linesIn(handed.text), units, ...known }),
  );
}

async function bringIn(c: Context, room: Room): Promise<Response> {
  const view = await gardenAsked(room, c);
  const garden = view?.garden;
  const { handed, word } = heldFile(c, room);
  return room.underWay.start(c, {
    ...(garden === undefined ? {} : { garden }),
    title: 'Bringing the garden file in',
    work: async (say) => {
      await say('The file is read once more, and a plan is made from it.');
      const { file } = await room.steward.previewImport(handed);
      await room.steward.importGarden({ file, prefer: handed.prefer }, BY);
      room.files.drop(word);
      const id = file.garden.id ?? '';
      if (garden === undefined) return weekPath(id);
      const { ledger } = await room.steward.view(id);
      return gardenFilePath(id, ledger.at(-1)?.entry);
    },
    failed: garden === undefined ? bringInPath() : gardenFilePath(garden.id),
  });
}

function heldFile(c: Context, { files }: Room): { handed: HandedFile; word: string } {
  const word = c.req.param('word') ?? '';
  const gardenId = c.req.param('gardenId');
  const handed = files.find(gardenId, word);
  if (handed !== undefined) return { handed, word };
  const path = gardenId === undefined ? bringInPath() : gardenFilePath(gardenId);
  throw new Trouble(404, 'This file is not held any more', [
    {
      where: 'the file',
      what: 'It was brought in already, or waited too long.',
      mend: `Hand it over once more, at ${path}.`,
    },
  ]);
}
