import { describe, expect, it, onTestFinished } from 'vitest';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { openStore } from '../../../src/store/store.ts';
import { heldCrew } from '../../steward/crew/held-crew.ts';
import { northernFile } from '../../steward/gardens.ts';
import { clockAt, MORNING } from '../../steward/household.ts';
import { plain } from '../plain-text.ts';
import { appOver, HOST } from '../sample-garden.ts';

const BROWSER = { Host: HOST, Accept: 'text/html,application/xhtml+xml', 'Sec-Fetch-Site': 'same-origin' };

async function slowApp() {
  const { crew, state, hold } = heldCrew();
  const store = await openStore({ file: ':memory:' });
  const steward = createSteward({ store, clock: clockAt(MORNING), crew });
  onTestFinished(() => steward.close());
  const { gardenId } = await steward.importGarden({ file: northernFile(), prefer: 'file' }, 'ada');
  const { app } = appOver(steward);
  const get = (path: string, headers: object = {}) => app.request(path, { headers: { ...BROWSER, ...headers } });
  const send = (path: string, fields: Record<string, string>) => {
    const body = new URLSearchParams(fields).toString();
    const headers = {
      ...BROWSER,
      'Content-Type': 'application/x-www-form-urlencoded',
      'Content-Length': String(body.length),
    };
    return app.request(path, { method: 'POST', headers, body });
  };
  return { steward, garden: `/gardens/${gardenId}`, gardenId, state, hold, get, send };
}

/** Where an answer leads. */
const leadsTo = (answer: Response): string => answer.headers.get('location') ?? '';

