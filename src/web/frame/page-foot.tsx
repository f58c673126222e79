/**
 * The foot of every page: what explains it, in which units it is read, and how it is printed.
 */
import type { Context } from 'hono';
import { tryGetContext } from 'hono/context-storage';
import { withoutTokens } from '../../log/redact.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { climatePath, GARDENS_PATH, handbookPath, WHO_GETS_IN_PATH } from '../addresses/addresses.ts';
import { readerUnits } from '../requests/reader.ts';
import { docsOfPath } from './page-docs.ts';

/** Units, with the order of dates that goes with them, as a reader is told of them. */
const READ_IN: Readonly<Record<UnitSystem, string>> = {
  us: 'inches and pounds, month first',
  metric: 'metres and litres, day first',
};

const SYSTEMS = ['us', 'metric'] as const satisfies readonly UnitSystem[];

interface FootProps {
  /** The page of the handbook that explains this one, where it is another than its address tells. */
  docs: string | undefined;
  gardenId: string | undefined;
  /** Those of the garden the page is about, as it is read. */
  gardenUnits: UnitSystem | undefined;
}

/** The foot. */
export const PageFoot = ({ docs, gardenId, gardenUnits }: FootProps) => (
  <footer class="page-foot">
    <nav aria-label="Around the pages">
      <Explained docs={docs} />
      <a href={handbookPath()}>The handbook</a>
      {gardenId !== undefined && <a href={climatePath(gardenId)}>The climate</a>}
      {gardenId !== undefined && <a href={GARDENS_PATH}>Other gardens</a>}
      <a href={WHO_GETS_IN_PATH}>{isSignedIn() ? 'Signed in' : 'Who gets in'}</a>
    </nav>
    <Reading gardenUnits={gardenUnits} />
    <p class="small">Prints in black: Ctrl+P, or Print in the browser’s menu.</p>
  </footer>
);

const Explained = ({ docs }: Pick<FootProps, 'docs'>) => {
  const path = tryGetContext()?.req.path;
  const [name, anchor] = (docs ?? (path === undefined ? undefined : docsOfPath(path)))?.split('#') ?? [];
  return name === undefined ? null : <a href={handbookPath(name, anchor)}>This page explained</a>;
};

const isSignedIn = (): boolean => tryGetContext()?.get('signedIn') !== undefined;

/** The switch between units. */
const Reading = ({ gardenUnits }: Pick<FootProps, 'gardenUnits'>) => {
  const c = tryGetContext();
  const back = c === undefined ? undefined : wayBack(c);
  if (c === undefined || back === undefined) return null;
  const inForce = gardenUnits ?? readerUnits(c);
  return (
    <form method="post" action="/reading" class="reading">
      <input type="hidden" name="back" value={back} />
      {inForce !== undefined && <p>Read in {READ_IN[inForce]}.</p>}
      {SYSTEMS.filter((units) => units !== inForce).map((units) => (
        <button type="submit" name="units" value={units}>
          Read in {READ_IN[units]}
        </button>
      ))}
    </form>
  );
};

/**
 * The page itself. None where that would lose what was typed, on what answers a sent form; and none whose address could
 * hold a secret, which no page repeats.
 */
function wayBack({ req: { method, url } }: Context): string | undefined {
  const { pathname, search } = new URL(url);
  const path = pathname + search;
  return method === 'GET' && withoutTokens(path) === path ? path : undefined;
}
