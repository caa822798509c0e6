import type { BoatFile } from './boat.ts';

/** What a new boat is asked; everything else takes its default. Litres, degrees, knots, metres. */
export interface TemplateAnswers {
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
  };
  /** In the place of the defaults, one by one. */
  readonly limits?: Partial<NonNullable<BoatFile['limits']>>;
}

type Position = readonly [latitude: number, longitude: number];

/** Where figures without a better source come from; a note says so beside each. */
export const COMMON_PRACTICE = 'Figures: common practice, no source; yours to change.';
