/**
 * Addresses and forms of the one garden, turned into the other's by the marks of its ids, and sent.
 */
import { setImmediate } from 'node:timers/promises';
import { routeOf } from '../journeys/followed-links.ts';
import type { Answered, Household, Laid } from './household.ts';
import { HITHER, hitherIds, ID_MARK, NAME_MARK, YONDER } from './two-gardens.ts';
import { afterAForm, formNow, type WayIn } from './ways-in.ts';

const IDS = hitherIds().filter((id) => id !== HITHER);
const ANY_ID = new RegExp(`(?<![\\w.-])(${IDS.join('|')})(?![\\w-])`, 'g');

/** A household with what is to be known of its second garden. */
export interface Crossing {
  household: Household;
  /** The digest of the second garden as it was laid. */
  before: string;
  /** A text with the second garden's ids in place of the first one's, the garden's own address left as it is. */
  crossed: (text: string) => string;
}

/** Lays a household. */
export async function crossing(laid: Laid): Promise<Crossing> {
  const household = await laid.open();
  const { hither, yonder } = laid.handles;
  const lastEntry = (await household.steward.view(YONDER)).ledger.length;
  const crossed = (text: string) =>
    text
      .replace(ANY_ID, `${ID_MARK}$1`)
      .replace(/feed-[123]\b/g, yonder.feeds.at(-1)?.id ?? '')
      .replace(new RegExp(`${hither.key.id}\\b`, 'g'), yonder.key.id)
      .replace(/(?<=\bname=|\bperson=)(Ida|Tove)/g, `${NAME_MARK}+$1`)
      .replace(/(?<=\bentry=|\bbrought=|\bbefore=)\d+/g, String(lastEntry));
  return { household, before: household.digest(YONDER), crossed };
}

/** What of the second garden an answer shows, besides what was asked for by its name. */
export function shownOf({ body }: Answered, said: string): string[] {
  const at = body.indexOf(NAME_MARK);
  return at === -1 || said.includes(NAME_MARK) ? [] : [body.slice(Math.max(0, at - 60), at + 60)];
}

/** Routes whose addresses name something of a garden besides the garden. */
export function withIds(laid: Laid, method: string): string[] {
  const pattern = /^\w+ \/gardens\/:gardenId\/.*\/:(?!list|which)/;
  return laid.routes.filter((route) => route.startsWith(method) && pattern.test(route));
}

/** The forms of the first garden that name something of it: the others have nothing to name of another. */
export async function formsWithIds(laid: Laid, forms: readonly WayIn[]): Promise<WayIn[]> {
  const { household, crossed } = await crossing(laid);
  await household.close();
  return forms
    .filter(({ route }) => /^POST \/(?:gardens\/:gardenId|answer|stop)/.test(route))
    .filter(({ form: { action, fields } }) => {
      const said = JSON.stringify([action, fields]);
      return said !== crossed(said);
    });
}

/**
 * Sends forms with the second garden's ids: in the address, in the fields, in both.
 *
 * @returns what is wrong with an answer or with what it changed, and the routes whose addresses were turned
 */
export async function crossForms(
  laid: Laid,
  forms: readonly WayIn[],
): Promise<{ wrong: string[]; turned: Set<string> }> {
  let at = await crossing(laid);
  const wrong: string[] = [];
  const turned = new Set<string>();
  for (const way of forms) {
    await setImmediate();
    const form = await formNow(at.household, way, laid.routes).catch(async () => {
      await at.household.close();
      at = await crossing(laid);
      return formNow(at.household, way, laid.routes);
    });
    const { household, before, crossed } = at;
    const fields = form.fields.map(([name, value]): [string, string] => [crossed(name), crossed(value)]);
    for (const [action, sent] of [
      [crossed(form.action), fields],
      [form.action, fields],
      [crossed(form.action), form.fields],
    ] as const) {
      if (action === form.action && JSON.stringify(sent) === JSON.stringify(form.fields)) continue;
      if (action !== form.action) turned.add(way.route);
      const answer = await household.send(action, sent);
      const said = JSON.stringify([action, sent]);
      wrong.push(...shownOf(answer, said).map((words) => `${way.name} ${action}: ${words}`));
      if (answer.status >= 500) wrong.push(`${way.name} ${action}: ${answer.status}`);
      if (household.digest(YONDER) !== before) wrong.push(`${way.name} ${action}: changed the other garden`);
    }
  }
  await at.household.close();
  return { wrong, turned };
}

/** Looks for what was handed over for the second garden under the first one's address: by the path, what came of it. */
export async function handedOver({ household }: Crossing, ask: (path: string) => Promise<Answered>) {
  const seen: { path: string; status: number; shown: string[] }[] = [];
  for (const reach of afterAForm(`/gardens/${YONDER}`)) {
    const path = (await reach(household)).replace(YONDER, HITHER);
    const answer = await ask(path);
    seen.push({ path, status: answer.status, shown: shownOf(answer, path) });
  }
  return seen;
}

/** The routes of paths. */
export function routesOf(laid: Laid, paths: readonly { path: string }[], method?: string): string[] {
  return paths.map(({ path }) => routeOf(path, laid.routes, method) ?? path);
}
