import { type Boat, servicesBy } from '../boat/boat.ts';
import type { VerdictDocument } from './document.ts';
import { STATE_WORDS } from './reasons.ts';
import { amountWords, capital, dayHere, momentWords } from './say.ts';

type Engine = VerdictDocument['engines'][number];

/** One engine as `item --json` gives it: its hours as in the verdict, and the services that go by them. */
export interface EngineItem extends Engine {
  kind: 'engine';
  services: string[];
}

/** Null where the boat has no such engine. */
export function engineItem({ engines }: VerdictDocument, boat: Boat, id: string): EngineItem | null {
  const engine = engines.find((one) => one.id === id);
  return engine
    ? { ...engine, kind: 'engine', services: servicesBy(boat, id).map((service) => service.id) }
    : null;
}

/** All that is known of one engine, a sentence a line. `at` is when the answer is for, ms. */
export function engineLines(
  { name, hours, readAt, perDay, services }: EngineItem,
  { items }: VerdictDocument,
  { at, zone }: { readonly at: number; readonly zone: string },
): string[] {
  const read = readAt === null ? '' : `, read ${momentWords(Date.parse(readAt), zone, at)}`;
  return [
    `${capital(name)}: ${hours === null ? 'its hours were not read yet' : `${hours.toFixed(1)} h${read}`}.`,
    `About ${amountWords(perDay, 'h')} a day lying.`,
    ...services.flatMap((id) => {
      const service = items.find((one) => one.id === id);
      return service?.kind === 'service' ? [`${capital(service.name)}: ${dueWords(service)}.`] : [];
    }),
  ];
}

/** When a service falls due, and its state. */
export function dueWords({
  state,
  dueInHours,
  dueOn,
}: {
  readonly state: keyof typeof STATE_WORDS | null;
  readonly dueInHours: number | null;
  readonly dueOn: string | null;
}): string {
  const due = [
    ...(dueInHours === null ? [] : [hoursAway(dueInHours)]),
    ...(dueOn === null ? [] : [`by ${dayHere(Date.parse(dueOn))}`]),
  ];
  const when = due.length === 0 ? 'not entered yet' : due.join(' or ');
  return `${when}; ${state === null ? 'working' : STATE_WORDS[state]}`;
}

export function hoursAway(hours: number): string {
  return hours < 0 ? `${amountWords(-hours, 'h')} overdue` : `in ${amountWords(hours, 'h')}`;
}
