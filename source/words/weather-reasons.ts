import type { Boat } from '../boat/boat.ts';
import type { Answer, Edge, Reason, StayingWhy } from '../readiness/answer.ts';
import { cleanLine } from './clean.ts';
import { amountWords, durationWords, hundred, momentHere } from './say.ts';

type WeatherReason = Extract<
  Reason,
  {
    reason:
      | 'no forecast'
      | 'forecast old'
      | 'forecast too old'
      | 'forecast over'
      | 'forecast elsewhere'
      | 'warning to mind'
      | 'period not said'
      | 'beyond forecast'
      | 'no weather limits'
      | 'no window'
      | 'waits for window'
      | 'weather now'
      | 'squalls now'
      | 'not as forecast'
      | 'pressure falls'
      | 'under the score'
      | 'go';
  }
>;

const MS_AN_HOUR = 3_600_000;
const MOST_PLACES = 3;
const MOST_LETTERS = 160;
const UNIT = { wind: 'kn', gust: 'kn', seas: 'm' } as const;
const NAME = { wind: 'wind', gust: 'gusts', seas: 'seas' } as const;

/** What the weather says to the verdict, without a full stop. Times are UTC and say so. */
export function weatherPhrase(reason: WeatherReason, boat: Boat, answer: Answer): string {
  switch (reason.reason) {
    case 'no forecast':
      return 'there is no forecast, so the weather is not judged and the answer is never go';
    case 'forecast old':
      return `the forecast is ${durationWords(reason.hours)} old; get a newer one`;
    case 'forecast too old':
      return `the forecast is ${durationWords(reason.hours)} old, too old for go; get a newer one`;
    case 'forecast over':
      return 'the forecast says nothing of this passage any more; get a newer one';
    case 'forecast elsewhere':
      return `the forecast speaks of ${placesWords(reason.places)}, and no leg of this passage is called that or lies near; give the legs their "place" in boat.json by the forecast's name, or get one for these waters`;
    case 'warning to mind':
      return `in force on the way, without barring leaving: ${cleanLine(reason.text, MOST_LETTERS)}`;
    case 'period not said':
      return 'the forecast leaves out the period of some seas on the way, so how short they are is not judged';
    case 'beyond forecast':
      return `the last ${durationWords(reason.hours)} of the passage lie beyond the forecast and are not judged; hear it again under way`;
    case 'no weather limits':
      return `no limit is set for ${reason.missing.join(' and ')}; give each a number, or false, under "limits" in boat.json: until then the answer is never go`;
    case 'no window':
      return 'no window in this forecast';
    case 'waits for window': {
      const { at, until, closes } = reason.window;
      const opens = `it opens in ${durationWords((at - answer.at) / MS_AN_HOUR)}, ${momentHere(at, answer.at)}, for ${durationWords((until - at) / MS_AN_HOUR)}`;
      return closes === null ? opens : `${opens}; closes: ${edgePhrase(closes, boat)}`;
    }
    case 'weather now':
      return `${NAME[reason.what]} of ${amountWords(reason.value, UNIT[reason.what])} ${agoWords(reason.at, answer)}, over your limit of ${amountWords(reason.limit, UNIT[reason.what])}; no leaving on this forecast, get a newer one`;
    case 'squalls now':
      return `a line of squalls ${agoWords(reason.at, answer)}; no leaving on this forecast, get a newer one`;
    case 'not as forecast':
      return `${NAME[reason.what]} of ${amountWords(reason.value, UNIT[reason.what])} ${agoWords(reason.at, answer)} where ${amountWords(reason.said, UNIT[reason.what])} was forecast; no leaving on this forecast, get a newer one`;
    case 'pressure falls':
      return `pressure is down ${amountWords(reason.hPa, 'hPa')} in 3 h or less; no leaving on this forecast, get a newer one`;
    case 'under the score': {
      const why = reason.edge === null ? '' : `: ${edgePhrase(reason.edge, boat)}`;
      return `${leavingWords(answer)} ends well in ${hundred(reason.score)} passages, where ${reason.threshold} are wanted${why}`;
    }
    case 'go':
      return `${leavingWords(answer)} ends well in ${hundred(reason.score)} passages, weather included`;
  }
}

/** Under way nobody leaves: she goes on. */
function leavingWords({ passage }: Answer): string {
  return passage?.toGo ? 'going on' : 'leaving now';
}

function placesWords(places: readonly string[]): string {
  const shown = places.slice(0, MOST_PLACES).map((place) => cleanLine(place));
  const more = places.length - shown.length;
  return `${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function agoWords(at: number, answer: Answer): string {
  const hours = (answer.at - at) / MS_AN_HOUR;
  return hours <= 0 ? 'now' : `${durationWords(hours)} ago`;
}

/** What stands in the way, as it is said: "gusts pass 28 kn off the head". */
export function edgePhrase(edge: Edge, boat: Boat): string {
  if ('item' in edge) {
    const named = [
      ...boat.fluids,
      ...boat.anodes,
      ...boat.spares,
      ...boat.services,
      ...boat.checks,
      ...boat.dated,
    ];
    return `${named.find(({ id }) => id === edge.item)?.name ?? edge.item} runs short`;
  }
  const where = edge.place === null ? '' : `, ${edge.place}`;
  return `${hindrancePhrase(edge)}${where}`;
}

/** What stands in the way, wherever it is: "gusts pass 28 kn". */
export function hindrancePhrase({
  hindrance,
  limit,
}: Pick<Extract<Edge, { hindrance: unknown }>, 'hindrance' | 'limit'>): string {
  const pass = (unit: string) => (limit === null ? 'its limit' : amountWords(limit, unit));
  switch (hindrance) {
    case 'none':
      return 'nothing';
    case 'wind':
      return `wind passes ${pass('kn')}`;
    case 'headwind':
      return `headwind passes ${pass('kn')}`;
    case 'sector':
      return 'wind or seas from a quarter this leg cannot take';
    case 'gust':
      return `gusts pass ${pass('kn')}`;
    case 'seas':
      return `seas pass ${pass('m')}`;
    case 'short seas':
      return 'seas too short for their height';
    case 'squalls':
      return 'a line of squalls';
    case 'warning':
      return 'a gale warning or worse is in force';
    case 'small craft':
      return 'a warning for small craft or of strong wind is in force';
    case 'not said':
      return 'the forecast leaves wind or seas out';
    case 'past forecast':
      return 'the passage runs past the end of the forecast';
    case 'daylight':
      return 'arrival in the dark';
    case 'gate':
      return 'the tidal gate is missed';
  }
}

const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];

/** Why an anchorage is no place to stay. */
export function stayingPhrase({ anchorage, what, dir }: StayingWhy): string {
  const from = Number.isNaN(dir) ? '' : ` from the ${COMPASS[Math.round(dir / 45) % 8]}`;
  return what === 'wind'
    ? `${anchorage} is no longer safe: the wind${from}`
    : `${anchorage} is no longer safe: the seas, wind${from}`;
}
