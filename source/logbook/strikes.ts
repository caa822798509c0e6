import { byCause, type Sound } from './cause.ts';

/** Entries left out because an earlier one has the same `key`, each with that one. */
export type Copies = ReadonlyMap<Sound, Sound>;

interface Known {
  readonly byId: ReadonlyMap<string, readonly Sound[]>;
  readonly copies: Copies;
}

/**
 * The entries withdrawn by strikes, among them struck strikes (whose entries stand again). The latest strike is decided first, since only a later
 * strike can withdraw it. Striking one of several entries with the same `key` withdraws what they all say.
 */
export function withdrawnIn(entries: readonly Sound[], known: Known): ReadonlySet<Sound> {
  const strikes = entries.filter(({ entry }) => entry.kind === 'strike').sort((a, b) => byCause(b, a));
  const withdrawn = new Set<Sound>();
  for (const strike of strikes) {
    if (withdrawn.has(strike)) continue;
    const target = targetOf(strike, known);
    if (!target) continue;
    if (target.entry.kind === 'strike' && byCause(target, strike) >= 0) continue;
    withdrawn.add(target);
  }
  return withdrawn;
}

function targetOf(strike: Sound, { byId, copies }: Known): Sound | null {
  if (strike.entry.kind !== 'strike') return null;
  const [id = '', crc] = strike.entry.entry.split(':');
  const same = byId.get(id) ?? [];
  let target = same.length > 1 ? null : (same[0] ?? null);
  if (crc !== undefined) target = same.find(({ frame }) => frame.crc === Number.parseInt(crc, 16)) ?? null;
  else if (same.length > 1) target = inItsOwnPast(strike, same, byId);
  return (target && copies.get(target)) ?? target;
}

/** Which of several lines with one id a strike by the same writer means: the one its own chain goes back to. */
function inItsOwnPast(strike: Sound, same: readonly Sound[], byId: Known['byId']): Sound | null {
  const { writer, n } = (same[0] as Sound).frame;
  if (strike.frame.writer !== writer) return null;
  let step: Sound | undefined = strike;
  while (step && step.frame.n > n) {
    const { p, n: from }: Sound['frame'] = step.frame;
    step = byId.get(`${writer}-${from - 1}`)?.find(({ frame }) => frame.crc === p);
  }
  return step && same.includes(step) ? step : null;
}
