import type { VerdictDocument } from '../words/document.ts';
import { legsMet, standingPhrase } from '../words/legs-met.ts';
import { durationWords, hundred, sentence } from '../words/say.ts';
import type { WeatherDocument } from '../words/weather-document.ts';
import {
  againstLimit,
  limitLines,
  limitSentence,
  QUANTITY_NAMES,
  type Quantity,
} from './charts/against-limit.ts';
import { curveLines, curveSentence, skySentence } from './charts/curve.ts';
import { legLines } from './leg-table.ts';
import { apart, BLANK, beside, type Line, line, paragraph, say } from './lines.ts';
import type { Page, Size } from './model.ts';
import { forecastSpans } from './panels/heading.ts';
import { countdown } from './panels/leaving.ts';
import { stayingWords } from './panels/verdict.ts';
import type { Sight } from './sight.ts';
import { soonWords } from './when.ts';

const HOUR_MS = 3_600_000;
const QUANTITIES: readonly Quantity[] = ['wind', 'gust', 'seas'];
const GAP = 2;
/** From here on the three charts of a forecast stand beside one another. */
const WIDE = 110;

export type WeatherPage = Extract<Page, { page: 'weather' }>;

export function weatherTitle(sight: Sight, columns: number): Line {
  const passage = sight.document?.passage;
  const left = [say('  WEATHER', 'title'), ...(passage ? [say(`  for ${passage.name}`)] : [])];
  return apart(left, [...forecastSpans(sight), say('  ')], columns);
}

/** The weather in full: the hour of leaving pointed at, what stands in its way, the curve, a table by leg, the forecast against the limits. */
export function weatherLines(sight: Sight, page: WeatherPage, { columns, rows }: Size): Line[] {
  const { document, model } = sight;
  if (!document) return [line(say('  The passages are being sailed.'))];
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const hour = Math.min(page.hour, document.curve.length - 1);
  const pointed = sight.at + hour * HOUR_MS;
  const curve = curveLines(
    document,
    model.zone,
    columns - 4,
    Math.max(3, Math.min(10, Math.floor(rows / 5))),
    pointed,
  );
  return [
    ...stayingWords(sight).flatMap((text) => paragraph(text, columns - 2, { indent: 2, tone: 'danger' })),
    ...hourLines(sight, document, hour, columns),
    ...(curve ?? []).map((text) => line(say(`  ${text}`, 'chart'))),
    ...told(curveSentence(document, model.zone)),
    ...told(countdown(sight)),
    ...told(skySentence(document, model.zone)),
    ...(document.weather ? forecastPart(sight, document.weather, { columns, rows, hour }) : []),
  ];
}

/** Leaving at the hour pointed at: how it ends, and what breaks first. */
function hourLines(sight: Sight, document: VerdictDocument, hour: number, columns: number): Line[] {
  const { at, model } = sight;
  const point = document.curve[hour];
  if (!point) return [];
  const when =
    hour === 0 ? 'now' : `${soonWords(Date.parse(point.at), at, model.zone)}, in ${durationWords(hour)}`;
  const scores =
    point.score === null || point.weather === null
      ? `boat ${hundred(point.boat)}, the weather not judged`
      : `${hundred(point.score)} (boat ${hundred(point.boat)}, weather ${hundred(point.weather)})`;
  return [
    ...paragraph(`LEAVING ${when}: ${scores}`, columns - 2, { indent: 2, tone: 'title' }),
    ...paragraph(breaksFirst(document, hour), columns - 2, { indent: 2 }),
  ];
}

function breaksFirst({ weather, forecast }: VerdictDocument, hour: number): string {
  if (!weather)
    return forecast
      ? 'The forecast says nothing of this passage.'
      : 'There is no forecast; hoveshort forecast takes one in.';
  const standing = weather.departures[hour] ?? [];
  const [first] = [...standing].sort((one, other) => other.share - one.share);
  if (!first) return 'Nothing in this forecast stands in the way.';
  const place = weather.legs[first.leg]?.place ?? `leg ${first.leg + 1}`;
  return sentence(
    `Breaks first: ${standingPhrase(weather, first.what)}, ${place}, in ${shareWords(first.share)} passages`,
  );
}

function shareWords(share: number): string {
  return `${Math.max(1, Math.round(share * 100))} of 100`;
}

function forecastPart(
  sight: Sight,
  weather: WeatherDocument,
  { columns, rows, hour }: { columns: number; rows: number; hour: number },
): Line[] {
  const { zone } = sight.model;
  const pointed = sight.at + hour * HOUR_MS;
  const titled = (title: string) => [BLANK, ...paragraph(title, columns - 2, { indent: 2, tone: 'title' })];
  const charts = weather.forecasts.flatMap((forecast, index) => {
    const legs = weather.legs.filter((leg) => leg.forecast === index);
    const places = legs.map(({ place }, leg) => place ?? `leg ${leg + 1}`).join(', ');
    return [
      ...titled(`FORECAST AGAINST THE LIMITS, ${places}`),
      ...chartLines(weather, index, { zone, columns, rows, pointed }),
      ...(forecast.derivedGust
        ? paragraph('Some gusts are not the forecast’s own: 1.3 times its wind.', columns - 2, { indent: 2 })
        : []),
    ];
  });
  const when = hour === 0 ? 'now' : soonWords(pointed, sight.at, zone);
  return [
    ...titled(`BY LEG, leaving ${when}`),
    ...legLines(legsMet(weather, hour), weather.limits, { at: sight.at, zone, columns }),
    ...charts,
    BLANK,
    ...paragraph(
      'Wind and seas: two in three lie between the dots above and below; a gust strays further. Leg by leg: the hardest of its hours at the usual speed.',
      columns - 2,
      { indent: 2 },
    ),
  ];
}

/** The three charts of one forecast, each with its sentence: beside one another where there is room. */
function chartLines(
  weather: WeatherDocument,
  forecast: number,
  { zone, columns, rows, pointed }: { zone: string; columns: number; rows: number; pointed: number },
): Line[] {
  const abreast = columns >= WIDE;
  const width = abreast ? Math.floor((columns - 2 - GAP * 2) / 3) : columns - 4;
  const high = Math.max(3, Math.min(8, Math.floor(rows / 6)));
  const blocks = QUANTITIES.map((quantity) => {
    const chart = againstLimit(weather, forecast, quantity);
    const drawn = limitLines(chart, { zone, columns: width - 2, rows: high, pointed }) ?? [];
    return {
      picture: [
        line(say(`  ${QUANTITY_NAMES[quantity]}`, 'chart')),
        ...drawn.map((text) => line(say(`  ${text}`, 'chart'))),
      ],
      sentence: paragraph(limitSentence(chart, zone), columns - 2, { indent: 2 }),
    };
  });
  if (!abreast) return blocks.flatMap(({ picture, sentence: said }) => [...picture, ...said]);
  const pictures = beside(
    blocks.map(({ picture }) => picture),
    [width, width, width],
    GAP,
  );
  return [...pictures, ...blocks.flatMap(({ sentence: said }) => said)];
}
