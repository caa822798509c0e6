import { z } from 'zod';
import { amount, group, type Known, note, oneOf, part } from './fields.ts';

const growth = (figure: z.ZodNumber, unit: string) =>
  group(
    {
      atIssue: figure.describe(`The error when the forecast is issued: one standard deviation, ${unit}.`),
      perDay: figure.describe(`What each day ahead adds to it, ${unit}.`),
    },
    'an error with atIssue and perDay',
  );

const forecastError = group(
  {
    wind: growth(amount('knots', 0, 100), 'in knots')
      .optional()
      .describe('Error of the wind, in knots.'),
    direction: growth(amount('degrees', 0, 180), 'in degrees')
      .optional()
      .describe('Error of the direction, in degrees.'),
    seas: growth(part('the whole forecast height', 0, 5), 'as a part of the forecast height')
      .optional()
      .describe('Error of the seas, as a part of the forecast height. No unit.'),
  },
  'errors of the forecast',
);

const off = z.literal(false);

const weatherLimit = (unit: string, most: number) =>
  z.union([amount(unit, 0, most), off], {
    error: `a number of ${unit}, 0 to ${most}, or false where it is not to be judged`,
  });

const daylight = z.union(
  [
    group(
      {
        afterSunrise: amount('hours', 0, 12)
          .optional()
          .describe('Arrive at least so many hours after sunrise.'),
        beforeSunset: amount('hours', 0, 12)
          .optional()
          .describe('Arrive at least so many hours before sunset.'),
      },
      'the margins in hours',
    ),
    off,
  ],
  { error: '{"afterSunrise": hours, "beforeSunset": hours}, each 0 to 12, or false' },
);

const BOAT_THRESHOLD = 95;
const GO_THRESHOLD = 85;
const OVER_HOURS = 3;

const boat = amount('passages in 100', 0, 100).describe(
  'The boat is ready when at least so many passages in 100 end with nothing vital past its limit.',
);
const go = amount('passages in 100', 0, 100).describe(
  'The verdict is go when at least so many passages in 100 end well, weather included.',
);
const overHours = amount('hours', 0, 1000).describe(
  'How long wind or headwind may be over its limit, by up to 5 knots, in hours.',
);
const smallCraft = oneOf(['watch', 'stop']).describe(
  'What a warning for small craft, or of strong wind below a gale, means: watch it, or stop.',
);

const weatherKeys = {
  wind: weatherLimit('knots', 200)
    .optional()
    .describe('The most wind, in knots; false: not to be judged. Absent: not judged yet, and never go.'),
  gust: amount('knots', 0, 250).optional().describe('The hardest gust, in knots.'),
  seas: weatherLimit('metres', 30)
    .optional()
    .describe(
      'The highest significant seas, in metres; false: not to be judged. Absent: not judged yet, and never go.',
    ),
  headwind: amount('knots', 0, 200)
    .optional()
    .describe('The most wind within 60 degrees of the bow, in knots.'),
  periodPerMetre: amount('seconds', 0, 60)
    .optional()
    .describe('The least wave period for each metre of seas above 1 m, in seconds.'),
  daylight: daylight
    .optional()
    .describe('Arrival between sunrise and sunset with margins in hours; false: any hour.'),
  forecastMustCover: amount('hours', 0, 1000)
    .optional()
    .describe(
      'How much of the passage the forecast must cover, in hours. The whole of it, at most 72, where absent.',
    ),
  forecastError: forecastError.optional().describe('How far forecasts stray. Common practice where absent.'),
};

/** The skipper's limits. `alone` holds what differs with one aboard. */
export const limitsSchema = group(
  {
    boat: boat.default(BOAT_THRESHOLD),
    go: go.default(GO_THRESHOLD),
    ...weatherKeys,
    overHours: overHours.default(OVER_HOURS),
    smallCraft: smallCraft.default('watch'),
    note,
    alone: group(
      {
        boat: boat.optional(),
        go: go.optional(),
        ...weatherKeys,
        overHours: overHours.optional(),
        smallCraft: smallCraft.optional(),
      },
      'the limits that differ when alone',
    )
      .optional()
      .describe('The same limits with one person aboard: those given here take the place of the others.'),
  },
  'the limits',
);

export type Limits = Known<z.output<typeof limitsSchema>>;
