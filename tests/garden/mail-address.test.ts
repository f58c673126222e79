import { expect, test } from 'vitest';
import { isMailAddress } from '../../src/garden/mail-address.ts';

test.each([
  ['ida@example.org'],
  ["ida.o'neill+garden@mail.example.co.uk"],
  ['garden@shed'],
  [`${'a'.repeat(64)}@example.org`],
])('%s is a mail address', (text) => expect(isMailAddress(text)).toBe(true));

// RFC 5321, 4.5.3.1.1: 64 octets before the @; RFC 5322, 3.2.3: dots stand between atoms.
test.each([
  ['ida'],
  ['@example.org'],
  ['ida@'],
  ['ida@example..org'],
  ['ida@-example.org'],
  ['.ida@example.org'],
  ['ida..b@example.org'],
  ['Ida <ida@example.org>'],
  ['ida@example.org, bo@example.org'],
  ['ida@example.org\r\nBcc: bo@example.org'],
  ['ida@example.org\n'],
  ['ïda@example.org'],
  [`${'a'.repeat(65)}@example.org`],
  [`ida@${'a.'.repeat(130)}org`],
])('%j is none', (text) => expect(isMailAddress(text)).toBe(false));
