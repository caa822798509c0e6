import type { Condition } from '../condition/condition.ts';
import type { ForecastMet, MetQuantity } from '../readiness/forecast-met.ts';
import type { Aboard } from '../readiness/forecasts-aboard.ts';
import type { WeatherNow } from '../readiness/weather-now.ts';
import { middle } from '../readiness/weather-table.ts';
import { instant, six, sixOrNull } from './figures.ts';

/** A forecast aboard beside the others: `from` and `until` bound the hours it speaks of, `ahead` is the hardest it has along the passage in the next `hours`, kn and m. */
export interface AboardDocument {
  name: string;
  source: string;
  issuer: string;
  /** Of an ensemble; 0 for any other. */
  members: number;
  places: string[];
  issuedAt: string;
  receivedAt: string;
  ageHours: number;
  from: string;
  until: string;
  counts: boolean;
  chosen: boolean;
  ahead: { hours: number; wind: number | null; gust: number | null; seas: number | null } | null;
}

export interface MetDocument {
  looks: number;
  wanted: number;
  /** Met less said: kn, degrees, for seas parts of the height said. `leadDays`: from and to, null has no end. */
  by: {
    what: MetQuantity;
    leadDays: [number, number | null];
    count: number;
    mean: number;
    sd: number | null;
  }[];
  /** What could stand as `forecastError` under `limits` in boat.json; null until enough looks stand behind it. */
  own: { [what: string]: { atIssue: number; perDay: number } } | null;
}

/** The last look at the weather, and what the forecast that counts says of that place and hour. */
export interface NowDocument {
  at: string;
  /** `tendency`: the change of pressure, hPa in 3 h. */
  met: Figures & { pressure: number | null; tendency: number | null; squalls: string | null };
  said: Figures | null;
}

interface Figures {
  wind: number | null;
  gust: number | null;
  dir: number | null;
  seas: number | null;
}

export interface DecisionDocument {
  at: string;
  choice: 'go' | 'stay';
  verdict: 'go' | 'hold' | 'not ready';
  score: number | null;
  text: string | null;
  /** It went the other way than the verdict. */
  against: boolean;
}

export function aboardDocument(one: Aboard): AboardDocument {
  return {
    name: one.name,
    source: one.source,
    issuer: one.issuer,
    members: one.members,
    places: [...one.places],
    issuedAt: instant(one.issuedAt),
    receivedAt: instant(one.receivedAt),
    ageHours: six(one.ageHours),
    from: instant(one.from),
    until: instant(one.until),
    counts: one.counts,
    chosen: one.chosen,
    ahead: one.ahead && {
      hours: one.ahead.hours,
      wind: sixOrNull(one.ahead.wind),
      gust: sixOrNull(one.ahead.gust),
      seas: sixOrNull(one.ahead.seas),
    },
  };
}

export function metDocument({ looks, wanted, by, own }: ForecastMet): MetDocument {
  return {
    looks,
    wanted,
    by: by.map(({ what, lead, count, mean, sd }) => ({
      what,
      leadDays: [lead[0], lead[1]],
      count,
      mean: six(mean),
      sd: sixOrNull(sd),
    })),
    own:
      own &&
      Object.fromEntries(
        Object.entries(own).map(([what, { atIssue, perDay }]) => [
          what,
          { atIssue: three(atIssue), perDay: three(perDay) },
        ]),
      ),
  };
}

export function nowDocument({ look, said, tendency }: WeatherNow): NowDocument {
  const { wind, gust, dir, seas, pressure, squalls } = look.entry;
  return {
    at: instant(look.at),
    met: {
      wind: sixOrNull(wind ?? null),
      gust: sixOrNull(gust ?? null),
      dir: sixOrNull(dir ?? null),
      seas: sixOrNull(seas ?? null),
      pressure: sixOrNull(pressure ?? null),
      tendency: sixOrNull(tendency),
      squalls: squalls ?? null,
    },
    said: said && {
      wind: said.wind && six(middle(said.wind)),
      gust: sixOrNull(said.gust),
      dir: sixOrNull(said.dir),
      seas: said.seas && six(middle(said.seas)),
    },
  };
}

export function decisionDocument({
  at,
  choice,
  verdict,
  score,
  text,
}: NonNullable<Condition['decision']>): DecisionDocument {
  const against = (choice === 'go') !== (verdict === 'go');
  return {
    at: instant(Date.parse(at)),
    choice,
    verdict,
    score: sixOrNull(score),
    text: text ?? null,
    against,
  };
}

/** Figures a person writes into boat.json: three digits are more than they are known to. */
function three(value: number): number {
  return Number(value.toPrecision(3));
}
