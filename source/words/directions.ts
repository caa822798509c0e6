import { pointFrom } from '../forecast/compass.ts';
import { bad, good, type Result } from '../trouble.ts';
import { numberFrom } from './numbers.ts';

/**
 * A direction as typed, in degrees true: `225`, `sw`, `south-west`, `180°`. Letters with an o are asked about: in some languages it is east, in others west.
 */
export function directionFrom(typed: string, field: string): Result<number> {
  const text = typed.trim();
  const point = pointFrom(text);
  if (typeof point === 'number') return good(point);
  const trouble = { kind: 'not understood' as const, field, text: typed };
  if (point !== null) {
    const expected = 'e for east and w for west: o is east in some languages and west in others';
    const example = point.choices.join(' or ');
    return bad({ ...trouble, expected, ...(example === '' ? {} : { example }) });
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
