/**
 * The order in which to try repairs, as indices: by chance over cost, which makes the expected cost least where exactly one thing is wrong and each repair puts its own right.
 * Ties keep their order. Source: Kadane and Simon (1977); Heckerman, Breese and Rommelse (1995).
 */
export function repairOrder(
  repairs: readonly { readonly chance: number; readonly cost: number }[],
): number[] {
  return repairs
    .map((_, i) => i)
    .sort((a, b) => repairs[b]!.chance / repairs[b]!.cost - repairs[a]!.chance / repairs[a]!.cost || a - b);
}
