/** What a transfer meant for text does to bytes: line feeds get a carriage return or lose it, the eighth bit is lost, bytes are put into UTF-8. */
export type Mangling = 'line ends added' | 'line ends lost' | 'seven bits' | 'UTF-8';

const FEED = 0x0a;
const RETURN = 0x0d;
const SEVEN = 0x37;
/** So many line feeds all behind a carriage return come about by chance once in 65,536; so many octets without an eighth bit, or with all of them in UTF-8, hardly ever. */
const LEAST_FEEDS = 2;
const LEAST_SEVEN_BIT = 200;
const LEAST_HIGH = 4;

/**
 * How a broken message was mangled; null where it does not look so. `short`: fewer octets than its header says.
 * A whole message is not judged: there all of this can be chance.
 */
export function manglingOf(octets: Uint8Array, short: boolean): Mangling | null {
  let [feeds, bare, high] = [0, 0, 0];
  for (const [i, octet] of octets.entries()) {
    if (octet === FEED) {
      feeds += 1;
      if (octets[i - 1] !== RETURN) bare += 1;
    }
    if (octet >= 0x80) high += 1;
  }
  if (high === 0 && octets.length >= LEAST_SEVEN_BIT) return 'seven bits';
  if (high >= LEAST_HIGH && isUtf8(octets)) return 'UTF-8';
  if (feeds >= LEAST_FEEDS && bare === 0) return 'line ends added';
  if (short && feeds === bare && endsWhole(octets)) return 'line ends lost';
  return null;
}

/** The end of a message is there, before blanks and line ends: it is not cut. */
function endsWhole(octets: Uint8Array): boolean {
  let end = octets.length;
  while (end > 0 && octets[end - 1]! <= 0x20) end -= 1;
  return end >= 4 && octets.subarray(end - 4, end).every((octet) => octet === SEVEN);
}

function isUtf8(octets: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(octets);
    return true;
  } catch {
    return false;
  }
}
