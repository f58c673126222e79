import { setTimeout as pause } from 'node:timers/promises';
import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { InputRefused } from '../../../src/garden/problem.ts';
import { Trouble } from '../../../src/web/requests/trouble.ts';
import type { LongWork } from '../../../src/web/under-way/long-work.ts';
import { UnderWayPages } from '../../../src/web/under-way/under-way.tsx';
import { plain } from '../plain-text.ts';
import { GARDEN, HOST, sampleApp } from '../sample-garden.ts';

/** A way to begin a work, and a page beside it. */
function appWith(work: LongWork['work'], more: Partial<LongWork> = {}) {
  const underWay = new UnderWayPages((error) =>
    error instanceof InputRefused
      ? new Trouble(422, 'That cannot be done', error.problems)
      : new Trouble(500, 'Something went wrong here', []),
  );
  const app = new Hono()
    .route('/', underWay.routes())
    .post('/begin', (c) => underWay.start(c, { title: 'Reading the record', work, failed: '/form', ...more }))
    .get('/begin', (c) => underWay.start(c, { title: 'Reading the record', work, failed: '/form', ...more }))
    .get('/elsewhere', (c) => c.text('served'));
  app.onError((error, c) => c.text(error.message, error instanceof Trouble ? error.status : 500));
  return app;
}

const begin = (app: Hono) => app.request('/begin', { method: 'POST' });

/** Waits until a condition holds. */
async function until(holds: () => boolean) {
  while (!holds()) await pause(5);
}

/** A work that goes on until it is let go. */
function held(end: () => Promise<string> = async () => '/there') {
  let letGo = () => {};
  const gate = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  const work: LongWork['work'] = async (say) => {
    await say('Reading 2,000 of 8,000 lines', 0.25);
    await gate;
    return end();
  };
  return { work, letGo };
}

const problem = { where: 'line 3', what: 'tmin_c is "x".', mend: 'Give degrees.' };

