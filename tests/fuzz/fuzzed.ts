/**
 * Requests sent one after another, each answer looked over, and the database with it: what is refused has changed nothing.
 */
import { setImmediate } from 'node:timers/promises';
import fc from 'fast-check';
import { amissIn } from './amiss.ts';
import { type Answered, formBody, type Household, type Laid } from './household.ts';
import { ODD_TEXTS, oddText, type Twisted, twisted, twists } from './odd-values.ts';
import type { FoundForm } from './page-forms.ts';
import { formNow, type WayIn, type WaysIn } from './ways-in.ts';

/** What came of it all. */
export interface Tally {
  accepted: number;
  refused: number;
  amiss: string[];
}

/** Requests after which a household is laid anew, though nothing asks for it: changes wear it out. */
const WORN_OUT = 40;

/** A household that requests are sent to, laid anew where one has used it up. */
export class Fuzzed {
  readonly tally: Tally = { accepted: 0, refused: 0, amiss: [] };
  readonly laid: Laid;
  readonly #forms = new Map<string, FoundForm>();
  #household: Household | undefined;
  #digest = '';
  #since = 0;

  constructor(laid: Laid) {
    this.laid = laid;
  }

  async #now(): Promise<Household> {
    if (this.#household === undefined || this.#since > WORN_OUT) await this.anew();
    this.#since += 1;
    return this.#household as Household;
  }

  /** Lays the household anew. */
  async anew(): Promise<void> {
    await this.close();
    this.#household = await this.laid.open();
    this.#settle();
    this.#since = 0;
  }

