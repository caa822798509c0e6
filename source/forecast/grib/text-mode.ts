/** What a transfer meant for text does to bytes: line feeds get a carriage return or lose it, the eighth bit is lost, bytes are put into UTF-8. */
export type Mangling = 'line ends added' | 'line ends lost' | 'seven bits' | 'UTF-8';

const FEED = 0x0a;
const RETURN = 0x0d;
/** So many line feeds all behind a carriage return come about by chance once in 65,536; so many bytes without either, or without an eighth bit, about as rarely. */
const LEAST_FEEDS = 2;
const LEAST_WITHOUT_RETURN = 3000;
const LEAST_SEVEN_BIT = 200;
const LEAST_HIGH = 4;

/** How a broken message was mangled; null where it does not look so. A whole message is not judged: there all of this can be chance. */
export function manglingOf(octets: Uint8Array): Mangling | null {
  let [feeds, bare, returns, high] = [0, 0, 0, 0];
  for (let i = 0; i < octets.length; i += 1) {
    const octet = octets[i]!;
    if (octet === FEED) {
      feeds += 1;
      if (octets[i - 1] !== RETURN) bare += 1;
    }
    if (octet === RETURN) returns += 1;
    if (octet >= 0x80) high += 1;
  }
  if (high === 0 && octets.length >= LEAST_SEVEN_BIT) return 'seven bits';
  if (high >= LEAST_HIGH && isUtf8(octets)) return 'UTF-8';
  if (feeds >= LEAST_FEEDS && bare === 0) return 'line ends added';
  if (returns === 0 && octets.length >= LEAST_WITHOUT_RETURN) return 'line ends lost';
  return null;
}

function isUtf8(octets: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(octets);
    return true;
  } catch {
    return false;
  }
}
