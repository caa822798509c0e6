import { z } from 'zod';
import { anchorageSchema } from './anchorage.ts';
import { type Anode, anodeSchema } from './anode.ts';
import { type Check, checkSchema } from './check.ts';
import { type Dated, datedSchema } from './dated.ts';
import { engineSchema } from './engine.ts';
import { type consequence, group, id, type Known, list, whole, words } from './fields.ts';
import { type Fluid, fluidSchema } from './fluid.ts';
import { limitsSchema } from './limits.ts';
import { passageSchema } from './passage.ts';
import { type Service, serviceSchema } from './service.ts';
import { type Spare, spareSchema } from './spare.ts';

/** The newest `format` of boat.json this program knows. */
export const BOAT_FORMAT = 1;

/** The whole of boat.json, defaults filled in. Units: litres, hours, days, nautical miles, knots, metres, degrees true. Unknown fields are kept. */
export const boatSchema = group(
  {
    $schema: words(2000).optional().describe('The JSON Schema an editor completes this file from.'),
    format: z.literal(BOAT_FORMAT, { error: 'the number 1' }).describe('The format of this file: 1.'),
    name: words(200).describe('The name of the boat.'),
    crew: whole('people', 1, 100)
      .default(2)
      .describe('How many people are aboard. With 1 the limits for alone hold.'),
    engines: list(engineSchema, 'engines').describe('Engines with an hour meter.'),
    fluids: list(fluidSchema, 'fluids').describe('Oil, coolant, fuel, water.'),
    anodes: list(anodeSchema, 'anodes').describe('Sacrificial anodes.'),
    spares: list(spareSchema, 'spares').describe('What is kept aboard.'),
    services: list(serviceSchema, 'services').describe('Work that comes due by hours or months.'),
    checks: list(checkSchema, 'checks').describe('Looks with an answer.'),
    dated: list(datedSchema, 'dated things').describe('Things that expire: flares, extinguishers, papers.'),
    limits: limitsSchema.prefault({}).describe('What the skipper will go out in.'),
    anchorages: list(anchorageSchema, 'anchorages').describe('Where she may lie.'),
    passages: list(passageSchema, 'passages').describe('Trips planned or kept ready.'),
    passage: id('a passage').optional().describe('The passage planned unless the log says otherwise.'),
    anchorage: id('an anchorage').optional().describe('Where she lies unless the log says otherwise.'),
  },
  'a boat',
);

export type Boat = Known<z.output<typeof boatSchema>>;
/** The same as it is written: what has a default may be absent. */
export type BoatFile = z.input<typeof boatSchema>;
export type Consequence = z.output<typeof consequence>;

/** One thing the boat depends on, with its kind. */
export type Item =
  | (Fluid & { readonly kind: 'fluid' })
  | (Anode & { readonly kind: 'anode' })
  | (Spare & { readonly kind: 'spare' })
  | (Service & { readonly kind: 'service' })
  | (Check & { readonly kind: 'check' })
  | (Dated & { readonly kind: 'dated' });

/** Every item in walking order: the order of the boat file, kind by kind. */
export function itemsOf(boat: Boat): readonly Item[] {
  return [
    ...boat.fluids.map((fluid) => ({ ...fluid, kind: 'fluid' as const })),
    ...boat.anodes.map((anode) => ({ ...anode, kind: 'anode' as const })),
    ...boat.spares.map((spare) => ({ ...spare, kind: 'spare' as const })),
    ...boat.services.map((service) => ({ ...service, kind: 'service' as const })),
    ...boat.checks.map((check) => ({ ...check, kind: 'check' as const })),
    ...boat.dated.map((dated) => ({ ...dated, kind: 'dated' as const })),
  ];
}

/** What it means when the item is past its limit: its own word, else by kind: fluids, and checks that work unsettles, are vital; the rest important. */
export function consequenceOf(boat: Boat, item: Item): Consequence {
  if (item.consequence) return item.consequence;
  if (item.kind === 'fluid') return 'vital';
  if (item.kind === 'check' && isUnsettled(boat, item.id)) return 'vital';
  return 'important';
}

/** The engine a service or a spare goes by: the one named, else the boat's only one; null where neither says. */
export function engineOf(boat: Boat, named: string | undefined): string | null {
  if (named !== undefined) return named;
  return boat.engines.length === 1 ? boat.engines[0]!.id : null;
}

/** The services that go by an engine's hours, or name it. */
export function servicesBy(boat: Boat, engine: string): Boat['services'] {
  return boat.services.filter(
    (service) =>
      (service.everyHours === undefined ? service.engine : engineOf(boat, service.engine)) === engine,
  );
}

/** The engines a fluid goes by: none, one, or those that share a tank. */
export function enginesOf(fluid: Fluid): readonly string[] {
  if (fluid.engine === undefined) return [];
  return typeof fluid.engine === 'string' ? [fluid.engine] : fluid.engine;
}

function isUnsettled(boat: Boat, check: string): boolean {
  return [...boat.anodes, ...boat.services].some((item) => item.unsettles.includes(check));
}