  #settle(): void {
    this.#forms.clear();
    this.#household?.wasWritten();
    this.#digest = this.#household?.digest() ?? '';
  }

  /** The form of a way in, as it stands now; of a household laid anew where this one has it no more. */
  async form(way: WayIn): Promise<FoundForm> {
    const known = this.#forms.get(way.name);
    if (known !== undefined) return known;
    const made = await formNow(await this.#now(), way, this.laid.routes).catch(async () => {
      await this.anew();
      return formNow(await this.#now(), way, this.laid.routes);
    });
    this.#settle();
    this.#forms.set(way.name, made);
    return made;
  }

  /** Sends a request and looks its answer over. */
  async sent(what: string, said: string, ask: (household: Household) => Promise<Answered>, changes = true) {
    const household = await this.#now();
    // Nothing here waits: without a turn of the event loop the runner takes a minute of it for dead.
    await setImmediate();
    const answer = await ask(household).catch((error: unknown) => ({
      status: 599,
      body: String(error),
      isPage: false,
      location: undefined,
    }));
    const wrong = amissIn(answer, said);
    if (household.reported.length > 0)
      wrong.push(`was reported: ${household.reported.splice(0).join(' ').slice(0, 600)}`);
    const isRefused = answer.status >= 400;
    if (household.wasWritten()) {
      const after = household.digest();
      if (after !== this.#digest && isRefused) wrong.push('was refused, and changed something');
      if (after !== this.#digest && !changes) wrong.push('changed something by being looked at');
      if (after !== this.#digest) this.#forms.clear();
      this.#digest = after;
    }
    this.tally[isRefused ? 'refused' : 'accepted'] += 1;
    this.tally.amiss.push(...wrong.map((one) => `${what}: ${one}`));
    return answer;
  }

  async close(): Promise<void> {
    await this.#household?.close();
    this.#household = undefined;
  }
}

/** Sends what a form became: as fields, or in parts where a field is a file. */
export function sendTwisted({ ask }: Household, action: string, { fields, files }: Twisted, inParts: boolean) {
  if (!inParts && files.size === 0) {
    const body = formBody(fields);
    return ask(action, { method: 'POST', body });
  }
  const body = new FormData();
  for (const [name, value] of fields) {
    if (files.has(name)) body.append(name, new File([value], `${name}.csv`));
    else body.append(name, value);
  }
  return ask(action, { method: 'POST', body });
}

/** Every form, each first as it should be and then with something done to it. */
export async function fuzzForms(fuzzed: Fuzzed, ways: WaysIn, { seed, runs }: { seed: number; runs: number }) {
  for (const [at, way] of ways.forms.entries()) {
    if (!way.route.startsWith('POST')) continue;
    for (const done of fc.sample(twists, { seed: seed + at, numRuns: runs })) {
      const form = await fuzzed.form(way);
      const made = twisted(form, done);
      const said = JSON.stringify(made.fields);
      const what = `${way.name} ${JSON.stringify(done).slice(0, 300)}`;
      await fuzzed.sent(what, said, (household) => sendTwisted(household, form.action, made, form.withFiles));
    }
  }
}

/** Every address with something odd in each place that names something. */
export async function fuzzPaths(fuzzed: Fuzzed, ways: WaysIn, { seed, runs }: { seed: number; runs: number }) {
  const examples = new Map<string, { path: string; form?: FoundForm }>();
  for (const { route, path } of ways.pages) examples.set(route, { path: path.split('?')[0] ?? path });
  for (const { route, form } of ways.forms) if (!examples.has(route)) examples.set(route, { path: form.action, form });
  for (const [at, [route, { path, form }]] of [...examples].entries()) {
    const [method = 'GET', pattern = ''] = route.split(' ');
    const places = pattern.split('/').flatMap((part, place) => (part.startsWith(':') ? [place] : []));
    for (const [n, text] of fc
      .sample(oddText, { seed: seed + at, numRuns: places.length === 0 ? 0 : runs })
      .entries()) {
      const parts = (path.split('?')[0] ?? path).split('/');
      const place = places[n % places.length] ?? 0;
      parts[place] = n % 3 === 2 ? encodedOnce(text) : encodeURIComponent(wellFormed(text)).slice(0, 4000);
      const body = method === 'POST' ? { body: formBody(form?.fields ?? []) } : {};
      const odd = parts.join('/');
      await fuzzed.sent(`${method} ${odd.slice(0, 300)}`, text, ({ ask }) => ask(odd, { method, ...body }));
    }
  }
}

/** A text that may stand in an address as it is, "%00" and its like untouched. */
function encodedOnce(text: string): string {
  return [...wellFormed(text)]
    .map((sign) => (/[\w%.~-]/.test(sign) ? sign : encodeURIComponent(sign)))
    .join('')
    .slice(0, 4000);
}

/** Half a surrogate cannot be encoded for an address. */
function wellFormed(text: string): string {
  return text.replace(/\p{Surrogate}/gu, '\uFFFD');
}

/** Every page that asks something, with odd answers. */
export async function fuzzQuestions(fuzzed: Fuzzed, ways: WaysIn, { seed, runs }: { seed: number; runs: number }) {
  const pages = new Map<string, { path: string; asked: [string, string][] }>();
  const add = (path: string, more: readonly (readonly [string, string])[] = []) => {
    const url = new URL(path, 'http://own.invalid');
    const asked: [string, string][] = [...url.searchParams, ...more.map(([a, b]): [string, string] => [a, b])];
    const key = `${url.pathname}?${asked.map(([name]) => name)}`;
    if (asked.length > 0) pages.set(key, { path: url.pathname, asked });
  };
  for (const { path } of ways.pages) add(path);
  for (const { form } of ways.forms) if (form.method === 'GET') add(form.action, form.fields);
  for (const [at, { path, asked }] of [...pages.values()].entries()) {
    const change = fc.tuple(fc.nat(), fc.constantFrom('set', 'double', 'drop'), oddText);
    for (const [place, how, text] of fc.sample(change, { seed: seed + at, numRuns: runs })) {
      const query = new URLSearchParams(asked);
      const name = asked[place % asked.length]?.[0] ?? '';
      if (how === 'set') query.set(name, text);
      if (how === 'double') query.append(name, text);
      if (how === 'drop') query.delete(name);
      const odd = `${path}?${query}`;
      await fuzzed.sent(`GET ${odd.slice(0, 300)}`, text + odd, ({ ask }) => ask(odd), false);
    }
  }
}

/** Every saved value, in every field of a form whose fields are of all kinds. */
export async function everyOddText(fuzzed: Fuzzed, way: WayIn): Promise<void> {
  const { types } = await fuzzed.form(way);
  for (const name of types.keys()) {
    for (const value of ODD_TEXTS) {
      const form = await fuzzed.form(way);
      const fields = [...form.fields.filter(([held]) => held !== name), [name, value] as const];
      await fuzzed.sent(`${way.name} ${name}=${value.slice(0, 100)}`, JSON.stringify(fields), ({ send }) =>
        send(form.action, fields),
      );
    }
  }
}
