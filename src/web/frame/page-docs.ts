/**
 * Which page of the handbook explains which page of a garden.
 */

/** Pages by how their address goes on after the garden's own; the first that fits holds. */
const EXPLAINED: readonly (readonly [address: RegExp, docs: string])[] = [
  [/^$/, 'weekly-list'],
  [/^\/week-sheet/, 'weekly-list#on-paper'],
  [/^\/tasks/, 'how-a-day-is-chosen'],
  [/^\/year/, 'pages#the-year'],
  [/^\/(?:season-end|beds\/[^/]+(?:\/choose|\/drop)?$)/, 'choosing-covers'],
  [/^\/(?:beds|take-plan|wishes)/, 'rotation-plan'],
  [/^\/fertility/, 'fertility'],
  [/^\/compost\/fill/, 'new-beds'],
  [/^\/compost\/mix/, 'composting#the-mix'],
  [/^\/compost/, 'composting'],
  [/^\/weather/, 'weather-log'],
  [/^\/climate/, 'climate'],
  [/^\/report\/cold-night/, 'frost-watch'],
  [/^\/(?:report\/away|away-sheet)/, 'away-and-missed'],
  [/^\/report\/disease/, 'disease'],
  [/^\/report\/pile/, 'composting'],
  [/^\/report\/stage/, 'cover-cropping'],
  [/^\/report/, 'pages#report'],
  [/^\/(?:history|undo)/, 'pages#taking-back'],
  [/^\/record/, 'season-record'],
  [/^\/feeds/, 'feeds'],
  [/^\/household\/mail/, 'weekly-list#answering-from-the-mail'],
  [/^\/household/, 'pages#household'],
  [/^\/garden$/, 'pages#the-garden'],
  [/^\/edit/, 'changing-facts'],
  [/^\/garden/, 'garden-file'],
];

/** The page of the handbook, with its anchor after "#" where one is meant, that explains what is at an address. */
export function docsOfPath(path: string): string | undefined {
  const [, rest] = /^\/gardens\/[^/]+(.*)$/.exec(path) ?? [];
  return rest === undefined ? undefined : EXPLAINED.find(([address]) => address.test(rest))?.[1];
}
