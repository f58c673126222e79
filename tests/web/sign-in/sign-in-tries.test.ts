import { describe, expect, test } from 'vitest';
import { type OpenTry, SignInTries } from '../../../src/web/sign-in/sign-in-tries.ts';

function counted() {
  const clock = { nowMs: 0 };
  const tries = new SignInTries(() => clock.nowMs);
  const away = (address: string) => tries.begin({ address, isHere: false, isAtHome: false });
  const home = (address: string) => tries.begin({ address, isHere: false, isAtHome: true });
  const here = () => tries.begin({ address: '127.0.0.1', isHere: true, isAtHome: true });
  return { clock, tries, away, home, here };
}

const opened = (tried: OpenTry | number): OpenTry => {
  if (typeof tried === 'number') throw new Error(`To be waited for ${tried} s.`);
  return tried;
};

/** OWASP ASVS 5.0, 6.3.1 and 6.1.1; NIST SP 800-63B-4, 3.2.2. */
describe('wrong passwords of one address', () => {
  test('are let pass five times, then each doubles the wait, up to a quarter of an hour', () => {
    const { clock, home } = counted();
    for (let count = 0; count < 5; count += 1) opened(home('192.168.1.20'));
    const waits: number[] = [];
    for (let count = 0; count < 12; count += 1) {
      const wait = home('192.168.1.20');
      if (typeof wait !== 'number') throw new Error('It was let pass.');
      waits.push(wait);
      clock.nowMs += wait * 1000;
      opened(home('192.168.1.20'));
    }
    expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900]);
  });

  test('hold up no other address, and are forgotten after an hour', () => {
    const { clock, home } = counted();
    for (let count = 0; count < 5; count += 1) opened(home('192.168.1.20'));
    expect(home('192.168.1.20')).toBe(1);
    opened(home('192.168.1.21'));
    clock.nowMs = 3_600_001;
    for (let count = 0; count < 5; count += 1) opened(home('192.168.1.20'));
    expect(home('192.168.1.20')).toBe(1);
  });

  test('are forgotten once the right one comes, and those not looked at are not counted', () => {
    const { home } = counted();
    for (let count = 0; count < 4; count += 1) opened(home('192.168.1.20'));
    opened(home('192.168.1.20')).right();
    for (let count = 0; count < 20; count += 1) opened(home('192.168.1.20')).notMade();
    for (let count = 0; count < 5; count += 1) opened(home('192.168.1.20'));
    expect(home('192.168.1.20')).toBe(1);
  });

  test('sent all at once count before any of them is looked at', () => {
    const { away } = counted();
    const burst = Array.from({ length: 100 }, () => away('203.0.113.7'));
    expect(burst.filter((tried) => typeof tried !== 'number')).toHaveLength(5);
  });

  test('count for all of a network of IPv6, since one computer has it whole', () => {
    const { away } = counted();
    for (let count = 0; count < 5; count += 1) opened(away(`2001:db8:1:2::${count + 1}`));
    expect(away('2001:db8:1:2:ffff::1')).toBe(1);
    opened(away('2001:db8:1:3::1'));
  });

  /** RFC 4291, 2.5.6: all link-local addresses begin with the same 64 bits, and those of one network by RFC 4193 as well. */
  test.each(['fe80', 'fd12:3456:789a:1'])(
    'hold up none of the neighbours at home, whose address begins alike: %s',
    (network) => {
      const { home } = counted();
      for (let count = 0; count < 5; count += 1) opened(home(`${network}::bad`));
      expect(home(`${network}::bad`)).toBe(1);
      opened(home(`${network}::900d`));
    },
  );
});

describe('wrong passwords from everywhere', () => {
  test('make everybody outside wait, a minute at most, and nobody at home', () => {
    const { clock, away, home } = counted();
    for (let count = 0; count < 30; count += 1) opened(away(`203.0.113.${count}`));
    expect(away('198.51.100.1')).toBe(1);
    for (let count = 0; count < 40; count += 1) {
      clock.nowMs += 60_000;
      opened(away(`198.51.100.${count}`));
    }
    expect(away('192.0.2.9')).toBe(60);
    opened(home('192.168.1.20'));
    clock.nowMs += 60_000;
    opened(away('192.0.2.9')).right();
  });

  test('at home make everybody else at home wait, and never whoever sits at the computer itself', () => {
    const { home, here } = counted();
    for (let count = 0; count < 30; count += 1) opened(home(`192.168.1.${count}`));
    expect(home('192.168.1.200')).toBe(1);
    for (let count = 0; count < 5; count += 1) opened(here());
    expect(here()).toBe(1);
  });

  test('are remembered of a thousand addresses at most', () => {
    const { tries, clock, away } = counted();
    for (let count = 0; count < 3_000; count += 1) {
      clock.nowMs += 60_000;
      opened(away(`10.0.${count % 250}.${Math.floor(count / 250)}`));
    }
    expect(tries.remembered).toBe(1_000);
  });
});
