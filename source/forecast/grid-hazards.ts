import type { Headline, Step } from './forecast.ts';
import type { Held } from './grid-layers.ts';

/** Thunderstorms of a weather layer; null where it names none. */
export function squallsOf(
  weather: readonly {
    readonly coverage?: string | null | undefined;
    readonly weather?: string | null | undefined;
  }[],
): Step['squalls'] {
  const storms = weather.filter((one) => one.weather === 'thunderstorms' || one.weather === 'squalls');
  if (storms.length === 0) return null;
  const few = ['isolated', 'slight_chance', 'chance', 'patchy'];
  return storms.every(({ coverage }) => few.includes(coverage ?? '')) ? 'isolated' : 'scattered';
}

/** Codes of marine hazards in valid-time event codes (NWS Instruction 10-1703, from memory). */
const HAZARDS: { readonly [code: string]: readonly [about: Headline['about'], words: string] } = {
  SC: ['small craft', 'Small craft'],
  BW: ['strong wind', 'Brisk wind'],
  GL: ['gale', 'Gale'],
  SR: ['storm', 'Storm'],
  HF: ['hurricane force', 'Hurricane force wind'],
  TR: ['tropical storm', 'Tropical storm'],
  HU: ['hurricane', 'Hurricane'],
  MA: ['squalls', 'Marine'],
};
const LEVELS: { readonly [code: string]: Headline['level'] } = { W: 'warning', A: 'watch', Y: 'advisory' };

/** The hazards of a layer of them as headlines. */
export function headlinesOf({
  from,
  to,
  value,
}: Held<readonly { readonly phenomenon: string; readonly significance: string }[] | null>) {
  return (value ?? []).map(({ phenomenon, significance }): Headline => {
    const [about, words] = Object.hasOwn(HAZARDS, phenomenon)
      ? HAZARDS[phenomenon]!
      : [null, `Hazard ${phenomenon.slice(0, 20)}`];
    const level = Object.hasOwn(LEVELS, significance) ? LEVELS[significance]! : 'other';
    const times = { from: new Date(from).toISOString(), to: new Date(to).toISOString() };
    return { text: `${words} ${level}`, level, about, ...times };
  });
}
