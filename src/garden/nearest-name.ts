/**
 * The known name nearest to a misspelt one.
 */

/** Changes of one letter (put in, taken out, swapped for another) that turn one word into the other. */
export function letterChanges(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const swap = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[to.length] ?? 0;
}

/** A name is near where at most one letter in so many is another: "wombat" is no tomato. House default. */
const NEAR_SHARE = 3;

/** Known names close to a word, nearest first: at most `most`, none further than a third of the word, nor one change. */
export function nearestNames(word: string, known: readonly string[], most = 3): string[] {
  const wanted = word.toLowerCase();
  return known
    .map((name) => ({ name, changes: distance(wanted, name.toLowerCase()) }))
    .filter(({ name, changes }) => changes <= Math.max(1, Math.max(word.length, name.length) / NEAR_SHARE))
    .sort((a, b) => a.changes - b.changes || (a.name < b.name ? -1 : 1))
    .slice(0, most)
    .map(({ name }) => name);
}

/** A name that holds the whole word counts as one change away: "pea" finds "field_pea". */
function distance(word: string, name: string): number {
  const changes = letterChanges(word, name);
  return word.length >= 3 && name.includes(word) ? Math.min(changes, 1) : changes;
}

/** "Did you mean …?" for a misspelt word, or the whole list where nothing is near. */
export function suggestion(word: string, known: readonly string[]): string {
  const near = nearestNames(word, [...new Set(known)]);
  return near.length > 0 ? `Did you mean ${near.join(' or ')}?` : `Known are: ${toldOnce(known).join(', ')}.`;
}

/** Names without those that another only spells otherwise: "North bed" and its id "north-bed". */
function toldOnce(names: readonly string[]): string[] {
  const plain = names.map((name) => name.toLowerCase().replace(/[^a-z0-9]+/g, '-'));
  return names.filter((_, at) => plain.indexOf(plain[at] ?? '') === at);
}
