import { describe, expect, it } from 'vitest';
import { readGrib } from '../../../source/forecast/grib/read.ts';
import { stream } from '../../../source/maths/stream.ts';
import { gribFile, valuesOf } from '../../helpers/grib-files.ts';
import { goThrough, mutatedGrib } from '../../helpers/mutated-grib.ts';

/** The whole of it, 100,000 files, is tests/soak/grib-fuzz.ts. */
const FILES = 3000;

describe('broken GRIB files', () => {
  it('never throw, whatever is broken in them, and never take a second of work', async () => {
    let slowestMs = 0;
    for (let n = 0; n < FILES; n += 1) {
      const octets = mutatedGrib(1, n);
      const before = process.cpuUsage();
      await goThrough(octets);
      const { user, system } = process.cpuUsage(before);
      slowestMs = Math.max(slowestMs, (user + system) / 1000);
    }
    expect(slowestMs).toBeLessThan(1000);
  });

  it('keep every message beside a damaged one, values and all', async () => {
    const whole = gribFile('forecast');
    const fields = readGrib(whole).messages;
    const chance = stream(1, 'damage one message');
    const length = whole.length / fields.length;
    for (let n = 0; n < 30; n += 1) {
      const octets = whole.slice();
      const start = starts(whole)[n]!;
      for (let i = 0; i < 6; i += 1) octets[start + 4 + Math.floor(chance.uniform() * (length / 2))] = 0xff;
      const others = readGrib(octets).messages.filter(({ message }) => message !== n + 1);
      expect(others.map(({ parameter, from }) => [parameter.code, from])).toEqual(
        fields.filter((_, i) => i !== n).map(({ parameter, from }) => [parameter.code, from]),
      );
      expect(await valuesOf(others[5]!)).toEqual(await valuesOf(fields[n <= 5 ? 6 : 5]!));
    }
  });
});

/** Where each message begins. */
function starts(octets: Uint8Array): readonly number[] {
  return [...octets.keys()].filter((at) => String.fromCharCode(...octets.subarray(at, at + 4)) === 'GRIB');
}
