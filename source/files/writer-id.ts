import { randomBytes } from 'node:crypto';

/** Crockford's base 32: no i, l, o or u, so that it can be read out over the radio. */
const alphabet = '0123456789abcdefghjkmnpqrstvwxyz';

/** 8 characters by chance: 40 bits, so that two laptops of one boat never take the same. */
export function newWriterId(): string {
  return Array.from(randomBytes(8), (byte) => alphabet[byte & 31]).join('');
}
