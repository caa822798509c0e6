/** Chooses among things by their weights, given a uniform: the index of the first by which that share of all weight is reached. */
export function chooserOf(weights: readonly number[]): (uniform: number) => number {
  const reached = new Float64Array(weights.length);
  let total = 0;
  weights.forEach((weight, i) => {
    total += weight;
    reached[i] = total;
  });
  return (uniform) => {
    const wanted = uniform * total;
    let low = 0;
    let high = reached.length - 1;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (reached[middle]! < wanted) low = middle + 1;
      else high = middle;
    }
    return low;
  };
}
