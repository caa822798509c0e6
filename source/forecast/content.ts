import type { Forecast } from './forecast.ts';

/** What a reader makes of a source: a forecast but for what only its taker knows, when it was received and its hash. */
export type Content = Pick<Forecast, 'source' | 'issuer' | 'issuedAt' | 'places' | 'notRead' | 'problems'>;

/** Waters a text is for, to choose from. */
export interface Zone {
  readonly id: string;
  /** In words; may be empty. */
  readonly name: string;
}

/** What must be asked before a forecast counts: never assumed. */
export type Ask =
  | { readonly what: 'issued' }
  | { readonly what: 'zone'; readonly zones: readonly Zone[] }
  | {
      readonly what: 'direction';
      readonly row: number;
      readonly text: string;
      readonly choices: readonly string[];
    };

/** A content, or what must be asked to come to one. */
export type Reading = { readonly content: Content } | { readonly asks: readonly Ask[] };

/** What a figure of wind, and one of seas, is in where it is typed without a unit. */
export interface BareUnits {
  readonly wind: 'kn' | 'm/s';
  readonly seas: 'm' | 'ft';
}

/** What the taker knows beside the source. */
export interface Given {
  /** The clock, ms since 1970 UTC. */
  readonly now: number;
  /** The person's zone, an IANA name. */
  readonly timeZone: string;
  /** When it was issued, ms since 1970 UTC, where the source does not say. */
  readonly issuedAt?: number | undefined;
  /** The waters chosen, of a text for several. */
  readonly zones?: readonly string[] | undefined;
  /** What legs call the place, where the source has no name for it. */
  readonly place?: string | undefined;
  readonly bare: BareUnits;
}
