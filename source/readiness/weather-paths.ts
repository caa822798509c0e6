import type { Stream } from '../maths/stream.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';

/** The time over which forecast errors forget themselves: they fall to 1/e of their correlation, h (model 8). Common practice, from memory. */
const E_FOLDING_HOURS = 18;
/** How far the error of the seas goes with that of the wind (model 8). */
const SEAS_WITH_WIND = 0.7;

/** Standard normal error paths, one a simulated passage: `[hour * count + i]`. */
export interface WeatherPaths {
  readonly count: number;
  readonly hours: number;
  readonly wind: Float32Array;
  readonly seas: Float32Array;
  readonly direction: Float32Array;
}

/** Draws the errors of wind, seas and direction: each a first-order autoregressive path in time, that of the seas correlated with the wind's. Every hour has streams of its own, so more hours change none. */
export function drawPaths(count: number, hours: number, streamOf: (name: string) => Stream): WeatherPaths {
  return inOneGo(drawingPaths(count, hours, streamOf));
}

/** The same in turns, an hour at a time. */
export function* drawingPaths(
  count: number,
  hours: number,
  streamOf: (name: string) => Stream,
): Turns<WeatherPaths> {
  const wind = yield* pathsOf('wind', count, hours, streamOf);
  const seas = yield* pathsOf('seas', count, hours, streamOf);
  const own = Math.sqrt(1 - SEAS_WITH_WIND ** 2);
  for (let k = 0; k < seas.length; k += 1) seas[k] = SEAS_WITH_WIND * wind[k]! + own * seas[k]!;
  return { count, hours, wind, seas, direction: yield* pathsOf('direction', count, hours, streamOf) };
}

function* pathsOf(
  name: string,
  count: number,
  hours: number,
  streamOf: (name: string) => Stream,
): Turns<Float32Array> {
  const kept = Math.exp(-1 / E_FOLDING_HOURS);
  const fresh = Math.sqrt(1 - kept ** 2);
  const path = new Float32Array(hours * count);
  for (let hour = 0; hour < hours; hour += 1) {
    yield;
    const now = path.subarray(hour * count, (hour + 1) * count);
    streamOf(`weather/${name}/${hour}`).fillNoise(now);
    if (hour === 0) continue;
    const before = path.subarray((hour - 1) * count, hour * count);
    for (let i = 0; i < count; i += 1) now[i] = kept * before[i]! + fresh * now[i]!;
  }
  return path;
}
