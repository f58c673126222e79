import { expect, test } from 'vitest';
import { scryptOf } from '../../src/steward/sign-in/password-hash.ts';

/**
 * RFC 7914, 12: the test vectors of scrypt. The fourth, with N = 2^20, takes a gigabyte and is left out.
 */
test.each([
  {
    password: '',
    salt: '',
    cost: { logN: 4, r: 1, p: 1 },
    hash:
      '77d6576238657b203b19ca42c18a0497f16b4844e3074ae8dfdffa3fede21442' +
      'fcd0069ded0948f8326a753a0fc81f17e8d3e0fb2e0d3628cf35e20c38d18906',
  },
  {
    password: 'password',
    salt: 'NaCl',
    cost: { logN: 10, r: 8, p: 16 },
    hash:
      'fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162' +
      '2eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640',
  },
  {
    password: 'pleaseletmein',
    salt: 'SodiumChloride',
    cost: { logN: 14, r: 8, p: 1 },
    hash:
      '7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2' +
      'd5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887',
  },
])('scrypt of "$password" with "$salt" is what RFC 7914 says', async ({ password, salt, cost, hash }) => {
  expect((await scryptOf(password, { salt: Buffer.from(salt), cost, octets: 64 })).toString('hex')).toBe(hash);
});
