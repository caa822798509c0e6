import { conditionAt } from '../condition/condition-at.ts';
import type { Draft, Entry } from '../logbook/entries.ts';
import type { LoadedBoat } from '../outside.ts';
import type { Trouble } from '../trouble.ts';

/** An entry to be saved; `line` is its line of standard input, absent when typed. */
export interface Asked {
  readonly draft: Draft;
  readonly line?: number;
}

type Doubt = Extract<Trouble, { kind: 'in doubt' }>['doubt'];

/**
 * What would look wrong once these entries are saved and does not now: a meter gone back, a level outside the tank, a name the boat does not have ...
 * The rules are those by which the condition leaves entries out of its sums. `insisted`: only what cannot be at all is told, a strike of an entry that is not there.
 */
export function doubtsAbout(
  asked: readonly Asked[],
  loaded: LoadedBoat,
  now: number,
  insisted: boolean,
): readonly Trouble[] {
  const missing = strikesOfNothing(asked, loaded);
  if (missing.length > 0 || insisted || asked.length === 0) return missing;
  const strikes = new Set(asked.flatMap(({ draft }) => (draft.kind === 'strike' ? [draft.entry] : [])));
  const standing = loaded.entries.filter(({ id }) => !strikes.has(id));
  const lastCount = standing.reduce((most, { lc }) => Math.max(most, lc), 0);
  const supposed = asked.map((one, index) => supposedEntry(one, index + 1, lastCount, now));
  const moment = asked.reduce((latest, { draft }) => Math.max(latest, Date.parse(draft.at)), now);
  const before = new Set(
    conditionAt(loaded.boat, standing, moment).troubles.map((trouble) => JSON.stringify(trouble)),
  );
  const lines = new Map(supposed.map(({ id }, index) => [id, asked[index]?.line]));
  return conditionAt(loaded.boat, [...standing, ...supposed], moment)
    .troubles.filter(isDoubt)
    .filter((trouble) => !before.has(JSON.stringify(trouble)))
    .map((doubt) => {
      const line = lines.get(doubt.entry);
      return { kind: 'in doubt', ...(line === undefined ? {} : { line }), doubt };
    });
}

function isDoubt(trouble: Trouble): trouble is Doubt {
  return trouble.kind === 'odd reading' || trouble.kind === 'unknown item' || trouble.kind === 'clock';
}

/** The entry as it would stand at the end of the log, under a writer no file has. */
function supposedEntry({ draft, line }: Asked, n: number, lastCount: number, now: number): Entry {
  const id = line === undefined ? 'typed' : String(line);
  return { ...draft, id, writer: '', n, lc: lastCount + n, rec: new Date(now).toISOString() };
}

function strikesOfNothing(asked: readonly Asked[], { entries, struck }: LoadedBoat): Trouble[] {
  const strikes = asked.filter(({ draft }) => draft.kind === 'strike');
  if (strikes.length === 0) return [];
  const ids = new Set([...entries, ...struck].map(({ id }) => id));
  return strikes.flatMap(({ draft, line }): Trouble[] => {
    if (draft.kind !== 'strike' || ids.has(draft.entry)) return [];
    if (line === undefined) return [{ kind: 'unknown word', word: draft.entry, what: 'id' }];
    const expected = 'the id of an entry in the log';
    return [{ kind: 'wrong entry', line, field: 'entry', value: draft.entry, expected }];
  });
}
