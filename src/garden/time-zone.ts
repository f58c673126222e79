/**
 * The time zone of a place.
 */
import zoneLookup from '@photostructure/tz-lookup';
import { IANAZone } from 'luxon';

/**
 * The IANA zone a place lies in; at sea the zone its hour is reckoned by, such as "Etc/GMT+3". Nothing where the clock of
 * this computer does not know the zone.
 *
 * Source: borders as OpenStreetMap has them, simplified by the package @photostructure/tz-lookup: near a border it can name
 * the neighbour's zone.
 */
export function zoneAt({ latitude, longitude }: { latitude: number; longitude: number }): string | undefined {
  const zone = zoneLookup(latitude, longitude);
  return IANAZone.isValidZone(zone) ? zone : undefined;
}

/** Whether this computer knows a zone of that name. */
export function isZone(name: string): boolean {
  return IANAZone.isValidZone(name);
}