describe('work that takes a while', () => {
  it('is answered at once where it ends within a second', async () => {
    const answer = await begin(appWith(async () => '/there'));
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/there']);
    const own = await begin(appWith(async () => '/there', { atOnce: () => new Response('the page itself') }));
    expect(await own.text()).toBe('the page itself');
  });

  it('else has a page that says how far it is, asks again by itself, and leads on', async () => {
    const { work, letGo } = held();
    const app = appWith(work);
    const begun = await begin(app);
    expect(begun.status).toBe(303);
    const path = begun.headers.get('location') ?? '';
    expect(path).toMatch(/^\/under-way\/[\w-]{16}$/);
    const began = Date.now();
    const page = await app.request(path);
    expect(Date.now() - began).toBeLessThan(1000);
    const html = await page.text();
    expect([page.status, page.headers.get('refresh')]).toEqual([200, '1']);
    expect(html).toMatch(/<label for="how-far"[^>]*>\s*Reading 2,000 of 8,000 lines/);
    expect(html).toMatch(/<progress id="how-far" max="1" value="0.25">/);
    expect(html).toContain(`<a href="${path}">Look now</a>`);
    expect(html).not.toContain('<script');
    letGo();
    const end = await app.request(path);
    expect([end.status, end.headers.get('location'), end.headers.get('refresh')]).toEqual([303, '/there', null]);
    expect((await app.request(path)).headers.get('location')).toBe('/there');
  });

  it('is waited for on a page of its own once only: who was led on is shown what it led to, however long that takes', async () => {
    let takesMs = 1_100;
    const work = async () => {
      await pause(takesMs);
      return '/begin?years=2';
    };
    const app = appWith(work, { atOnce: () => new Response('the page itself') });
    const begun = await app.request('/begin?years=2');
    const path = begun.headers.get('location') ?? '';
    await app.request(path);
    expect((await app.request(path)).headers.get('location')).toBe('/begin?years=2');
    expect(await (await app.request('/begin?years=2')).text()).toBe('the page itself');
    // Asked for anew it is waited for anew.
    expect((await app.request('/begin?years=2')).status).toBe(303);
    takesMs = 0;
    expect((await app.request('/begin?years=2')).status).toBe(200);
  });

  it('says without a measure what has none', async () => {
    const gate = held();
    const app = appWith(async (say) => {
      await say('Keeping it');
      return gate.work(async () => {});
    });
    const html = await (await app.request((await begin(app)).headers.get('location') ?? '')).text();
    expect(html).toMatch(/Keeping it/);
    expect(html).toMatch(/<progress id="how-far" max="1">/);
    gate.letGo();
  });

  it('tells what it was refused for, with the way back, however often the page is looked at', async () => {
    const { work, letGo } = held(async () => {
      throw new InputRefused('No.', [problem]);
    });
    const app = appWith(work);
    const path = (await begin(app)).headers.get('location') ?? '';
    letGo();
    await pause(5);
    for (const _ of [1, 2]) {
      const end = await app.request(path);
      expect(end.status).toBe(422);
      const html = await end.text();
      expect(plain(html)).toContain('line 3: tmin_c is "x". Give degrees.');
      expect(html).toContain('href="/form"');
    }
  });

  it('comes back as the form itself where it was refused at once', async () => {
    const refuse = async () => {
      throw new InputRefused('No.', [problem]);
    };
    const app = appWith(refuse, { refused: ([first]) => new Response(`again: ${first?.where}`, { status: 422 }) });
    expect(await (await begin(app)).text()).toBe('again: line 3');
    const plainly = await begin(appWith(refuse));
    expect([plainly.status, plain(await plainly.text())]).toEqual([422, expect.stringContaining('line 3')]);
  });

  it('comes back as the form itself where it was refused later, too, with what was typed', async () => {
    const { work, letGo } = held(async () => {
      throw new InputRefused('No.', [problem]);
    });
    const app = appWith(work, { refused: ([first]) => new Response(`typed, and ${first?.where}`, { status: 422 }) });
    const path = (await begin(app)).headers.get('location') ?? '';
    letGo();
    for (const _ of [1, 2]) {
      await pause(5);
      const end = await app.request(path);
      expect([end.status, await end.text()]).toEqual([422, 'typed, and line 3']);
    }
  });

  it('is refused while eight go on, and begun again when one has ended', async () => {
    const { work, letGo } = held();
    const app = appWith(work);
    const eight = Array.from({ length: 8 }, () => begin(app));
    await pause(5);
    const ninth = await begin(app);
    expect([ninth.status, await ninth.text()]).toEqual([503, 'Not now']);
    letGo();
    await Promise.all(eight);
    expect((await begin(app)).status).toBe(303);
  });

  it('says of a fault only what may be said', async () => {
    const answer = await begin(
      appWith(async () => {
        throw new Error('secret');
      }),
    );
    expect(answer.status).toBe(500);
    expect(await answer.text()).not.toContain('secret');
  });

  it('lets other pages be served between its pieces', async () => {
    let pieces = 0;
    let stop = false;
    const app = appWith(async (say) => {
      while (!stop) {
        pieces += 1;
        await say(`Piece ${pieces}`);
      }
      return '/there';
    });
    const begun = begin(app);
    await until(() => pieces > 3);
    expect(await (await app.request('/elsewhere')).text()).toBe('served');
    stop = true;
    expect((await begun).headers.get('location')).toBe('/there');
  });

  it('is unknown after a new start, which the page says kindly', async () => {
    const { app } = await sampleApp();
    const answer = await app.request('/under-way/AAAAAAAAAAAAAAAA', { headers: { Host: HOST } });
    expect([answer.status, plain(await answer.text())]).toEqual([
      404,
      expect.stringContaining('What was under way here is not known any more'),
    ]);
  });

  it('keeps to the safety headers of every page, which allow the asking again', async () => {
    const { app, get } = await sampleApp();
    const answer = await app.request('/under-way/x', { headers: { Host: HOST } });
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect((await get(GARDEN)).headers.get('refresh')).toBeNull();
  });
});
