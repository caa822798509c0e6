import { readDraft } from '../logbook/drafts.ts';
import { type Draft, type EntryKind, entryKinds, itemField } from '../logbook/entries.ts';
import type { LoadedBoat } from '../outside.ts';
import { bad, good, type Result, type Trouble } from '../trouble.ts';
import type { Asked } from './doubts.ts';
import { instant } from './figures.ts';
import { namesFor, type Typing, typedValue } from './typed-value.ts';
import { unknownWord } from './unknown-word.ts';

const COMMON_FIELDS = ['at', 'by', 'key'];

interface From {
  readonly loaded: LoadedBoat;
  readonly now: number;
  readonly zone: string;
  readonly by: string | null;
}

/** One entry as typed: its kind, then `field=value` words, each value in the units people use. Every trouble at once. `by` is who types, where the words do not say. */
export function typedDraft(
  words: readonly string[],
  from: From,
): { readonly asked: readonly Asked[]; readonly troubles: readonly Trouble[] } {
  const read = readTyped(words, from);
  return read.ok ? { asked: [{ draft: read.value }], troubles: [] } : { asked: [], troubles: read.troubles };
}

function readTyped([kind, ...words]: readonly string[], from: From): Result<Draft> {
  const kinds = Object.keys(entryKinds);
  if (kind === undefined)
    return bad({
      kind: 'wanting',
      what: 'a kind of entry (hoveshort record --help lists them)',
      example: 'hoveshort record dip fluid=gear-oil share=1/2',
    });
  if (!isKind(kind)) return bad(unknownWord('entry kind', kind, kinds));
  const names = [...Object.keys(entryKinds[kind].shape), ...COMMON_FIELDS];
  const given = fieldsOf(words, names);
  if (!given.ok) return given;
  const typing: Typing = { ...from, kind, given: given.value };
  const fields: Record<string, unknown> = { kind, at: instant(Math.floor(from.now / 1000) * 1000) };
  if (from.by !== null) fields.by = from.by;
  const values = valuesOf(typing);
  if (!values.ok) return values;
  const wanting = itemWanting(typing);
  return wanting ? bad(wanting) : readDraft({ ...fields, ...values.value });
}

function valuesOf(typing: Typing): Result<Record<string, unknown>> {
  const values: Record<string, unknown> = {};
  const troubles: Trouble[] = [];
  for (const [field, text] of typing.given) {
    const value = typedValue(field, text, typing);
    if (!value.ok) troubles.push(...value.troubles);
    else if (Object.keys(value.value).some((name) => name !== field && typing.given.has(name)))
      troubles.push(twice(field, text));
    else Object.assign(values, value.value);
  }
  return troubles.length > 0 ? bad(...troubles) : good(values);
}

/** An entry is about something; only a remark need not be. */
function itemWanting({ kind, given, loaded }: Typing): Trouble | null {
  const field = itemField[kind];
  if (field === undefined || given.has(field) || kind === 'remark') return null;
  const first = namesFor(field, kind, loaded.boat)?.[0] ?? '<id>';
  return {
    kind: 'wanting',
    what: `${field}=<id>`,
    example: `hoveshort record ${kind} ${field}=${first} ...`,
  };
}

/** Words as fields, each once. */
function fieldsOf(words: readonly string[], names: readonly string[]): Result<ReadonlyMap<string, string>> {
  const given = new Map<string, string>();
  const troubles: Trouble[] = [];
  for (const word of words) {
    const cut = word.indexOf('=');
    const field = cut < 0 ? word : word.slice(0, cut);
    if (cut < 0) troubles.push(notAField(word));
    else if (!names.includes(field)) troubles.push(unknownWord('field', field, names));
    else if (given.has(field)) troubles.push(twice(field, word.slice(cut + 1)));
    else given.set(field, word.slice(cut + 1));
  }
  return troubles.length > 0 ? bad(...troubles) : good(given);
}

function notAField(word: string): Trouble {
  const example = 'text="cleaned the strainer"';
  return { kind: 'not understood', field: 'record', text: word, expected: 'field=value', example };
}

function twice(field: string, text: string): Trouble {
  return { kind: 'not understood', field, text, expected: 'one value, and this is the second' };
}

function isKind(word: string): word is EntryKind {
  return Object.hasOwn(entryKinds, word);
}
