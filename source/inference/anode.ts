import type { Anode } from '../boat/anode.ts';
import type { Condition } from '../condition/condition.ts';
import type { Stream } from '../maths/stream.ts';
import { truncatedNormal } from '../maths/truncated-normal.ts';
import type { AnodeBelief } from './belief.ts';

const MS_A_DAY = 86_400_000;

export function believeAnode(anode: Anode, condition: Condition): AnodeBelief | null {
  const fitting = condition.anodes.get(anode.id)!.fittings.at(-1);
  const look = fitting?.looks.at(-1);
  const known =
    look ?? (fitting?.fittedAt == null ? null : { at: fitting.fittedAt, share: 1, sd: 0, flakes: false });
  if (known === null) return null;
  const usual = (1 - anode.limit) / anode.usualLifeDays;
  const wear = truncatedNormal({ mean: usual, sd: usual / 2, low: 0, high: Infinity });
  const days = (condition.at - known.at) / MS_A_DAY;
  const share = {
    mean: known.share - wear.mean * days,
    sd: Math.hypot(known.sd, days * Math.sqrt(wear.variance)),
  };
  const reaches = (rate: number) => condition.at + ((share.mean - anode.limit) / rate) * MS_A_DAY;
  return {
    share: { ...share, p10: share.mean - 1.28 * share.sd, p90: share.mean + 1.28 * share.sd },
    wear: { mean: wear.mean, sd: Math.sqrt(wear.variance), p10: wear.quantile(0.1), p90: wear.quantile(0.9) },
    flakes: known.flakes,
    reachesLimit: {
      p10: reaches(wear.quantile(0.9)),
      p50: reaches(wear.quantile(0.5)),
      p90: reaches(wear.quantile(0.1)),
    },
    wearsFast: null,
    noWearDays: null,
    wrongAlloy: false,
    currentA: null,
    draw(count: number, streamOf: (part: string) => Stream) {
      const rates = streamOf('wear');
      const errors = streamOf('share');
      const wears = Float64Array.from({ length: count }, () => wear.quantile(rates.uniform()));
      const shares = wears.map((rate) => known.share + known.sd * errors.normal() - rate * days);
      return { share: shares, wear: wears };
    },
  };
}
