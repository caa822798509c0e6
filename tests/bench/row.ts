/** One line of the table: what was measured, beside its floor measured in the same run. */
export interface Row {
  readonly what: string;
  readonly unit: 'ms' | 'MB' | 'kB' | 'bytes' | 'a second' | '';
  readonly ours: number;
  /** What nothing can be faster or smaller than, or what it is compared with; null where the goal is a figure of its own. */
  readonly floor: { readonly what: string; readonly value: number } | null;
  /** Of the ratio to the floor, or, without one, of the figure itself. Null: shown, with no goal of its own. */
  readonly goal: { readonly atMost: number } | { readonly atLeast: number } | null;
  readonly note?: string;
}

export interface Skipped {
  readonly what: string;
  readonly skipped: string;
}

/** The row in words: what, ours, its floor, the ratio, the goal, met or not. */
export function sayRow(row: Row | Skipped): string {
  if ('skipped' in row) return `${row.what.padEnd(58)}skipped: ${row.skipped}`;
  const { what, unit, ours, floor, goal, note } = row;
  const ratio = floor === null ? null : ours / floor.value;
  const beside = floor === null ? '' : `${floor.what} ${figure(floor.value)} ${unit}`;
  const times = ratio === null ? '' : `${ratio.toFixed(2)} x`;
  return [
    what.padEnd(58),
    `${figure(ours)} ${unit}`.padEnd(16),
    beside.padEnd(34),
    times.padEnd(9),
    goal === null ? '' : sayGoal(goal, ratio === null ? unit : 'x').padEnd(20),
    goal === null ? '' : isMet(ratio ?? ours, goal) ? 'met' : 'NOT MET',
    note === undefined ? '' : `  (${note})`,
  ]
    .join('')
    .trimEnd();
}

function sayGoal(goal: NonNullable<Row['goal']>, unit: string): string {
  return 'atMost' in goal ? `at most ${goal.atMost} ${unit}` : `at least ${goal.atLeast} ${unit}`;
}

function isMet(value: number, goal: NonNullable<Row['goal']>): boolean {
  return 'atMost' in goal ? value <= goal.atMost : value >= goal.atLeast;
}

function figure(value: number): string {
  return value < 10 ? value.toFixed(2) : value < 100 ? value.toFixed(1) : value.toFixed(0);
}

/** Each of these measured `runs` times, one after the other in turn, so that what else the machine does hits all alike; the median of each. */
export async function medians<K extends string>(
  runs: number,
  measures: { readonly [name in K]: () => number | Promise<number> },
): Promise<{ readonly [name in K]: number }> {
  const names = Object.keys(measures) as K[];
  const values = Object.fromEntries(names.map((name) => [name, [] as number[]])) as { [name in K]: number[] };
  for (let run = 0; run < runs; run += 1) for (const name of names) values[name].push(await measures[name]());
  return Object.fromEntries(names.map((name) => [name, share(values[name], 0.5)])) as {
    [name in K]: number;
  };
}

/** The value below which that share of the values lies. */
export function share(values: readonly number[], part: number): number {
  return values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))]!;
}

/** How long some work takes, ms. */
export async function timeOf(work: () => unknown): Promise<number> {
  const began = performance.now();
  await work();
  return performance.now() - began;
}
