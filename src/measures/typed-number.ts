/**
 * A number as somebody types it: with a point or a comma before its tenths, and no sign between its thousands.
 */

/**
 * The number typed: "12", "3,5", ".5". Nothing where it is none, nor where a comma may stand between thousands: a pile of
 * "1,200" litres read as one and a fifth would be lost to every task that counts on it.
 */
export function readNumber(text: string): number | undefined {
  const trimmed = text.trim();
  return /^(\d+|\d*[.,]\d+)$/.test(trimmed) && !isUnclear(trimmed) ? Number(trimmed.replace(',', '.')) : undefined;
}

/** Whether a typed number has a comma that may stand between thousands or before tenths: "1,200", but not "0,125". */
export function isUnclear(text: string): boolean {
  return /^[1-9]\d{0,2},\d{3}$/.test(text.trim());
}
