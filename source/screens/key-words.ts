import type { Model } from './model.ts';

const ARROWS: Readonly<Record<string, string>> = { '↑': 'Up', '↓': 'Down', '←': 'Left', '→': 'Right' };

/** How the table writes a key, its arrows in words where they cannot be drawn: as `v` and `<` they would be read as other keys. */
export function keyWords(shown: string, { arrows }: Pick<Model, 'arrows'>): string {
  if (arrows) return shown;
  return shown.replace(/(?<=[↑↓←→])(?=[↑↓←→])/gu, '/').replace(/[↑↓←→]/gu, (arrow) => ARROWS[arrow]!);
}
