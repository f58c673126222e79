/**
 * Addresses of computers: which are of this one, which of the home network, and which stand for the same household.
 */
import { BlockList, isIP, isIPv6 } from 'node:net';

/** This computer: RFC 1122, 3.2.1.3 and RFC 4291, 2.5.3. */
const LOOPBACK = listOf(['127.0.0.0/8', '::1/128']);

/** Networks that no address of the internet is in: RFC 1918, RFC 3927, RFC 4193, RFC 4291, 2.5.6. */
const AT_HOME = listOf([
  '127.0.0.0/8',
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
  '::1/128',
  'fc00::/7',
  'fe80::/10',
]);

/** Whether an address is this computer itself. */
export function isLoopback(address: string): boolean {
  return isIn(LOOPBACK, address);
}

/** Whether an address belongs to a network at home. */
export function isAtHome(address: string): boolean {
  return isIn(AT_HOME, address);
}

/** Whether a text is an address, or a network such as 172.16.0.0/12. */
export function isNetwork(text: string): boolean {
  const [address = '', bits, ...rest] = text.split('/');
  const kind = isIP(address);
  if (kind === 0 || rest.length > 0) return false;
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= (kind === 4 ? 32 : 128));
}

/** A list of addresses and networks to look in. */
export function listOf(networks: readonly string[]): BlockList {
  const list = new BlockList();
  for (const network of networks) {
    const [address = '', bits] = network.split('/');
    const kind = isIPv6(address) ? 'ipv6' : 'ipv4';
    if (bits === undefined) list.addAddress(address, kind);
    else list.addSubnet(address, Number(bits), kind);
  }
  return list;
}

/** Whether an address is in a list. */
export function isIn(list: BlockList, address: string): boolean {
  const kind = isIP(address);
  return kind !== 0 && list.check(address, kind === 6 ? 'ipv6' : 'ipv4');
}

/** An address as it is counted: an IPv4 one written as IPv6 is the same one (RFC 4291, 2.5.5.2). */
export function plainAddress(address: string): string {
  return address.replace(/^::ffff:(?=\d+\.)/i, '');
}

/**
 * What tries are counted by: the address, or the first 64 bits of an IPv6 one of the internet, since whoever has one has all
 * that begin so (RFC 6177). At home every device of the network shares these bits (RFC 4291, 2.5.6; RFC 4193, 3.1): one of
 * them alone is counted there, so that none is held up for what another tried.
 */
export function countedBy(address: string): string {
  if (!isIPv6(address)) return address;
  const [head = '', tail] = address.toLowerCase().split('%')[0]?.split('::') ?? [];
  const front = head === '' ? [] : head.split(':');
  const back = tail === undefined || tail === '' ? [] : tail.split(':');
  const gap = Array.from({ length: Math.max(0, 8 - front.length - back.length) }, () => '0');
  const groups = (tail === undefined ? front : [...front, ...gap, ...back]).map((group) =>
    group.replace(/^0+(?=.)/, ''),
  );
  return isAtHome(address) ? groups.join(':') : `${groups.slice(0, 4).join(':')}::/64`;
}
