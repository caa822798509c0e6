/**
 * The standard normal deviate below which a share `p` of the values lies, for p in (0, 1); -Infinity at 0, Infinity at 1.
 * Relative error about 1e-15. For an upper tail t pass t and turn the sign: `1 - t` would lose the tail.
 *
 * Method and coefficients: M. J. Wichura, "Algorithm AS 241: the percentage points of the normal distribution",
 * Applied Statistics 37 (1988), 477-484, routine PPND16.
 */
export function normalQuantile(p: number): number {
  const fromHalf = p - 0.5;
  if (Math.abs(fromHalf) <= 0.425) return fromHalf * ratioAt(0.180625 - fromHalf * fromHalf, centre);
  const tail = fromHalf < 0 ? p : 1 - p;
  if (tail <= 0) return tail < 0 ? Number.NaN : fromHalf * Number.POSITIVE_INFINITY;
  const depth = Math.sqrt(-Math.log(tail));
  const size = depth <= 5 ? ratioAt(depth - 1.6, inTail) : ratioAt(depth - 5, farOut);
  return fromHalf < 0 ? -size : size;
}

/** Two polynomials of degree 7, coefficients from the constant up. */
interface Ratio {
  readonly above: Float64Array;
  readonly below: Float64Array;
}

function ratioAt(x: number, { above, below }: Ratio): number {
  let top = 0;
  let bottom = 0;
  for (let power = 7; power >= 0; power -= 1) {
    top = top * x + above[power]!;
    bottom = bottom * x + below[power]!;
  }
  return top / bottom;
}

const centre: Ratio = {
  above: Float64Array.of(
    3.3871328727963665,
    133.14166789178438,
    1971.5909503065513,
    13731.69376550946,
    45921.95393154987,
    67265.7709270087,
    33430.57558358813,
    2509.0809287301227,
  ),
  below: Float64Array.of(
    1,
    42.31333070160091,
    687.1870074920579,
    5394.196021424751,
    21213.794301586597,
    39307.89580009271,
    28729.085735721943,
    5226.495278852854,
  ),
};

const inTail: Ratio = {
  above: Float64Array.of(
    1.4234371107496835,
    4.630337846156546,
    5.769497221460691,
    3.6478483247632045,
    1.2704582524523684,
    0.2417807251774506,
    0.022723844989269184,
    0.0007745450142783414,
  ),
  below: Float64Array.of(
    1,
    2.053191626637759,
    1.6763848301838038,
    0.6897673349851,
    0.14810397642748008,
    0.015198666563616457,
    0.0005475938084995345,
    1.0507500716444169e-9,
  ),
};

const farOut: Ratio = {
  above: Float64Array.of(
    6.657904643501103,
    5.463784911164114,
    1.7848265399172913,
    0.29656057182850487,
    0.026532189526576124,
    0.0012426609473880784,
    0.000027115555687434876,
    2.0103343992922881e-7,
  ),
  below: Float64Array.of(
    1,
    0.599832206555888,
    0.1369298809227358,
    0.014875361290850615,
    0.0007868691311456133,
    0.000018463183175100548,
    1.421511758316446e-7,
    2.0442631033899397e-15,
  ),
};
