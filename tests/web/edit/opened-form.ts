/**
 * A gardener at a form: opens it, changes what is to be changed, and sends it.
 */
import { plain } from '../plain-text.ts';
import type { SampleApp } from '../sample-garden.ts';
import { formIn, type PageForm } from '../sent-form.ts';

/** The words of a page; what stands before a colon may be a link. */
export function wordsOf(html: string): string {
  return plain(html).replaceAll(' :', ':');
}

/** What an untouched form sends. */
export async function opened({ get }: SampleApp, path: string, headers = {}): Promise<PageForm['fields']> {
  return formIn(await (await get(path, headers)).text()).fields;
}

/** Opens a form, fills something in and keeps it: the answer's status, its words and where it leads. */
export async function filled(app: SampleApp, path: string, change: PageForm['fields']) {
  const answer = await app.send(path, { ...(await opened(app, path)), ...change });
  const html = await answer.text();
  return { status: answer.status, html, text: wordsOf(html), location: answer.headers.get('location') };
}

/** Opens a form, changes some of its fields, and sends it by one of its buttons. */
export async function fillIn(
  { get, send }: Pick<SampleApp, 'get' | 'send'>,
  path: string,
  change: Record<string, string | string[]>,
  press: 'keep' | 'look' = 'keep',
): Promise<Response> {
  const page = await get(path);
  if (page.status !== 200) throw new Error(`${path} answers ${page.status}.`);
  const { action, fields } = formIn(await page.text());
  return send(action, { ...fields, ...change, do: press });
}

/** The garden as it stands. */
export async function gardenNow({ steward }: SampleApp) {
  return (await steward.view('mill-row')).garden;
}
