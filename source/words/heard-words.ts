import { pointLetters } from '../forecast/compass.ts';
import type { RowFigures } from '../forecast/typed-row.ts';
import { shownUnit } from './preferred.ts';
import { amountWords, figureWords } from './say.ts';

/** A row of a forecast as it was understood: `SE, 15 to 20 kn, gusts 28 kn, seas 1.2 to 1.8 m, period 7 s`; what was not said is said to be so where it bars leaving. */
export function heardWords(figures: RowFigures): string {
  const { wind, dir, otherDirs = [], gust, seas, period, pressure, squalls } = figures;
  const dirs = [dir, ...otherDirs].flatMap((one) => (one === null ? [] : [pointLetters(one)]));
  return [
    ...(dirs.length > 0 ? [dirs.join(' and ')] : []),
    wind === null ? 'no wind said' : spanWords(wind, 'kn'),
    ...(gust === null ? [] : [`gusts ${amountWords(gust, 'kn')}`]),
    seas === null ? 'no seas said' : `seas ${spanWords(seas, 'm')}`,
    ...(period === null ? [] : [`period ${amountWords(period, 's')}`]),
    ...(pressure === null ? [] : [amountWords(pressure, 'hPa')]),
    ...(squalls === null ? [] : [`squalls: ${squalls}`]),
  ].join(', ');
}

/** `15 to 20 kn`; a dash where nothing was said, never 0. */
export function spanWords(range: readonly [number, number] | null, unit: string): string {
  if (range === null) return '-';
  const { each } = shownUnit(unit, range[1]);
  const [low, high] = range.map((end) => (Math.round((end / each) * 10) / 10) * each) as [number, number];
  return low === high
    ? amountWords(low, unit)
    : `${figureWords(low, unit, high)} to ${amountWords(high, unit)}`;
}
