import type { BoatFile } from './boat.ts';

/** What she goes by: each has its own template. */
export const templates = {
  single: 'one diesel with gearbox',
  twin: 'two diesels with gearboxes',
  outboard: 'an outboard, four-stroke, petrol',
  sail: 'sail only, no engine',
} as const;

export type Template = keyof typeof templates;

/** What a new boat is asked; everything else takes its default. Litres, degrees, knots, metres. */
export interface TemplateAnswers {
  /** `single` where absent. */
  readonly template?: Template;
  readonly name: string;
  readonly crew: number;
  readonly engineName: string;
  /** Hours a day she runs it at anchor. */
  readonly usualHoursPerDay?: number;
  /** The two marks on the stick of the engine oil. */
  readonly oil: { readonly low: number; readonly full: number };
  readonly fuelTankL: number;
  readonly waterTankL: number;
  readonly houseBank?: 'lead' | 'lithium';
  /** Where tropical storms come: the outlook is looked at before leaving, and pencil anodes wear faster. */
  readonly tropics?: boolean;
  readonly passage?: {
    readonly name: string;
    readonly legs: readonly { readonly from: Position; readonly to: Position; readonly nm?: number }[];
    /** Made good, in knots. */
    readonly speed?: { readonly mean: number; readonly sd: number };
  };
  /** In the place of the defaults, one by one. */
  readonly limits?: Partial<NonNullable<BoatFile['limits']>>;
}

type Position = readonly [latitude: number, longitude: number];

/** Where figures without a better source come from; a note says so beside each. */
export const COMMON_PRACTICE = 'Figures: common practice, no source; yours to change.';

/** Speed made good, in knots. Common practice, no source; that of 11 m under a diesel, the others by analogy. */
export const usualSpeed: { readonly [T in Template]: { readonly mean: number; readonly sd: number } } = {
  single: { mean: 5.2, sd: 0.7 },
  twin: { mean: 5.2, sd: 0.7 },
  outboard: { mean: 4.5, sd: 0.8 },
  sail: { mean: 4.2, sd: 1.2 },
};
