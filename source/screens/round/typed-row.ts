import { readDraft } from '../../logbook/drafts.ts';
import type { Draft } from '../../logbook/entries.ts';
import { bad, good, type Result, type Trouble } from '../../trouble.ts';
import { amountFrom, levelFrom, numberIn, shareFrom } from '../../words/amounts.ts';
import { instant } from '../../words/figures.ts';
import { typedDraft } from '../../words/typed-draft.ts';
import type { Model } from '../model.ts';
import type { RoundPage, RoundRow } from './round.ts';

/** From whom and when: what every entry of a round has. */
export type Typist = Pick<Model, 'now' | 'zone' | 'by'>;

/** What a row becomes: nothing typed is what was found last, seen and unchanged. Every trouble at once; null where there is nothing to be unchanged from. */
export function rowDrafts(
  row: RoundRow,
  text: string,
  page: RoundPage,
  typist: Typist,
): Result<readonly Draft[]> | null {
  const { found, poured, drip }: Parts =
    row.look.kind === 'fluid' ? fluidParts(text) : { found: text, poured: null, drip: null };
  const { id } = row.look;
  const stock = page.ground.boat.fluids.find((fluid) => fluid.id === id)?.stock;
  const read: (Result<Draft> | null)[] = [];
  if (found !== '' || (poured === null && drip === null)) read.push(foundDraft(row, found, page, typist));
  if (poured !== null) {
    const from = stock === undefined ? [] : [`from=${stock}`];
    read.push(typed(['topup', `fluid=${id}`, `amount=${poured}`, ...from], page, typist));
  }
  if (drip !== null) read.push(typed(['leak', `item=${id}`, `class=${drip}`], page, typist));
  const drafts: Draft[] = [];
  const troubles: Trouble[] = [];
  for (const one of read) {
    if (one === null) return null;
    if (one.ok) drafts.push(one.value);
    else troubles.push(...one.troubles);
  }
  return troubles.length > 0 ? bad(...troubles) : good(drafts);
}

/** Whether something is poured in, by what is typed: hands go to the engine for that. */
export function pours({ look }: RoundRow, text: string): boolean {
  return look.kind === 'fluid' && fluidParts(text).poured !== null;
}

interface Parts {
  readonly found: string;
  readonly poured: string | null;
  readonly drip: string | null;
}

/** `1/2 +300 ml drops`: the level found, what was poured in after that, the drips under it; each can be left out. What is poured in without a level is `poured 300 ml`. */
function fluidParts(text: string): Parts {
  const drip = /(?:^|\s+)(dry|wet|drops|falls)$/iu.exec(text);
  const rest = drip ? text.slice(0, drip.index) : text;
  const added = /(?:^|\s+)poured\s+(?:in\s+)?/iu.exec(rest) ?? /(?<=\S)\s*\+/u.exec(rest);
  return {
    found: (added ? rest.slice(0, added.index) : rest).trim(),
    poured: added ? rest.slice(added.index + added[0].length).trim() : null,
    drip: drip?.[1]?.toLowerCase() ?? null,
  };
}

function foundDraft(row: RoundRow, text: string, page: RoundPage, typist: Typist): Result<Draft> | null {
  const { look, last } = row;
  if (text === '' || text === '=' || text.toLowerCase() === 'same')
    return last && made(row, page, typist, sameFields(row, last));
  const change = last?.is === 'amount' && isChange(text, last.value) ? changeOf(look, text, page) : null;
  if (change && !change.ok) return change;
  if (change && last?.is === 'amount')
    return made(row, page, typist, { value: Number((last.value + change.value).toPrecision(12)) });
  return typed(typedWords(row, text), page, typist);
}

/** A sign makes a change of it, but where what was found last lies below zero: there it is the number's own. */
function isChange(text: string, last: number): boolean {
  return last >= 0 && /^[+\-\u2212]/u.test(text);
}

function typedWords({ look: { kind, id, unit } }: RoundRow, text: string): readonly string[] {
  switch (kind) {
    case 'engine':
      return ['hours', `engine=${id}`, `reading=${text}`];
    case 'fluid':
      return ['dip', `fluid=${id}`, `level=${text}`];
    case 'anode':
      return ['anode', `anode=${id}`, `share=${perCent(text)}`];
    case 'check':
      if (unit !== null) return ['check', `check=${id}`, `value=${text}`];
      return ['check', `check=${id}`, `ok=${ANSWERS.get(text.toLowerCase()) ?? text}`];
  }
}

/** A whole number above one is per cent, as the page that is printed has it. */
function perCent(text: string): string {
  return /^\d{1,3}$/u.test(text) && Number(text) > 1 ? `${text} %` : text;
}

/** As the page itself says them. */
const ANSWERS: ReadonlyMap<string, string> = new Map([
  ['well', 'yes'],
  ['not well', 'no'],
]);

/** How much more, or less, than what was found last. */
function changeOf({ kind, id, unit }: RoundRow['look'], text: string, page: RoundPage): Result<number> {
  if (kind === 'engine') return amountFrom(text, 'h', 'reading');
  if (kind === 'anode') return shareFrom(text, 'share');
  if (kind === 'check') return numberIn(text, unit === '' ? null : unit, 'value');
  const full = page.ground.boat.fluids.find((fluid) => fluid.id === id)?.full;
  const read = levelFrom(text, 'level', full);
  if (!read.ok) return read;
  if ('change' in read.value) return good(read.value.change);
  const expected = 'a change with its unit';
  return bad({ kind: 'not understood', field: 'level', text, expected, example: '+0.2, -300 ml' });
}

type Found = { readonly value: number; readonly off?: 'below' | 'above' } | { readonly ok: boolean };

function sameFields({ look }: RoundRow, last: NonNullable<RoundRow['last']>): Found {
  if (last.is === 'answer') return { ok: last.ok };
  return look.kind === 'fluid' && last.off ? { value: last.value, off: last.off } : { value: last.value };
}

function made(
  { look: { kind, id } }: RoundRow,
  page: RoundPage,
  typist: Typist,
  found: Found,
): Result<Draft> {
  const common = { at: momentOf(page, typist), ...(typist.by === null ? {} : { by: typist.by }) };
  if ('ok' in found) return readDraft({ kind: 'check', ...common, check: id, ok: found.ok });
  const { value, off } = found;
  switch (kind) {
    case 'engine':
      return readDraft({ kind: 'hours', ...common, engine: id, reading: value });
    case 'fluid':
      return readDraft({ kind: 'dip', ...common, fluid: id, ...(off ? { off } : { level: value }) });
    case 'anode':
      return readDraft({ kind: 'anode', ...common, anode: id, share: value });
    case 'check':
      return readDraft({ kind: 'check', ...common, check: id, value });
  }
}

function typed(words: readonly string[], page: RoundPage, typist: Typist): Result<Draft> {
  const read = typedDraft([...words, `at=${momentOf(page, typist)}`], { ...typist, loaded: page.ground });
  const [asked] = read.asked;
  return asked ? good(asked.draft) : bad(...read.troubles);
}

function momentOf({ when }: RoundPage, { now }: Typist): string {
  return instant(when ?? Math.floor(now / 1000) * 1000);
}
