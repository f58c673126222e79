/**
 * A place on the globe as somebody types or pastes it: decimal degrees with a point or a comma, degrees with minutes and
 * seconds, a sign or a letter for the half of the world, or both numbers in one field.
 */

/** Degrees north and east; south and west are negative. */
export interface Degrees {
  latitude: number;
  longitude: number;
}

/** Which of the two typed fields cannot be used. */
export type WrongPlace = 'latitude' | 'longitude';

/** One angle as typed, with the axis its letter names. */
interface Angle {
  degrees: number;
  axis?: WrongPlace;
}

const MOST: Readonly<Record<WrongPlace, number>> = { latitude: 90, longitude: 180 };

/** Longest text that is looked at: no place needs more. */
const LONGEST = 120;

/**
 * The place two fields say; a pair pasted into the first one alone will do. Where something cannot be used: which field.
 */
export function readPlace(latitude: string, longitude: string): Degrees | { wrong: readonly WrongPlace[] } {
  if (longitude.trim() === '') {
    const both = anglesIn(latitude);
    if (both?.length === 2) return placed(both) ?? { wrong: ['latitude', 'longitude'] };
    const alone = both?.length === 1 && fits(both[0], 'latitude');
    return { wrong: alone ? ['longitude'] : ['latitude', 'longitude'] };
  }
  const [north, east] = [oneAngle(latitude), oneAngle(longitude)];
  const found = north && east && placed([north, east]);
  if (found) return found;
  const wrong = [
    fits(north, 'latitude') ? [] : ['latitude' as const],
    fits(east, 'longitude') ? [] : ['longitude' as const],
  ];
  return { wrong: wrong.flat().length === 0 ? ['latitude', 'longitude'] : wrong.flat() };
}

/** Two angles as a place: in the order they stand in, unless their letters say otherwise. */
function placed([first, second]: readonly Angle[]): Degrees | undefined {
  const turned = first?.axis === 'longitude' || second?.axis === 'latitude';
  const [north, east] = turned ? [second, first] : [first, second];
  return fits(north, 'latitude') && fits(east, 'longitude')
    ? { latitude: north.degrees, longitude: east.degrees }
    : undefined;
}

function fits(angle: Angle | undefined, axis: WrongPlace): angle is Angle {
  return angle !== undefined && (angle.axis ?? axis) === axis && Math.abs(angle.degrees) <= MOST[axis];
}

function oneAngle(text: string): Angle | undefined {
  const plain = plainSigns(text);
  const whole = plain === undefined ? undefined : angleOf(plain);
  if (whole !== undefined) return whole;
  const several = anglesIn(text);
  return several?.length === 1 ? several[0] : undefined;
}

/** Every angle of a text, one or two; nothing where it is no place. */
function anglesIn(text: string): Angle[] | undefined {
  const plain = plainSigns(text);
  const angles = plain === undefined ? [] : pieces(plain).map(angleOf);
  const known = angles.filter((angle) => angle !== undefined);
  return known.length === angles.length && (known.length === 1 || known.length === 2) ? known : undefined;
}

/** The text in signs of one kind; nothing where it holds what belongs to no place. */
function plainSigns(text: string): string | undefined {
  const plain = text
    .slice(0, LONGEST + 1)
    .toUpperCase()
    .replace(/\b(GEO:|LATITUDE|LONGITUDE|LAT|LONG|LON|LNG)\b:?/g, ' ')
    .replace(/GEO:/g, ' ')
    .replace(/\b(NORTH|SOUTH|EAST|WEST)\b/g, (word) => word.charAt(0))
    .replace(/[−–—]/g, '-')
    .replace(/[º˚]/g, '°')
    .replace(/[′’‘`´]/g, "'")
    .replace(/''|[″”“]/g, '"')
    .replace(/[():=]/g, ' ')
    .trim();
  return plain.length <= LONGEST && /\d/.test(plain) && /^[\d.,;/\s°'"NSEW+-]+$/.test(plain) ? plain : undefined;
}

const NUMBER = String.raw`[+-]?\d{1,3}(?:[.,]\d+)?`;

/** A text cut into its angles: by letters, by degree signs, or by how many numbers there are. */
function pieces(plain: string): string[] {
  const letters = plain.match(/[NSEW]/g)?.length ?? 0;
  if (letters === 2) return /^[NSEW]/.test(plain) ? cut(plain, /(?=[NSEW])/) : cut(plain, /(?<=[NSEW])/);
  if ((plain.match(/°/g)?.length ?? 0) === 2) return cut(plain, new RegExp(`(?=${NUMBER}\\s*°)(?<![\\d.,+-])`));
  const numbers = plain.match(new RegExp(NUMBER, 'g')) ?? [];
  if (letters > 0 || plain.includes('°') || numbers.length % 2 === 1) return [plain];
  const half = numbers.length / 2;
  return [numbers.slice(0, half).join(' '), numbers.slice(half).join(' ')];
}

function cut(text: string, at: RegExp): string[] {
  return text
    .split(at)
    .map((piece) => piece.replace(/^[\s,;/]+|[\s,;/]+$/g, ''))
    .filter((piece) => piece !== '');
}

const ANGLE =
  /^([NSEW])?\s*([+-])?\s*(\d{1,3}(?:[.,]\d+)?)\s*°?\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*'?\s*(?:(\d{1,2}(?:[.,]\d+)?)\s*"?\s*)?)?([NSEW])?$/;

/** Minutes and seconds of an angle stop short of this. */
const SIXTY = 60;

function angleOf(text: string): Angle | undefined {
  const [match, before, sign, degrees = '', minutes, seconds, after] = ANGLE.exec(text) ?? [];
  const letter = before ?? after;
  if (match === undefined || (before !== undefined && after !== undefined)) return undefined;
  // Only the last part of an angle may have tenths.
  if ([degrees, minutes].some((part, at) => /[.,]/.test(part ?? '') && [minutes, seconds][at] !== undefined))
    return undefined;
  const [whole, sixtieths, rest] = [degrees, minutes ?? '0', seconds ?? '0'].map((part) =>
    Number(part.replace(',', '.')),
  );
  if (whole === undefined || sixtieths === undefined || rest === undefined) return undefined;
  if (sixtieths >= SIXTY || rest >= SIXTY) return undefined;
  const size = whole + sixtieths / SIXTY + rest / SIXTY ** 2;
  const isNegative = letter === undefined ? sign === '-' : letter === 'S' || letter === 'W';
  // A hundred-thousandth of a degree is a metre.
  const value = Number((isNegative ? -size : size).toFixed(5));
  if (letter === undefined) return { degrees: value };
  return { degrees: value, axis: letter === 'N' || letter === 'S' ? 'latitude' : 'longitude' };
}
