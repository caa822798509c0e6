import type { Leg, Passage } from '../boat/passage.ts';
import { legNm, type Position, rhumbLine } from './distance.ts';

/** Legs are cut into pieces no longer than this, so that the weather is taken where the boat then is (model 8). */
const MOST_PIECE_NM = 25;

/** A part of a leg short enough to have one weather. */
export interface Piece {
  /** Which leg, from 0. */
  readonly leg: number;
  /** The leg's own name for where it goes, for forecasts by place. */
  readonly place: string | null;
  readonly middle: Position;
  readonly courseDeg: number;
  /** From the start of the passage to the start of the piece. */
  readonly fromNm: number;
  readonly nm: number;
  readonly sectors: Leg['sectors'];
}

export function piecesOf(passage: Passage): readonly Piece[] {
  const pieces: Piece[] = [];
  let fromNm = 0;
  for (const [leg, { from, to, place, sectors, nm: given }] of passage.legs.entries()) {
    const whole = legNm({ from, to, place, sectors, nm: given });
    const { courseDeg } = rhumbLine(from, to);
    const count = Math.max(1, Math.ceil(whole / MOST_PIECE_NM));
    for (let i = 0; i < count; i += 1) {
      const middle = between(from, to, (i + 0.5) / count);
      const nm = whole / count;
      pieces.push({ leg, place: place ?? null, middle, courseDeg, fromNm, nm, sectors });
      fromNm += nm;
    }
  }
  return pieces;
}

/** How forecasts are asked for a piece: by its place, and where it lies. */
export function whereOf({ place, middle }: Piece): { readonly place?: string; readonly at: Position } {
  return { ...(place === null ? {} : { place }), at: middle };
}

/** Part of the way along a leg, straight on the chart; the short way round. */
function between(from: Position, to: Position, share: number): Position {
  const east = ((((to[1] - from[1]) % 360) + 540) % 360) - 180;
  const longitude = from[1] + share * east;
  return [from[0] + share * (to[0] - from[0]), ((((longitude + 180) % 360) + 360) % 360) - 180];
}
