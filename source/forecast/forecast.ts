import { z } from 'zod';
import type { Known } from '../boat/fields.ts';
import { SQUALLS } from './squalls.ts';

/** A UTC instant, ISO 8601 ending in `Z`. */
const instant = z.iso.datetime({ precision: null });
const degrees = z.number().min(0).max(360);
const knots = z.number().min(0).max(300);
const metres = z.number().min(0).max(40);
const position = z.tuple([z.number().min(-90).max(90), z.number().min(-180).max(180)]);
/** Lowest and highest said; the same twice where one figure was said. "Up to 20" is 20 and 20: a bound, not a range from nothing. */
const range = (of: z.ZodNumber) => z.tuple([of, of]).refine(([low, high]) => low <= high);

const MOST_STEPS = 2000;
const MOST_PLACES = 400;
const MOST_REMARKS = 1000;
const MOST_MEMBERS = 200;
const text = z.string().max(2000);

/** One stretch of time at one place: from `from` up to, not including, `to`. Null is never 0: it was not said. */
const stepSchema = z
  .looseObject({
    from: instant,
    to: instant,
    /** The source's own name for it: TONIGHT, SAT NIGHT. */
    label: z.string().max(100).optional(),
    /** Mean wind, knots. */
    wind: range(knots).nullable(),
    /** Where the wind comes from, degrees true. */
    dir: degrees.nullable(),
    /** Further directions said for the same time, as where it shifts or is split by area; null among them is variable or cyclonic. */
    otherDirs: z.array(degrees.nullable()).max(20).optional(),
    gust: knots.nullable(),
    /** Significant height, metres. */
    seas: range(metres).nullable(),
    /** Seconds. */
    period: z.number().min(0).max(60).nullable(),
    periodKind: z.enum(['peak', 'mean', 'zero crossing', 'wind waves', 'swell']).nullable(),
    /** At sea level, hPa. */
    pressure: z.number().min(850).max(1100).nullable(),
    squalls: z.enum(SQUALLS).nullable(),
    how: z.enum(['read', 'typed', 'derived']),
  })
  .refine(({ from, to }) => Date.parse(from) < Date.parse(to));

/** A warning, watch or advisory in the issuer's words. Where its times were not understood it is in force throughout. */
const headlineSchema = z.looseObject({
  text,
  level: z.enum(['warning', 'watch', 'advisory', 'other']),
  /** What it is about; null where it is about something else than wind and sea, or was not recognised. */
  about: z
    .enum([
      'small craft',
      'strong wind',
      'gale',
      'storm',
      'hurricane force',
      'tropical storm',
      'hurricane',
      'squalls',
    ])
    .nullable(),
  from: instant.nullable(),
  to: instant.nullable(),
});

/** One value for each of the place's steps, null where the member does not say. */
const column = (of: z.ZodNumber) => z.array(of.nullable()).max(MOST_STEPS).optional();

/** What one member of an ensemble says, step by step. A column that is not there: it says nothing of its own of it, and the steps hold. */
const memberSchema = z.looseObject({
  /** 0 the control; below 0 perturbed the negative way. */
  member: z.number().int(),
  wind: column(knots),
  dir: column(degrees),
  gust: column(knots),
  seas: column(metres),
  period: column(z.number().min(0).max(60)),
});

const placeSchema = z
  .looseObject({
    /** The name legs give as their `place`: a zone's id, an area's name. Empty: wherever no other place is named. */
    place: z.string().max(200),
    at: position.optional(),
    /** How far the point of the grid its seas are taken from lies from `at`, where that is land. */
    nearestSeaNm: z.number().min(0).max(1000).optional(),
    headlines: z.array(headlineSchema).max(100),
    /** In order, none overlapping; gaps between them are times of which nothing was said. */
    steps: z.array(stepSchema).max(MOST_STEPS).refine(inOrder),
    /** Of an ensemble all its members, the same in the same order at every place. */
    members: z.array(memberSchema).max(MOST_MEMBERS).optional(),
  })
  .refine(({ steps, members }) => (members ?? []).every((member) => isAsLong(member, steps.length)));

/** What may be odd about a forecast that was understood. The sentences are in `words/forecast-problems.ts`. */
const problemKinds = [
  'gust below wind',
  'range backwards',
  'very strong wind',
  'very high seas',
  'sudden change',
  'perhaps feet',
  'no wind',
  'no seas',
  'no gusts',
  'no sea here',
  'old',
  'ahead of now',
  'past its purge time',
  'cut short',
  'garbled',
  'control codes',
  'unit taken',
  'hours taken',
  'from words',
  'seas put together',
  'members incomplete',
  'members left out',
  'worst of a wide area',
  'headline stops short',
  'headline times not read',
  'label not read',
  'outside the area',
  'cannot be',
  'apart from its neighbours',
] as const;

/** Something about what was understood that the skipper should see before it counts. `where`: a period, a row, a field. */
const problemSchema = z.looseObject({
  kind: z.enum(problemKinds),
  where: z.string().max(200),
  value: z.number().optional(),
  than: z.number().optional(),
  text: text.optional(),
});

/** The one shape every forecast becomes, whatever it came as: also the file kept in the boat folder. Null is never 0. */
export const forecastSchema = z.looseObject({
  format: z.literal(1),
  source: z.enum(['typed', 'bulletin', 'grib', 'json', 'csv']),
  issuer: z.string().max(200),
  issuedAt: instant,
  receivedAt: instant,
  /** Of what it was read from, bytes as they came, in hexadecimal. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  places: z.array(placeSchema).min(1).max(MOST_PLACES),
  /** What was in the source and was not understood, word for word. */
  notRead: z.array(z.looseObject({ where: z.string().max(200), text })).max(MOST_REMARKS),
  problems: z.array(problemSchema).max(MOST_REMARKS),
});

export type Forecast = Known<z.output<typeof forecastSchema>>;
export type PlaceForecast = Known<z.output<typeof placeSchema>>;
export type Step = Known<z.output<typeof stepSchema>>;
export type Member = Known<z.output<typeof memberSchema>>;
export type Headline = Known<z.output<typeof headlineSchema>>;
export type Problem = Known<z.output<typeof problemSchema>>;
export type Position = Known<z.output<typeof position>>;
export type ProblemKind = Problem['kind'];

/** The file's name in the boat's forecasts/ folder. */
export function forecastFileName(forecast: Pick<Forecast, 'issuedAt' | 'sha256'>): string {
  return `${forecastName(forecast)}.json`;
}

/** What a forecast is called: `20260203T0600Z-1a2b3c4d5e6f`, by issue time, then by what it was read from. */
export function forecastName({ issuedAt, sha256 }: Pick<Forecast, 'issuedAt' | 'sha256'>): string {
  const minute = `${issuedAt.slice(0, 16).replace(/[-:]/g, '')}Z`;
  return `${minute}-${sha256.slice(0, 12)}`;
}

function inOrder(steps: readonly { readonly from: string; readonly to: string }[]): boolean {
  return steps.every(({ from }, i) => i === 0 || Date.parse(steps[i - 1]!.to) <= Date.parse(from));
}

function isAsLong({ wind, dir, gust, seas, period }: z.output<typeof memberSchema>, steps: number): boolean {
  return [wind, dir, gust, seas, period].every((one) => one === undefined || one.length === steps);
}
