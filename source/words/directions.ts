import { bad, good, type Result } from '../trouble.ts';
import { numberFrom } from './numbers.ts';

const POINTS = 'n nne ne ene e ese se sse s ssw sw wsw w wnw nw nnw'.split(' ');

/**
 * A direction as typed, in degrees true: `225`, `sw`, `south-west`, `180°`. Letters with an o are asked about: in some languages it is east, in others west.
 */
export function directionFrom(typed: string, field: string): Result<number> {
  const text = typed.trim().toLowerCase();
  const letters = text
    .slice(0, 20)
    .replace(/north/g, 'n')
    .replace(/east/g, 'e')
    .replace(/south/g, 's')
    .replace(/west/g, 'w')
    .replace(/[\s-]/g, '');
  const point = POINTS.indexOf(letters);
  if (point >= 0) return good((point * 360) / POINTS.length);
  const trouble = { kind: 'not understood' as const, field, text: typed };
  if (/^[neswo]{1,3}$/.test(letters) && letters.includes('o')) {
    const both = [letters.replaceAll('o', 'e'), letters.replaceAll('o', 'w')].filter((one) =>
      POINTS.includes(one),
    );
    const expected = 'e for east and w for west: o is east in some languages and west in others';
    return bad({ ...trouble, expected, ...(both.length > 0 ? { example: both.join(' or ') } : {}) });
  }
  const read = numberFrom(typed);
  const isDegrees = read !== null && read !== 'ambiguous' && /^(|°|deg|degrees?|t|°t|true)$/.test(read.rest);
  if (isDegrees && read.value >= 0 && read.value <= 360) return good(read.value);
  return bad({
    ...trouble,
    expected: 'a direction in degrees true, 0 to 360, or compass letters',
    example: '225 or sw',
  });
}
