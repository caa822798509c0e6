import { type Fluid, fluidSchema } from '../../source/boat/fluid.ts';
import type { Condition, EngineRecord, FluidEvent } from '../../source/condition/condition.ts';
import type { Stream } from '../../source/maths/stream.ts';

const DAY = 86_400_000;

/** A fluid of a litre between the marks, read to a twentieth of it, of one engine whose hours all weigh alike. */
export function aFluid(fields: Partial<Fluid> = {}): Fluid {
  return {
    ...(fluidSchema.parse({
      id: 'oil',
      name: 'Oil',
      engine: 'main',
      low: 1,
      full: 2,
      how: 'stopped-cold',
    }) as Fluid),
    ...fields,
  };
}

/** One life of a fluid, told a day at a time: each morning a reading, and a top-up to the full mark once it was read below a quarter. */
export class FluidLife {
  readonly events: FluidEvent[] = [];
  readonly metered: { readonly at: number; readonly hours: number }[] = [{ at: 0, hours: 0 }];
  at = 0;
  runHours = 0;
  levelL: number;
  run: number;
  rest: number;
  private readonly fluid: Fluid;
  private readonly chance: Stream;
  private count = 0;

  constructor(fluid: Fluid, chance: Stream, { run, rest }: { run: number; rest: number }) {
    this.fluid = fluid;
    this.chance = chance;
    this.run = run;
    this.rest = rest;
    this.levelL = fluid.full;
  }

  /** A day with so many running hours, of which each loses more or less than usual. */
  live(hours: number, days = 1): void {
    this.at += days * DAY;
    this.runHours += hours;
    this.metered.push({ at: this.at, hours: this.runHours });
    const lost = this.run * hours + this.rest * days;
    this.levelL -= Math.max(
      0,
      lost * (1 + (this.fluid.vary * this.chance.normal()) / Math.sqrt(Math.max(1, days))),
    );
  }

  /** A reading, off the stick where the stick ends. */
  read(): void {
    const { low, full } = this.fluid;
    const error = this.fluid.readingError ?? (full - low) / 20;
    const seen = this.levelL + error * this.chance.normal();
    const off = seen < low ? 'below' : 'on';
    this.tell({
      kind: 'reading',
      levelL: Math.max(low, seen),
      off,
      how: this.fluid.how ?? null,
      rough: false,
      after: null,
    });
  }

  /** Filled until the stick reads full; how much went in is known. */
  topUp(): void {
    const { low, full, how } = this.fluid;
    const error = this.fluid.readingError ?? (full - low) / 20;
    const level = full + error * this.chance.normal();
    const amountL = level - this.levelL;
    if (amountL <= 0) return;
    this.levelL = level;
    this.tell({ kind: 'topup', amountL });
    this.tell({ kind: 'reading', levelL: full, off: 'on', how: how ?? null, rough: false, after: 'topup' });
  }

  work(text = 'a job'): void {
    this.tell({ kind: 'job', text });
  }

  needsTopUp(): boolean {
    const last = this.events.findLast((event) => event.kind === 'reading');
    const { low, full } = this.fluid;
    return last?.kind === 'reading' && last.levelL < low + (full - low) / 4;
  }

  tell(event: DistributedOmit<FluidEvent, 'entry' | 'at' | 'runHours'>): void {
    this.count += 1;
    this.events.push({
      entry: `e${this.count}`,
      at: this.at,
      runHours: this.runHours,
      ...event,
    } as FluidEvent);
  }
}

type DistributedOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

/** Running hours of a day: none on half of them, else up to `most`. */
export function hoursOfADay(chance: Stream, most: number): number {
  return chance.uniform() < 0.5 ? 0 : most * chance.uniform();
}

/** The condition that life leads to, as far as believing a fluid asks for it. */
export function conditionOf(fluid: Fluid, life: FluidLife): Condition {
  const hours = life.metered;
  const first = hours[0]!;
  const last = hours.at(-1)!;
  const engine: EngineRecord = {
    readings: hours.map(({ at, hours: reading }) => ({ at, reading, hours: reading })),
    hours: last.hours,
    readAt: last.at,
    hoursAt(at) {
      if (at <= first.at) return first.hours;
      const after = hours.findIndex((one) => one.at > at);
      if (after < 0) return last.hours;
      const [a, b] = [hours[after - 1]!, hours[after]!];
      return a.hours + ((b.hours - a.hours) * (at - a.at)) / (b.at - a.at);
    },
    lately: { hours: 7, days: 7 },
  };
  const lookedAt = life.events.findLast(({ kind }) => kind === 'reading')?.at ?? null;
  const record = { events: life.events, lookedAt, runHours: life.runHours };
  // Of all a condition tells only this much is asked for.
  return {
    at: life.at,
    spans: [],
    engines: new Map([['main', engine]]),
    fluids: new Map([[fluid.id, record]]),
  } as unknown as Condition;
}
