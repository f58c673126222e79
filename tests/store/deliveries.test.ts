import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { Letter } from '../../src/store/deliveries.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import { stockedStore } from './stocked.ts';
import { tempFolder } from './temp-folder.ts';

const name = { gardenId: 'plot', member: 'Ida', monday: '2027-04-19' };
const letter: Letter = { messageId: '<1@b>', way: 'server', from: 'a@b.org', to: 'ida@b.org' };

/** A moment of Sunday 18 April. */
const at = (clock: string) => `2027-04-18T${clock}:00.000Z`;

interface Try {
  by?: string;
  again?: boolean;
  to?: string;
}

/** Claims the list at a moment, for five minutes. */
function claimed(store: Store, clock: string, { by = 'kitchen', again = false, to = letter.to }: Try = {}) {
  const until = new Date(Date.parse(at(clock)) + 5 * 60_000).toISOString();
  return store.claimDelivery(name, { letter: { ...letter, to }, claim: { by, at: at(clock), until }, again });
}

async function standing(store: Store) {
  const [row] = await store.deliveries('plot');
  return row;
}

describe('a list in the log', () => {
  test('is claimed, handed over and sent', async () => {
    const store = await stockedStore();
    expect(await claimed(store, '07:00')).toMatchObject({ state: 'claimed', tries: 1 });
    expect(await store.handOver(name, { by: 'kitchen', at: at('07:01'), until: at('07:16') })).toBe(true);
    expect((await standing(store))?.state).toBe('handing over');
    expect(await store.settleDelivery(name, 'kitchen', { state: 'sent', at: at('07:02') })).toBe(true);
    expect(await standing(store)).toEqual({
      ...name,
      ...letter,
      state: 'sent',
      tries: 1,
      changedAt: at('07:02'),
      sentAt: at('07:02'),
    });
  });

  test('once sent is nobody’s to send, however often it is asked for', async () => {
    const store = await stockedStore();
    await claimed(store, '07:00');
    await store.settleDelivery(name, 'kitchen', { state: 'sent', at: at('07:02') });
    expect(await claimed(store, '09:00')).toBeUndefined();
    expect(await claimed(store, '09:00', { again: true, to: 'new@b.org' })).toBeUndefined();
  });

  test('that one program claimed is another’s only when the claim has run out', async () => {
    const store = await stockedStore();
    await claimed(store, '07:00');
    expect(await claimed(store, '07:04', { by: 'shed' })).toBeUndefined();
    expect(await claimed(store, '07:05', { by: 'shed' })).toMatchObject({ tries: 2 });
  });

  test('is not handed over by a program that was away while another took it', async () => {
    const store = await stockedStore();
    await claimed(store, '07:00');
    await claimed(store, '07:10', { by: 'shed' });
    expect(await store.handOver(name, { by: 'kitchen', at: at('07:11'), until: at('07:26') })).toBe(false);
    expect(await store.settleDelivery(name, 'kitchen', { state: 'delayed', at: at('07:11') })).toBe(false);
    expect((await standing(store))?.state).toBe('claimed');
  });

  test('waits for its next try, unless the gardener asks or its address was mended', async () => {
    const store = await stockedStore();
    const delay = { state: 'delayed' as const, at: at('07:01'), nextTryAt: at('07:06'), problem: 'Nobody answered.' };
    await claimed(store, '07:00');
    await store.settleDelivery(name, 'kitchen', delay);
    expect(await claimed(store, '07:05')).toBeUndefined();
    expect(await claimed(store, '07:06')).toMatchObject({ tries: 2, problem: 'Nobody answered.' });
    await store.settleDelivery(name, 'kitchen', delay);
    expect(await claimed(store, '07:02', { again: true })).toMatchObject({ tries: 3 });
    await store.settleDelivery(name, 'kitchen', delay);
    expect(await claimed(store, '07:02', { to: 'new@b.org' })).toMatchObject({ tries: 4, to: 'new@b.org' });
  });

  test('that was refused stays so, until its address is mended or the gardener asks', async () => {
    const store = await stockedStore();
    await claimed(store, '07:00');
    await store.settleDelivery(name, 'kitchen', { state: 'refused', at: at('07:01') });
    expect(await claimed(store, '20:00')).toBeUndefined();
    expect(await claimed(store, '20:00', { to: 'new@b.org' })).toBeDefined();
  });

  test('that broke off while it was handed over is unknown, and goes out again only where the gardener asks', async () => {
    const store = await stockedStore();
    await claimed(store, '07:00');
    await store.handOver(name, { by: 'kitchen', at: at('07:01'), until: at('07:16') });
    expect(await store.noteBrokenOff('plot', at('07:15'), 'It broke off.')).toBe(0);
    expect(await claimed(store, '08:00')).toBeUndefined();
    expect(await store.noteBrokenOff('plot', at('08:00'), 'It broke off.')).toBe(1);
    expect(await standing(store)).toMatchObject({ state: 'unknown', problem: 'It broke off.' });
    expect(await claimed(store, '08:01', { to: 'new@b.org' })).toBeUndefined();
    expect(await claimed(store, '08:01', { again: true })).toMatchObject({ messageId: letter.messageId });
  });

  test('taken for broken off by another program is sent all the same, where its own tells so late', async () => {
    const store = await stockedStore();
    await claimed(store, '07:00');
    await store.handOver(name, { by: 'kitchen', at: at('07:01'), until: at('07:16') });
    await store.noteBrokenOff('plot', at('08:00'), 'It broke off.');
    expect(await store.settleDelivery(name, 'kitchen', { state: 'sent', at: at('08:01') })).toBe(true);
    expect(await standing(store)).not.toHaveProperty('problem');
  });

  test('whose week was over first is missed, with what held it up; one sent or unknown stays what it is', async () => {
    const store = await stockedStore();
    await store.noteMissed(name, at('23:00'));
    expect(await standing(store)).toMatchObject({ state: 'missed', tries: 0 });
    // Noted so by a clock that was wrong, it is still there to be sent.
    expect(await claimed(store, '23:10')).toMatchObject({ state: 'claimed', tries: 1 });
    const second = await stockedStore();
    await claimed(second, '07:00');
    await second.settleDelivery(name, 'kitchen', { state: 'delayed', at: at('07:01'), problem: 'Nobody answered.' });
    await second.noteMissed(name, at('23:00'));
    expect(await standing(second)).toMatchObject({ state: 'missed', problem: 'Nobody answered.' });
    const third = await stockedStore();
    await claimed(third, '07:00');
    await third.settleDelivery(name, 'kitchen', { state: 'unknown', at: at('07:01') });
    await third.noteMissed(name, at('23:00'));
    expect((await standing(third))?.state).toBe('unknown');
  });

  test('goes to one of two programs on the same data', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const [kitchen, shed] = [await stockedStore(file), await openStore({ file })];
    onTestFinished(() => shed.close());
    expect(await claimed(kitchen, '07:00', { by: 'kitchen' })).toBeDefined();
    expect(await claimed(shed, '07:00', { by: 'shed' })).toBeUndefined();
  });
});
