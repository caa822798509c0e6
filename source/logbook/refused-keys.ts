const refused = new Set(['__proto__', 'constructor', 'prototype']);

/** The first key, at any depth, that could reach an object's machinery instead of its data; null when there is none. */
export function refusedKeyIn(value: unknown, deepest = 20): string | null {
  if (typeof value !== 'object' || value === null) return null;
  if (deepest === 0) return '(nested too deep)';
  for (const key in value) {
    if (refused.has(key)) return key;
    const inside = (value as Record<string, unknown>)[key];
    if (typeof inside !== 'object') continue;
    const found = refusedKeyIn(inside, deepest - 1);
    if (found !== null) return found;
  }
  return null;
}
