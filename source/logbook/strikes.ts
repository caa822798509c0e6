import { assert } from '../trouble.ts';
import { byCause, type Sound } from './cause.ts';
import type { Copies } from './keys.ts';

interface Known {
  /** Every line of the log, copies by `key` among them. */
  readonly all: readonly Sound[];
  readonly copies: Copies;
}

/**
 * The entries withdrawn by strikes, among them struck strikes (whose entries stand again). The latest strike is decided first, since only a later
 * strike can withdraw it. Striking one of several entries with the same `key` withdraws what they all say.
 */
export function withdrawnIn(entries: readonly Sound[], { all, copies }: Known): ReadonlySet<Sound> {
  const strikes = entries.filter((entry) => entry.kind === 'strike').sort((a, b) => byCause(b, a));
  const withdrawn = new Set<Sound>();
  if (strikes.length === 0) return withdrawn;
  const targets = targetsOf(strikes, all);
  for (const strike of strikes) {
    if (withdrawn.has(strike)) continue;
    const meant = meantBy(strike, targets, all);
    const target = (meant && copies.get(meant)) ?? meant;
    if (!target) continue;
    if (target.kind === 'strike' && byCause(target, strike) >= 0) continue;
    withdrawn.add(target);
  }
  return withdrawn;
}

type Strike = Extract<Sound, { kind: 'strike' }>;

type Targets = ReadonlyMap<string, readonly Sound[]>;

/** The lines whose ids are named by a strike, by id without checksum. */
function targetsOf(strikes: readonly Strike[], all: readonly Sound[]): Targets {
  const targets = new Map<string, Sound[]>(strikes.map(({ entry }) => [bareId(entry), []]));
  for (const line of all) targets.get(bareId(line.id))?.push(line);
  return targets;
}

function meantBy(strike: Strike, targets: Targets, all: readonly Sound[]): Sound | null {
  const named = strike.entry;
  const bare = bareId(named);
  const same = targets.get(bare);
  assert(same, 'what is named by any strike was looked for');
  if (named !== bare) return same.find(({ crc }) => named === `${bare}:${crc}`) ?? null;
  return same.length > 1 ? inItsOwnPast(strike, same, all) : (same[0] ?? null);
}

/** Which of several lines with one id a strike by the same writer means: the one its own chain goes back to. Another writer's strike must say which. */
function inItsOwnPast(strike: Sound, same: readonly Sound[], all: readonly Sound[]): Sound | null {
  const { writer, n } = same[0] as Sound;
  if (strike.writer !== writer) return null;
  const own = Map.groupBy(
    all.filter((line) => line.writer === writer),
    (line) => line.n,
  );
  let step: Sound | undefined = strike;
  while (step && step.n > n) {
    const { p, n: from }: Sound = step;
    step = own.get(from - 1)?.find(({ crc }) => crc === p);
  }
  return step && same.includes(step) ? step : null;
}

function bareId(id: string): string {
  const colon = id.indexOf(':');
  return colon < 0 ? id : id.slice(0, colon);
}
