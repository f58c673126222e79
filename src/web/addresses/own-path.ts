const OWN = 'http://own.invalid';

/**
 * The path and query of a page of this program: never an address elsewhere, whatever is asked for.
 *
 * @param base the origin an address may name besides having none
 * @returns "/" where it is no page of this program
 */
export function ownPath(path: string, base = OWN): string {
  const url = URL.canParse(path, base) ? new URL(path, base) : undefined;
  const { host } = new URL(base);
  return path !== '' && url?.host === host && !url.pathname.startsWith('//') ? `${url.pathname}${url.search}` : '/';
}
