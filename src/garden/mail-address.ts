/**
 * Mail addresses as garden files, forms and settings give them: one address alone, without a name.
 */

/** Most characters of the part before the @, and of the whole: RFC 5321, 4.5.3.1.1 and 4.5.3.1.3 (256 with < and >). */
const LOCAL_CHARACTERS = 64;
const ADDRESS_CHARACTERS = 254;

/** "Atom" and "dot-atom" of RFC 5322, 3.2.3: quoted parts and letters outside ASCII are not taken. */
const ATOM = "[A-Za-z0-9!#$%&'*+/=?^_`{|}~-]+";
const LOCAL_PART = new RegExp(`^${ATOM}(?:\\.${ATOM})*$`);

/** A name of letters, digits and hyphens (RFC 1123, 2.1); one word alone is the name of a computer at home. */
const DOMAIN = /^(?!-)[A-Za-z0-9-]{1,63}(?<!-)(?:\.(?!-)[A-Za-z0-9-]{1,63}(?<!-))*$/;

/** What an address that cannot be used needs, as a sentence. */
export const MAIL_ADDRESS_MEND = 'Give one address alone, such as garden@example.org.';

/** Whether a text is one mail address, such as "garden@example.org". */
export function isMailAddress(text: string): boolean {
  const at = text.lastIndexOf('@');
  const [local, domain] = [text.slice(0, at), text.slice(at + 1)];
  if (at < 1 || local.length > LOCAL_CHARACTERS || text.length > ADDRESS_CHARACTERS) return false;
  return LOCAL_PART.test(local) && DOMAIN.test(domain);
}
