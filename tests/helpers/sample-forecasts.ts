import { createHash } from 'node:crypto';
import type { Forecast, Step } from '../../source/forecast/forecast.ts';

const MS_AN_HOUR = 3_600_000;

/** From where, how hard, gusts, seas; for so many hours. */
type Said = readonly [
  hours: number,
  dir: number,
  wind: readonly [number, number],
  gust: number,
  seas: number,
];

interface Heard {
  readonly issued: string;
  /** In the anchorage's own lee. */
  readonly bight: readonly Said[];
  readonly open: readonly Said[];
}

/** What the invented weather office of the Hindmost Isles gave out on the mornings the README names. */
const heard: readonly Heard[] = [
  {
    issued: '2026-06-02T00:00:00Z',
    bight: [[72, 245, [7, 11], 14, 0.5]],
    open: [
      [36, 245, [8, 12], 15, 0.7],
      [36, 230, [10, 14], 18, 1],
    ],
  },
  {
    issued: '2026-06-10T00:00:00Z',
    bight: [
      [12, 170, [12, 16], 21, 0.9],
      [12, 200, [14, 17], 23, 1],
      [30, 265, [16, 20], 28, 0.5],
      [66, 270, [8, 12], 16, 0.4],
    ],
    open: [
      [12, 170, [17, 21], 28, 1.7],
      [12, 200, [20, 24], 32, 2.1],
      [30, 265, [18, 23], 31, 2.2],
      [12, 275, [10, 13], 16, 0.8],
      [24, 260, [10, 12], 15, 0.7],
      [30, 220, [17, 22], 30, 1.8],
    ],
  },
  {
    issued: '2026-06-11T00:00:00Z',
    bight: [
      [12, 180, [17, 20], 27, 1.2],
      [12, 190, [23, 27], 37, 1.7],
      [24, 200, [24, 28], 38, 1.8],
      [48, 265, [12, 16], 22, 0.6],
    ],
    open: [
      [12, 180, [16, 19], 23, 1.3],
      [12, 190, [25, 29], 39, 2.7],
      [24, 200, [25, 30], 40, 3],
      [48, 265, [12, 16], 22, 1.6],
    ],
  },
  {
    issued: '2026-06-14T00:00:00Z',
    bight: [[84, 280, [7, 11], 15, 0.7]],
    open: [
      [60, 280, [8, 12], 16, 0.8],
      [24, 250, [14, 18], 24, 1.4],
    ],
  },
];

/** The forecasts in the sample boat's folder, oldest first. */
export function sampleForecasts(): readonly Forecast[] {
  return heard.map(({ issued, bight, open }) => {
    const places = [
      { place: 'Dovetail Bight', headlines: [], steps: stepsFrom(issued, bight) },
      { place: '', headlines: [], steps: stepsFrom(issued, open) },
    ];
    return {
      format: 1,
      source: 'bulletin',
      issuer: 'Hindmost Isles weather office',
      issuedAt: issued,
      receivedAt: new Date(Date.parse(issued) + 40 * 60_000).toISOString(),
      sha256: createHash('sha256').update(JSON.stringify(places)).digest('hex'),
      places,
      notRead: [],
      problems: [],
    };
  });
}

function stepsFrom(issued: string, all: readonly Said[]): Step[] {
  let from = Date.parse(issued);
  return all.map(([hours, dir, [low, high], gust, seas]) => {
    const to = from + hours * MS_AN_HOUR;
    const step: Step = {
      from: new Date(from).toISOString(),
      to: new Date(to).toISOString(),
      wind: [low, high],
      dir,
      gust,
      seas: [seas, seas],
      period: null,
      periodKind: null,
      pressure: null,
      squalls: 'none',
      how: 'read',
    };
    from = to;
    return step;
  });
}
