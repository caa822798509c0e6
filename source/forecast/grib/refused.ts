/** Why a field is not read, or read but of no use here. `name` is what it is, in words: "Lambert conformal", "a swell partition". */
export interface Why {
  readonly kind:
    | 'damaged'
    | 'too many'
    | 'grid'
    | 'packing'
    | 'bitmap'
    | 'time'
    | 'product'
    | 'parameter'
    | 'level';
  readonly name: string;
}

/** Thrown within this folder alone, where a field cannot be read; caught once a message and once a field, never seen outside. */
export class Refused extends Error {
  readonly why: Why;

  constructor(why: Why) {
    super(why.name);
    this.why = why;
  }
}
