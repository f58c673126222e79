/**
 * The form of a page as a browser would send it back.
 */

/** A form: where it goes, and what an untouched one sends. */
export interface PageForm {
  action: string;
  fields: Record<string, string | string[]>;
}

/** The last posted form of a page besides the switch of units in its foot. */
export function formIn(html: string): PageForm {
  const forms = [...html.matchAll(/<form method="post" action="([^"]*)"[^>]*>(.*?)<\/form>/gs)];
  const found = forms.findLast(([, action]) => action !== '/reading');
  if (found === undefined) throw new Error('No form is on the page.');
  const [, action = '', within = ''] = found;
  return { action: unescaped(action), fields: fieldsIn(within) };
}

function fieldsIn(html: string): PageForm['fields'] {
  const fields: Record<string, string | string[]> = {};
  const add = (name: string, value: string): void => {
    const held = fields[name];
    fields[name] = held === undefined ? value : [held, value].flat();
  };
  for (const [, attributes = ''] of html.matchAll(/<input ([^>]*)>/g)) {
    const { type, name, value = '' } = attributesIn(attributes);
    const isTicked = /\bchecked\b/.test(attributes);
    if (name === undefined || ((type === 'checkbox' || type === 'radio') && !isTicked)) continue;
    add(name, value);
  }
  for (const [, name = '', options = ''] of html.matchAll(/<select [^>]*name="([^"]*)"[^>]*>(.*?)<\/select>/gs)) {
    const chosen = /<option value="([^"]*)" selected/.exec(options) ?? /<option value="([^"]*)"/.exec(options);
    add(unescaped(name), unescaped(chosen?.[1] ?? ''));
  }
  return fields;
}

function attributesIn(text: string): Record<string, string> {
  return Object.fromEntries(
    [...text.matchAll(/([a-z]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, unescaped(value)]),
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
