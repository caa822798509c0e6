import type { Holds } from '../../boat/part-fields.ts';

/** Fields of the owner's own in an entry of a list stay with it. */
export function withOwn(value: unknown, stood: unknown, { is }: Pick<Holds, 'is'>): unknown {
  if (
    !Array.isArray(value) ||
    !Array.isArray(stood) ||
    !(is === 'parts' || is === 'sectors' || is === 'leg sectors')
  )
    return value;
  const known = is === 'parts' ? ['spare', 'count'] : ['from', 'to', 'wind', 'seas'];
  const keys = known.slice(0, is === 'parts' ? 1 : 2);
  return value.map((one: Readonly<Record<string, unknown>>) => {
    const before = stood.find((old) => keys.every((key) => old[key] === one[key]));
    const own = Object.entries(before ?? {}).filter(([key]) => !known.includes(key));
    return { ...one, ...Object.fromEntries(own) };
  });
}
