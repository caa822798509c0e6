import { enginesOf } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import type { Condition, EngineRecord } from './condition.ts';

type Spans = Condition['spans'];

/**
 * A fluid's weighted running hours since the log began, at an instant: hours under way + `atAnchor` x hours lying, over its engines
 * (model 2). Always 0 without an engine.
 */
export function weightedHours(
  fluid: Fluid,
  engines: ReadonlyMap<string, EngineRecord>,
  spans: Spans,
): (at: number) => number {
  const parts = [...new Set(enginesOf(fluid))].flatMap((id) => {
    const engine = engines.get(id);
    if (engine === undefined) return [];
    const hoursAt = (at: number) => engine.hoursAt(at);
    return [{ hoursAt, start: hoursAt(Number.NEGATIVE_INFINITY), underWay: runUnderWay(hoursAt, spans) }];
  });
  return (at) => {
    let hours = 0;
    for (const { hoursAt, start, underWay } of parts) {
      const moving = underWay(at);
      hours += moving + fluid.atAnchor * (hoursAt(at) - start - moving);
    }
    return hours;
  };
}

/** Hours run under way up to an instant. */
export function runUnderWay(hoursAt: (at: number) => number, spans: Spans): (at: number) => number {
  return alongSpans(spans, hoursAt);
}

/** Time spent under way up to an instant, ms. */
export function msUnderWay(spans: Spans): (at: number) => number {
  return alongSpans(spans, (at) => at);
}

/** How much `measure` grew inside the spans up to an instant. */
function alongSpans(spans: Spans, measure: (at: number) => number): (at: number) => number {
  const starts = spans.map(({ from }) => measure(from));
  const before = new Float64Array(spans.length + 1);
  spans.forEach(({ to }, i) => {
    before[i + 1] = before[i]! + (to === null ? 0 : measure(to) - starts[i]!);
  });
  return (at) => {
    const i = lastBegun(spans, at);
    if (i < 0) return 0;
    const { to } = spans[i]!;
    return before[i]! + measure(to === null ? at : Math.min(to, at)) - starts[i]!;
  };
}

function lastBegun(spans: Spans, at: number): number {
  let low = 0;
  let high = spans.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (spans[middle]!.from <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
