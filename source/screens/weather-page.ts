import type { VerdictDocument } from '../words/document.ts';
import { aboardSentence, decisionSentence, metSentences, nowSentence } from '../words/forecasts-lines.ts';
import { legsMet, standingPhrase } from '../words/legs-met.ts';
import { nothingLookedAt } from '../words/not-looked-at.ts';
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
import { apart, BLANK, beside, type Line, line, lineWidth, paragraph, say } from './lines.ts';
import type { Size, WeatherPage } from './model.ts';
import { forecastSpans } from './panels/heading.ts';
import { countdown } from './panels/leaving.ts';
import { stayingWords } from './panels/verdict.ts';
import type { Sight } from './sight.ts';
import {
  differences,
  isTrial,
  TRIAL_FIELDS,
  type TrialField,
  type TrialGround,
  triedWords,
} from './trial.ts';
import { soonWords } from './when.ts';

const HOUR_MS = 3_600_000;
const QUANTITIES: readonly Quantity[] = ['wind', 'gust', 'seas'];
const GAP = 2;
/** From here on the three charts of a forecast stand beside one another. */
const WIDE = 110;
/** Below this the whole score must do. */
const NARROW = 60;

export function weatherTitle(sight: Sight, page: WeatherPage, columns: number): Line {
  const passage = (page.tried ?? sight.document)?.passage;
  const left = [
    say('  WEATHER', 'title'),
    ...(isTrial(page.trial) ? [say('  '), say(' A TRIAL ', 'verdict')] : []),
    ...(passage ? [say(`  for ${passage.name}`)] : []),
  ];
  return apart(left, [...forecastSpans(sight), say('  ')], columns);
}

/** The weather in full: the hour of leaving pointed at, what stands in its way, the curve, a table by leg, the forecast against the limits. */
export function weatherLines(sight: Sight, page: WeatherPage, { columns, rows }: Size): Line[] {
  const { model } = sight;
  const own = sight.document;
  if (!own) return [line(say('  The passages are being sailed.'))];
  const document = page.tried ?? own;
  const shown: Sight = { ...sight, document };
  const ground = { loaded: sight.boat.loaded, document: own };
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const hour = Math.max(0, Math.min(page.hour, document.curve.length - 1));
  const high = Math.max(3, Math.min(10, Math.floor(rows / 5)));
  const curve = curveLines(document, model.zone, columns - 4, high, {
    pointed: sight.at + hour * HOUR_MS,
    ...(page.tried ? { dotted: own } : {}),
  });
  return [
    ...stayingWords(sight).flatMap((text) => paragraph(text, columns - 2, { indent: 2, tone: 'danger' })),
    ...trialLines(page, ground, columns),
    ...hourLines(shown, document, { hour, columns, own: page.tried ? own : null }),
    ...(curve ?? []).map((text) => line(say(`  ${text}`, 'chart'))),
    ...(own.forecast ? [fieldsLine(page, ground, columns)] : []),
    ...told(curveSentence(document, model.zone)),
    ...told(countdown(shown)),
    ...told(skySentence(document, model.zone)),
    ...told(nowSentence(own, model.zone) ?? ''),
    ...told(decisionSentence(own, model.zone) ?? ''),
    ...(document.weather ? forecastPart(shown, document.weather, { columns, rows, hour }) : []),
    ...sideBySide(sight, own, columns),
  ];
}

/** The forecasts aboard, and how far off they have been: in full on a page of their own. */
function sideBySide({ at, model }: Sight, { forecasts, met }: VerdictDocument, columns: number): Line[] {
  if (forecasts.length === 0) return [];
  const titled = (title: string) => [BLANK, line(say(`  ${title}`, 'title'))];
  const told = (text: string) => paragraph(text, columns - 2, { indent: 2 });
  const counting = forecasts.find(({ counts }) => counts);
  const others = forecasts.filter(({ counts, until }) => !counts && Date.parse(until) > at);
  return [
    ...titled('FORECASTS ABOARD'),
    ...[...(counting ? [counting] : []), ...others].flatMap((one) =>
      told(aboardSentence(one, at, model.zone)),
    ),
    ...titled('HOW FAR OFF THEY HAVE BEEN'),
    ...metSentences(met).flatMap(told),
  ];
}

/** Says plainly that it is a trial, and what differs from the boat file. */
function trialLines({ trial, trying, tried }: WeatherPage, ground: TrialGround, columns: number): Line[] {
  if (!isTrial(trial)) return [];
  const answer = trying ? '; being worked out' : tried ? '; dots: by the boat file' : '';
  const text = `A TRIAL: ${differences(trial, ground)}${answer}. 0 goes back.`;
  return paragraph(text, columns - 2, { indent: 2, tone: 'watch' });
}

/** What can be tried, the one chosen marked; where there is no room for all, that one alone. */
function fieldsLine({ trial, field }: WeatherPage, ground: TrialGround, columns: number): Line {
  const words = (one: TrialField) =>
    say(
      `${one === field ? '> ' : '  '}${triedWords(trial, one, ground)}`,
      one === field ? 'chosen' : 'plain',
    );
  const all = line(say('  TRY', 'title'), ...TRIAL_FIELDS.flatMap((one) => [say(' '), words(one)]));
  const heard = `Try: ${triedWords(trial, field, ground)}; plus and minus change it, Tab goes to the next.`;
  const shown =
    lineWidth(all) <= columns ? all : line(say('  TRY ', 'title'), words(field), say('  Tab: others'));
  return { ...shown, heard };
}

/** Leaving at the hour pointed at: how it ends, by the boat file as well where something is tried, and what breaks first. */
function hourLines(
  { at, model }: Sight,
  document: VerdictDocument,
  { hour, columns, own }: { hour: number; columns: number; own: VerdictDocument | null },
): Line[] {
  const point = document.curve[hour];
  if (!point) return [];
  const when =
    hour === 0 ? 'now' : `${soonWords(Date.parse(point.at), at, model.zone)}, in ${durationWords(hour)}`;
  const before = own?.curve[hour]?.score ?? null;
  const what = document.passage?.toGo ? 'GOING ON' : `LEAVING ${when}`;
  const text = `${what}: ${scoreWords(document, point, columns)}${before === null ? '' : `; by the boat file ${hundred(before)}`}`;
  return [
    ...paragraph(text, columns - 2, { indent: 2, tone: 'title' }),
    ...paragraph(breaksFirst(document, hour), columns - 2, { indent: 2 }),
  ];
}

function scoreWords(
  document: VerdictDocument,
  { score, boat, weather }: VerdictDocument['curve'][number],
  columns: number,
): string {
  if (nothingLookedAt(document))
    return weather === null
      ? 'boat not looked at yet, the weather not judged'
      : `weather ${hundred(weather)} (boat not looked at yet)`;
  if (score === null || weather === null) return `boat ${hundred(boat)}, the weather not judged`;
  if (columns < NARROW) return hundred(score);
  return `${hundred(score)} (boat ${hundred(boat)}, weather ${hundred(weather)})`;
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
    ...titled(sight.document?.passage?.toGo ? 'BY LEG' : `BY LEG, leaving ${when}`),
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
