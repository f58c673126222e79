/** Filling in a form of a page as somebody at a browser does. */
import type { SampleApp } from './sample-garden.ts';
import { formIn } from './sent-form.ts';

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
