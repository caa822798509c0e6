import type { Trouble } from '../trouble.ts';
import type { Boat } from './boat.ts';
import { type BoatChange, changedValue } from './change.ts';
import { crossChecks } from './cross-checks.ts';
import { issuesOf, KINDS, placeOf, valueAt } from './parts.ts';
import { type Path, sayPath } from './positions.ts';
import type { Facts } from './raw.ts';
import { issueFacts } from './read.ts';

/** A trouble the boat file would be in, and where inside the part that is changed; null for elsewhere. */
export interface WouldBe {
  readonly trouble: Trouble;
  readonly at: Path | null;
}

/** What would be wrong with the boat after a change: with the part by itself, and with how all agrees. In the facts that reading the file would give. */
export function wouldBe(boat: Boat, change: BoatChange): readonly WouldBe[] {
  const after = changedValue(boat, change);
  const place = change.how === 'retire' ? null : placeOf(after, change.kind, change.id);
  const part = place && valueAt(after, place);
  const issues = place === null ? [] : issuesOf(change.kind, part);
  const own = issues.map((issue): WouldBe => {
    const at = issue.path.map((step) => (typeof step === 'number' ? step : String(step)));
    return { at, trouble: troubleOf(issueFacts(issue, at.at(-1), valueAt(part, at)), at) };
  });
  const found = crossChecks(after, () => 0).map(({ path, facts }): WouldBe => {
    const at = place?.every((step, depth) => step === path[depth]) ? path.slice(place.length) : null;
    const known = facts();
    const field = known.kind === 'field missing' ? [known.field] : [];
    return { at: at && [...at, ...field], trouble: troubleOf(known, at ?? byId(after, path)) };
  });
  return [...own, ...found];
}

/** Why a part cannot be retired: those that name it, else what else would be wrong. None where it can. */
export function cannotRetire(boat: Boat, change: BoatChange): readonly Trouble[] {
  const found = crossChecks(changedValue(boat, change), () => 0).map(({ path, facts }) => ({
    path,
    facts: facts(),
  }));
  const by = found.flatMap(({ path, facts }) =>
    facts.kind === 'no such item' && facts.id === change.id ? [namedIn(boat, path)] : [],
  );
  const place = placeOf(boat, change.kind, change.id);
  const name = String((place && valueAt(boat, [...place, 'name'])) ?? change.id);
  return by.length > 0
    ? [{ kind: 'still named', name, by }]
    : found.map(({ path, facts }) => troubleOf(facts, path));
}

/** A path into another part, which is known by its id here. */
function byId(boat: unknown, [kind = '', at = '', ...rest]: Path): Path {
  const id = valueAt(boat, [kind, at, 'id']);
  return typeof id === 'string' ? [id, ...rest] : [kind, at, ...rest];
}

/** A trouble with the path it is named by; of what is missing, the path of the group it is missing in. */
function troubleOf(facts: Facts, path: Path): Trouble {
  const isMissing = facts.kind === 'field missing' && path.at(-1) === facts.field;
  const said = sayPath(isMissing ? path.slice(0, -1) : path);
  return { ...facts, place: { file: 'boat.json', ...(said === '' ? {} : { path: said }) } } as Trouble;
}

/** Who names it: in which entry, and there in which field. No list names entries of its own, so its places are still what they were. */
function namedIn(boat: Boat, [kind, index, ...rest]: Path): { name: string; field: string } {
  const list = KINDS.find((one) => one === kind);
  const entry = list && typeof index === 'number' ? boat[list][index] : undefined;
  const field = (entry ? rest : [kind, index, ...rest]).filter((step) => typeof step === 'string');
  return { name: entry?.name ?? boat.name, field: field[0] ?? '' };
}
