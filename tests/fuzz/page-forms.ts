/**
 * Every form of a page as a browser would send it back, with what each of its fields offers.
 */

/** A form of a page. */
export interface FoundForm {
  /** The path of the page it is on. */
  page: string;
  action: string;
  method: 'GET' | 'POST';
  /** Whether it sends files. */
  withFiles: boolean;
  /** What an untouched one sends, in order. */
  fields: readonly (readonly [string, string])[];
  /** Its fields by name: what may be chosen, where it offers a choice; of which type it is. */
  offers: ReadonlyMap<string, readonly string[]>;
  types: ReadonlyMap<string, string>;
  /** The buttons that carry a word of their own. */
  presses: readonly (readonly [string, string])[];
}

/** All forms of a page but the switch of units in its foot, which has a page of its own: the handbook's. */
export function formsOn(page: string, html: string): FoundForm[] {
  return [...html.matchAll(/<form ([^>]*)>(.*?)<\/form>/gs)].map(([, head = '', within = '']) => {
    const { method = 'get', action = page, enctype = '' } = attributesIn(head);
    return {
      page,
      action,
      method: method.toLowerCase() === 'post' ? 'POST' : 'GET',
      withFiles: enctype === 'multipart/form-data',
      ...fieldsIn(within),
    };
  });
}

function fieldsIn(html: string): Pick<FoundForm, 'fields' | 'offers' | 'types' | 'presses'> {
  const fields: [string, string][] = [];
  const presses: [string, string][] = [];
  const offers = new Map<string, string[]>();
  const types = new Map<string, string>();
  const offer = (name: string, values: readonly string[]) => offers.set(name, [...(offers.get(name) ?? []), ...values]);
  for (const found of html.matchAll(/<input ([^>]*)>|<(textarea|select|button) ([^>]*)>(.*?)<\/\2>/gs)) {
    const [, input, tag = 'input', head = input ?? '', rest = ''] = found;
    const { type = tag, name, value = '' } = attributesIn(head);
    if (name === undefined) continue;
    if (tag === 'button') presses.push([name, value]);
    if (tag === 'button') continue;
    types.set(name, type);
    if (tag === 'textarea') fields.push([name, unescaped(rest).trim()]);
    else if (tag === 'select') {
      const options = [...rest.matchAll(/<option value="([^"]*)"( selected)?/g)];
      offer(
        name,
        options.map(([, option = '']) => unescaped(option)),
      );
      const chosen = options.find(([, , selected]) => selected !== undefined) ?? options[0];
      fields.push([name, unescaped(chosen?.[1] ?? '')]);
    } else if (type === 'checkbox' || type === 'radio') {
      offer(name, [value]);
      if (/\bchecked\b/.test(head)) fields.push([name, value]);
    } else if (type !== 'file') fields.push([name, value]);
  }
  return { fields, offers, types, presses };
}

function attributesIn(text: string): Record<string, string> {
  return Object.fromEntries(
    [...text.matchAll(/([a-z-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, unescaped(value)]),
  );
}

function unescaped(text: string): string {
  return text
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&');
}
