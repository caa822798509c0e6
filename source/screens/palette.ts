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

export const palettes: Readonly<Record<PaletteName, Palette>> = {
  day: {
    ground: null,
    looks: {
      plain: {},
      title: { bold: true },
      chosen: { bold: true },
      verdict: { bold: true, inverse: true },
      danger: { color: SIGNAL, bold: true },
      chart: {},
      fit: {},
      watch: { color: AMBER },
      unfit: { color: SIGNAL, bold: true },
      unseen: { color: SKY },
    },
  },
  night: {
    ground: BLACK,
    looks: {
      plain: { color: RED },
      title: { color: RED, bold: true },
      chosen: { color: RED, bold: true },
      verdict: { color: RED, bold: true, inverse: true },
      danger: { color: RED, bold: true },
      chart: { color: RED },
      fit: { color: RED },
      watch: { color: RED },
      unfit: { color: RED, bold: true },
      unseen: { color: RED },
    },
  },
  plain: {
    ground: null,
    looks: {
      plain: {},
      title: { bold: true },
      chosen: { bold: true },
      verdict: { bold: true, inverse: true },
      danger: { bold: true },
      chart: {},
      fit: {},
      watch: {},
      unfit: { bold: true },
      unseen: {},
    },
  },
};

/** The palette after this one, in the order they are offered. */
export function nextPalette(name: PaletteName): PaletteName {
  const order: readonly PaletteName[] = ['day', 'night', 'plain'];
  return order[(order.indexOf(name) + 1) % order.length]!;
}
