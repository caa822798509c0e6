import type { Tone } from './lines.ts';

export type PaletteName = 'day' | 'night' | 'plain';

/** How a tone looks. Colours are `#rrggbb`; absent means the terminal's own. */
export interface Look {
  readonly color?: string;
  readonly bold?: boolean;
  readonly inverse?: boolean;
}

export interface Palette {
  /** Painted under the whole page; null leaves the terminal's own. */
  readonly ground: string | null;
  readonly looks: Readonly<Record<Tone, Look>>;
}

/** In the dark only red spares the eyes. Pure red is 5.25:1 on black (WCAG 2.2, relative luminance); darker reds fall below 4.5:1. */
const RED = '#ff0000';
const BLACK = '#000000';

/** Each is at least 4.5:1 on black and on white alike (WCAG 2.2), because the terminal's own ground is not known. */
const AMBER = '#a06c00';
const SIGNAL = '#eb0000';
const SKY = '#1a78cd';

/** Tones that look as the text around them share its look, and are drawn in one piece with it. */
const OWN: Look = {};
const STRONG: Look = { bold: true };
const LARGE: Look = { bold: true, inverse: true };
const IN_RED: Look = { color: RED };
const STRONG_RED: Look = { color: RED, bold: true };

export const palettes: Readonly<Record<PaletteName, Palette>> = {
  day: {
    ground: null,
    looks: {
      plain: OWN,
      chart: OWN,
      fit: OWN,
      title: STRONG,
      chosen: STRONG,
      verdict: LARGE,
      danger: { color: SIGNAL, bold: true },
      watch: { color: AMBER },
      unfit: { color: SIGNAL, bold: true },
      unseen: { color: SKY },
    },
  },
  night: {
    ground: BLACK,
    looks: {
      plain: IN_RED,
      chart: IN_RED,
      fit: IN_RED,
      title: STRONG_RED,
      chosen: STRONG_RED,
      verdict: { color: RED, bold: true, inverse: true },
      danger: STRONG_RED,
      watch: IN_RED,
      unfit: STRONG_RED,
      unseen: IN_RED,
    },
  },
  plain: {
    ground: null,
    looks: {
      plain: OWN,
      chart: OWN,
      fit: OWN,
      title: STRONG,
      chosen: STRONG,
      verdict: LARGE,
      danger: STRONG,
      watch: OWN,
      unfit: STRONG,
      unseen: OWN,
    },
  },
};

/** The palette after this one, in the order they are offered. */
export function nextPalette(name: PaletteName): PaletteName {
  const order: readonly PaletteName[] = ['day', 'night', 'plain'];
  return order[(order.indexOf(name) + 1) % order.length]!;
}
