import { describe, expect, it } from 'vitest';
import { noiseTable } from '../../source/maths/noise.ts';
import { normalCdf } from '../../source/maths/normal.ts';
import { stream } from '../../source/maths/stream.ts';

describe('coarse normal noise', () => {
  it('has each of its 65,536 values at the middle of an equal share of the normal, rising', () => {
    const values = noiseTable();
    let [furthest, least] = [0, Number.POSITIVE_INFINITY];
    for (let i = 0; i < values.length; i += 1) {
      furthest = Math.max(furthest, Math.abs(normalCdf(values[i]!) - (i + 0.5) / values.length));
      if (i > 0) least = Math.min(least, values[i]! - values[i - 1]!);
    }
    expect(values).toHaveLength(65_536);
    expect(furthest).toBeLessThan(1e-7);
    expect(least).toBeGreaterThan(0);
  });

  it('has the chances of the normal within sampling, in either half of a word, and halves that do not go together', () => {
    const count = 400_000;
    const noise = new Float32Array(count);
    stream(5, 'noise').fillNoise(noise);
    for (const half of [0, 1])
      for (const z of [-3, -1.5, 0, 0.7, 2.2]) {
        const share = noise.filter((value, i) => i % 2 === half && value <= z).length / (count / 2);
        const expected = normalCdf(z);
        expect(Math.abs(share - expected)).toBeLessThan(
          4.5 * Math.sqrt((expected * (1 - expected)) / (count / 2)),
        );
      }
    let together = 0;
    for (let i = 0; i < count; i += 2) together += noise[i]! * noise[i + 1]!;
    expect(Math.abs(together / (count / 2))).toBeLessThan(4.5 / Math.sqrt(count / 2));
  });

  it('begins the same however much is drawn', () => {
    const [few, many] = [new Float32Array(64), new Float32Array(4096)];
    stream(5, 'noise').fillNoise(few);
    stream(5, 'noise').fillNoise(many);
    expect(many.slice(0, 64)).toEqual(few);
  });
});
