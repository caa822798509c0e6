import type { Problem, ProblemKind } from '../forecast/forecast.ts';
import { cleanLine } from './clean.ts';
import { amountWords, capital, durationWords, momentWords } from './say.ts';

const MOST_LETTERS = 200;

interface Figures {
  /** The figure that is odd, and what it stands against; a dash where none was kept. */
  readonly value: (unit: string | null) => string;
  readonly than: (unit: string | null) => string;
  /** The figure as hours. */
  readonly lasted: string;
  readonly text: string;
}

const words: { readonly [kind in ProblemKind]: (figures: Figures) => string } = {
  'gust below wind': ({ value, than }) =>
    `gusts of ${value('kn')} are less than the wind of ${than('kn')}; one of them was misheard`,
  'range backwards': () => 'the range was given backwards; it is taken the other way round',
  'very strong wind': ({ value }) => `${value('kn')} is more wind than forecasts have; is it right?`,
  'very high seas': ({ value }) => `seas of ${value('m')} are higher than forecasts have; were they feet?`,
  'sudden change': ({ value, than }) =>
    `the wind goes from ${than('kn')} to ${value('kn')} at once; is it right?`,
  'perhaps feet': ({ value }) =>
    `seas of ${value('m')} do not go with the wind or the period beside them; were they feet? Type 6ft for feet, 2m for metres`,
  'no wind': ({ text }) => `the wind is not said${hours(text)}; that bars leaving then`,
  'no seas': ({ text }) => `the seas are not said${hours(text)}; that bars leaving then`,
  'no gusts': ({ text }) => `gusts are not said${hours(text)}; they are taken as 1.3 times the wind`,
  'no sea here': () =>
    'the table has no seas at this point, as where it is land; its seas are left out, not taken for calm',
  old: ({ lasted }) => `it was issued ${lasted} ago: never go by it, get a newer one`,
  'ahead of now': ({ lasted }) =>
    `it was issued ${lasted} from now by the clock here; is the clock right, and the issue time?`,
  'past its purge time': ({ text }) => `its own time to be thrown away, ${text}, has passed; get a newer one`,
  'cut short': ({ text }) => `it stops before its end${quote(text)}; what came whole is read`,
  garbled: ({ text }) => `letters or octets in it are damaged${quote(text)}; look at the figures twice`,
  'control codes': () => 'it held codes that move a cursor or turn the writing round; they were taken out',
  'unit taken': () => 'the wind has no unit beside it; knots were taken',
  'hours taken': () =>
    'when its periods begin and end is not said outright; the usual hours of such texts were taken',
  'from words': () => 'some figures were made of words, such as gale or moderate, by the usual scales',
  'seas put together': () => 'the whole sea is put together from wind waves and swell',
  'worst of a wide area': () => 'its figures are the worst of a wide area',
  'headline stops short': ({ value }) =>
    `no headline covers its wind of ${value('kn')}; the text counts, not only the headline`,
  'headline times not read': ({ text }) =>
    `when a headline holds was not understood${quote(text)}; it is taken to hold throughout`,
  'label not read': () => 'for when this period is was not understood; it is left out',
  'outside the area': () => 'it lies outside the area of the forecast',
  'members incomplete': ({ text }) =>
    `of the members of the ensemble ${text}; where one says nothing, that hour bars it`,
  'members left out': ({ text }) => `members of the ensemble were left out${quote(text)}`,
  'cannot be': ({ value }) => `a value that cannot be, ${value(null)}, was left out`,
  'apart from its neighbours': ({ value }) =>
    `a value stands ${value(null)} apart from those beside it; is it right?`,
};

/** What is odd about a forecast, as a sentence without its full stop: where, then what, then what to do about it. */
export function problemSentence({ kind, where, value, than, text }: Problem, zone: string): string {
  const figure = (amount: number | undefined) => (unit: string | null) =>
    amount === undefined ? '-' : amountWords(amount, unit);
  const said = words[kind]({
    value: figure(value),
    than: figure(than),
    lasted: durationWords(value ?? 0),
    text: whereWords(text ?? '', zone),
  });
  const place = whereWords(where, zone);
  return place === '' ? capital(said) : `${place}: ${said}`;
}

/** A step without a label is named by when it begins. */
function whereWords(where: string, zone: string): string {
  const at = /^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/.test(where) ? Date.parse(where) : Number.NaN;
  return Number.isNaN(at) ? cleanLine(where, MOST_LETTERS) : momentWords(at, zone, at);
}

function hours(text: string): string {
  return text === '' ? '' : ` for ${text}`;
}

function quote(text: string): string {
  return text === '' ? '' : ` ("${text}")`;
}
