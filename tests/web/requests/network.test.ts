import { describe, expect, test } from 'vitest';
import {
  countedBy,
  isAtHome,
  isIn,
  isLoopback,
  isNetwork,
  listOf,
  plainAddress,
} from '../../../src/web/requests/network.ts';

describe('an address', () => {
  test.each([
    ['127.0.0.1', true, true],
    ['127.9.9.9', true, true],
    ['::1', true, true],
    ['10.1.2.3', false, true],
    ['172.16.0.1', false, true],
    ['172.31.255.255', false, true],
    ['192.168.1.20', false, true],
    ['169.254.7.7', false, true],
    ['fd12:3456::1', false, true],
    ['fe80::1', false, true],
    ['172.32.0.1', false, false],
    ['203.0.113.7', false, false],
    ['2001:db8::1', false, false],
    ['localhost', false, false],
    ['', false, false],
  ])('%s: this computer %s, at home %s', (address, here, home) => {
    expect([isLoopback(address), isAtHome(address)]).toEqual([here, home]);
  });

  test('of IPv4 written as IPv6 is the same one', () => {
    expect([plainAddress('::ffff:192.168.1.20'), plainAddress('::FFFF:127.0.0.1')]).toEqual([
      '192.168.1.20',
      '127.0.0.1',
    ]);
    expect([plainAddress('::1'), plainAddress('2001:db8::ffff:1')]).toEqual(['::1', '2001:db8::ffff:1']);
  });

  test.each([
    ['203.0.113.7', '203.0.113.7'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2::/64'],
    ['2001:0DB8:1:2::9', '2001:db8:1:2::/64'],
    ['2001:db8::1', '2001:db8:0:0::/64'],
    ['::1', '0:0:0:0:0:0:0:1'],
    ['fe80::0A:1%eth0', 'fe80:0:0:0:0:0:a:1'],
    ['fd12:3456::1', 'fd12:3456:0:0:0:0:0:1'],
  ])('%s is counted as %s', (address, counted) => {
    expect(countedBy(address)).toBe(counted);
  });
});

test.each([
  ['127.0.0.1', true],
  ['::1', true],
  ['172.16.0.0/12', true],
  ['fd00::/8', true],
  ['172.16.0.0/33', false],
  ['172.16.0.0/', false],
  ['172.16.0.0/12/4', false],
  ['proxy.example.org', false],
  ['', false],
])('"%s" names an address or a network: %s', (text, is) => {
  expect(isNetwork(text)).toBe(is);
});

test('a list knows the addresses and the networks it was made of', () => {
  const list = listOf(['127.0.0.1', '172.16.0.0/12', 'fd00::/8']);
  const known = ['127.0.0.1', '172.20.0.3', 'fd00::9', '127.0.0.2', '172.32.0.1', 'fe80::1', 'x'];
  expect(known.map((address) => isIn(list, address))).toEqual([true, true, true, false, false, false, false]);
  expect(isIn(listOf([]), '127.0.0.1')).toBe(false);
});
