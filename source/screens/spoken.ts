import { type Line, textOf } from './lines.ts';
import type { Model } from './model.ts';
import { screenLines } from './screen.ts';

export function spokenLines(model: Model): Line[] {
  return screenLines(model).filter((line) => textOf(line).trim() !== '');
}
