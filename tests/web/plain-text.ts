/** The text of a page as it is read: without its tags, quotes as typed. */
export function plain(html: string): string {
  return withoutWhys(html)
    .replace(/<style[\s\S]*?<\/style>|<[^>]+>/g, ' ')
    .replace(/&#39;|’/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/\s+/g, ' ');
}

/** The text of an answer. */
export async function read(answer: Promise<Response> | Response): Promise<string> {
  return plain(await (await answer).text());
}

/** A page without the links by which its dates are asked why: as its sentences are read. */
export function withoutWhys(html: string): string {
  return html.replace(/<a class="why-date"[^>]*>([\s\S]*?)<\/a>/g, '$1');
}