describe('a page that takes over a second', () => {
  it('stands behind the household’s password, with the token of its reader once in each form', async () => {
    const { steward, garden, hold, state, get, send } = await slowApp();
    await steward.setPassword('beet row under the old pear');
    const signIn = await send('/sign-in', { password: 'beet row under the old pear' });
    const Cookie = signIn.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    hold();
    const begun = await get(`${garden}/edit/beds/north/delete`, { Cookie });
    state.letGo();
    expect(leadsTo(begun)).toMatch(/^\/under-way\//);
    expect(leadsTo(await get(leadsTo(begun)))).toMatch(/^\/sign-in\?/);
    let ended = await get(leadsTo(begun), { Cookie });
    while (ended.headers.has('refresh')) ended = await get(leadsTo(begun), { Cookie });
    const html = await (await get(leadsTo(ended), { Cookie })).text();
    const forms = html.match(/<form [^>]*method="post"/g) ?? [];
    expect(forms.length).toBeGreaterThan(1);
    expect(html.match(/name="form-token"/g)).toHaveLength(forms.length);
  }, 120_000);

  it('has a page of what is under way, with words, and then stands at its own address', async () => {
    const { garden, hold, state, get } = await slowApp();
    hold();
    const path = `${garden}/undo?entry=1`;
    const edit = `${garden}/edit/beds/north/delete`;
    const begun = await get(edit);
    expect([begun.status, leadsTo(begun)]).toEqual([303, expect.stringMatching(/^\/under-way\/[\w-]{16}$/)]);
    expect(begun.headers.get('content-security-policy')).toContain("default-src 'none'");
    const going = await get(leadsTo(begun));
    expect([going.status, going.headers.get('refresh')]).toEqual([200, '1']);
    expect(plain(await going.text())).toContain('Trying the garden without it');
    state.letGo();
    const ended = await get(leadsTo(begun));
    expect([ended.status, leadsTo(ended)]).toEqual([303, edit]);
    const { works } = state;
    const page = await get(edit);
    expect([page.status, state.works]).toEqual([200, works]);
    expect(plain(await page.text())).toContain('north bed');
    // Once more it is worked out anew: it is no copy that is handed out for ever.
    await get(edit);
    expect(state.works).toBeGreaterThan(works);
    expect((await get(path)).status).not.toBe(500);
  });

  it('leads back to the page its reader came from, and else to its garden', async () => {
    const { garden, hold, state, get } = await slowApp();
    hold();
    const edit = `${garden}/edit/beds/north/delete`;
    const back = async (headers: object) => {
      const page = await (await get(leadsTo(await get(edit, headers)))).text();
      return /href="([^"]*)">go back</.exec(page)?.[1];
    };
    const from = (url: string) => back({ Referer: url });
    expect(
      await Promise.all([
        from(`http://${HOST}${garden}/edit?list=beds`),
        from(`http://elsewhere.example${garden}/edit`),
        from(`http://${HOST}//elsewhere.example/gardens/`),
        from(`http://${HOST}/under-way/abcdefghijklmnop`),
        back({}),
      ]),
    ).toEqual([`${garden}/edit?list=beds`, garden, garden, garden, garden]);
    state.letGo();
  });

  it('is that of the gaps, the ledgers and the crops of a bed too, each worked out once for all who look', async () => {
    const { garden, hold, state, get } = await slowApp();
    const season = Number(MORNING.slice(0, 4)) + 1;
    const looks = ['/season-end', '/fertility', '/beds/wall', `/beds/wall/season?season=${season}`];
    hold();
    const begun = await Promise.all([...looks, ...looks].map((path) => get(garden + path)));
    expect(begun.map((answer) => leadsTo(answer))).toEqual(Array(8).fill(expect.stringMatching(/^\/under-way\//)));
    state.letGo();
    const led = async (path: string): Promise<string> => leadsTo(await get(path)) || led(path);
    const ended = await Promise.all(begun.slice(0, 4).map((answer) => led(leadsTo(answer))));
    expect(ended).toEqual(looks.map((path) => garden + path));
    const { works } = state;
    const pages = await Promise.all([...looks, ...looks].map((path) => get(garden + path)));
    expect(pages.map(({ status }) => status)).toEqual(Array(8).fill(200));
    expect(state.works).toBe(works);
  });

  it('works the gaps of a bed out once for a choice that is refused', async () => {
    const { garden, state, get } = await slowApp();
    const before = state.works;
    const refused = await get(`${garden}/beds/wall/choose?gap=none&choice=oats`);
    expect([refused.status, plain(await refused.text())]).toEqual([422, expect.stringContaining('no longer there')]);
    // The gaps and the ledgers of its page; the garden itself is planned already.
    expect(state.works - before).toBe(2);
  });

  it('is not handed to a reader with other cookies', async () => {
    const { garden, hold, state, get } = await slowApp();
    hold();
    const edit = `${garden}/edit/beds/north/delete`;
    const begun = await get(edit, { Cookie: 'units=us' });
    await get(leadsTo(begun));
    state.letGo();
    expect(leadsTo(await get(leadsTo(begun)))).toBe(edit);
    const { works } = state;
    await get(edit);
    expect(state.works).toBeGreaterThan(works);
  });

  it('that keeps a change leads on to what says so, and keeps it once', async () => {
    const { steward, gardenId, garden, hold, state, get, send } = await slowApp();
    const before = (await steward.view(gardenId)).ledger.length;
    hold();
    const fields = { evening: '2027-04-21', low: '30', how: 'expected' };
    const begun = await send(`${garden}/report/cold-night`, fields);
    expect(leadsTo(begun)).toMatch(/^\/under-way\//);
    expect(plain(await (await get(leadsTo(begun))).text())).toContain('Taking it in and making the plan');
    state.letGo();
    const ended = await get(leadsTo(begun));
    expect([ended.status, leadsTo(ended)]).toEqual([303, expect.stringContaining('kept=')]);
    expect((await get(leadsTo(ended))).status).toBe(200);
    expect((await steward.view(gardenId)).ledger).toHaveLength(before + 1);
  });

  it('that refuses a change comes back as the form, with what was typed', async () => {
    const { steward, gardenId, garden, hold, state, get, send } = await slowApp();
    const { key } = (await steward.view(gardenId)).plan.tasks.find(({ state: now }) => now === 'open') ?? { key: '' };
    await steward.markDone(gardenId, [key], '2027-04-20', 'ada');
    hold();
    const doing = steward.undo(gardenId, undefined, 'ada');
    const begun = await send(`${garden}/report/cold-night`, { evening: 'soon', low: '30', how: 'expected' });
    state.letGo();
    await doing;
    const ended = leadsTo(begun).startsWith('/under-way/') ? await get(leadsTo(begun)) : begun;
    expect(ended.status).toBe(422);
    expect(await ended.text()).toContain('value="soon"');
  });

  it('is waited for by whoever is no browser', async () => {
    const { garden, hold, state, get } = await slowApp();
    hold();
    const answer = get(`${garden}/edit/beds/north/delete`, { Accept: '*/*' });
    const first = await Promise.race([answer, new Promise((resolve) => setTimeout(resolve, 1500, 'waiting'))]);
    expect(first).toBe('waiting');
    state.letGo();
    expect((await answer).status).toBe(200);
  });
});
