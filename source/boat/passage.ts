import { z } from 'zod';
import {
  amount,
  group,
  id,
  type Known,
  list,
  MOST_ENTRIES,
  meanAndSd,
  note,
  part,
  position,
  sector,
  words,
  yesNo,
} from './fields.ts';

const legSchema = group(
  {
    from: position.describe('Where the leg begins: latitude and longitude in decimal degrees.'),
    to: position.describe('Where it ends: latitude and longitude in decimal degrees.'),
    nm: amount('nautical miles', 0, 10000)
      .optional()
      .describe('Its length as sailed, in nautical miles. The rhumb line where absent.'),
    place: words(200)
      .optional()
      .describe('What it is called: the name that forecasts and reasons use for it.'),
    sectors: list(sector, 'sectors').describe('Limits by wind direction on this leg.'),
  },
  'a leg with from and to',
);

const share = group(
  {
    mean: part('the whole passage', 0, 1).describe('The usual share of the passage, 0 to 1.'),
    sd: part('the whole passage', 0, 1).describe('How far it strays: one standard deviation, 0 to 1.'),
  },
  'a share with mean and sd',
);

export const passageSchema = group(
  {
    id: id('a passage').describe('Its id: small letters, digits and hyphens; unique in the boat.'),
    name: words(200).describe('Its name.'),
    legs: z
      .array(legSchema, { error: 'a list of legs, each with from and to' })
      .min(1, { error: 'at least one leg with from and to' })
      .max(MOST_ENTRIES, { error: `at most ${MOST_ENTRIES} legs` })
      .describe('The legs in the order sailed; each begins where the one before ended.'),
    speed: group(
      {
        mean: amount('knots', 0.1, 60).describe('Usual speed made good, in knots.'),
        sd: meanAndSd('knots', 30).sd,
      },
      'a speed with mean and sd in knots',
    ).describe('Speed made good, in knots.'),
    motoring: z
      .record(z.string(), share, { error: 'for each engine its share, {"mean", "sd"}' })
      .describe('For each engine, the share of the passage it runs where no forecast says, 0 to 1.'),
    motorBelow: amount('knots', 0, 100).default(8).describe('Below this wind she motors, in knots.'),
    motorToWindward: yesNo()
      .default(false)
      .describe('Whether she motors with the wind within 45 degrees of the bow.'),
    reserveDays: amount('days', 0, 365).describe(
      'How long after arrival until things can be put right, in days.',
    ),
    waitHours: amount('hours', 0, 1000)
      .default(0)
      .describe('How long she may wait for a tidal gate, in hours.'),
    note,
    shelter: yesNo().default(false).describe('Whether this is a passage to safety from where she lies.'),
  },
  'a passage',
);

export type Passage = Known<z.output<typeof passageSchema>>;
export type Leg = Passage['legs'][number];
