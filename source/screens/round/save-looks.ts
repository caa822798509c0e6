import { passes } from '../../condition/round.ts';
import type { Draft } from '../../logbook/entries.ts';
import { doubtsAbout } from '../../words/doubts.ts';
import { PASS_TITLES } from '../../words/round-page.ts';
import { counted } from '../../words/say.ts';
import { fieldWith } from '../field.ts';
import { type Model, pageOf, type Step, withTop } from '../model.ts';
import { type RoundPage, type RoundRow, type Saved, savedOf, UNTYPED, withTyped } from './round.ts';
import { movedBy } from './round-moves.ts';
import { strikesAsked } from './round-saved.ts';
import { standing } from './standing.ts';
import { baseOf, type Ground, typedLook, unchanged } from './typed-look.ts';

/** Saves the row in hand and goes to the next: as typed, or seen and unchanged where nothing is. What is in doubt is asked about once. */
export function saveLook(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round' || model.boat.is !== 'open') return [model, []];
  const row = page.rows[page.at - 1];
  const old = row ? savedOf(page, row) : null;
  if (!row || (old && row.field.text.trim() === '')) return [withTop(model, movedBy(model, page, 1)), []];
  const ground = groundOf(model, page, old)!;
  const read = inHand(row, old, ground);
  if ('notice' in read) return [{ ...model, notice: read.notice }, []];
  if (read.troubles.length > 0)
    return [withTop(model, withTyped(page, { told: read.troubles, insisted: false })), []];
  const doubts = doubtsAbout(
    read.drafts.map((draft) => ({ draft })),
    ground.loaded,
    model.now,
    row.insisted,
  );
  if (doubts.length > 0) return [withTop(model, withTyped(page, { told: doubts, insisted: true })), []];
  const cleared = withTyped(struck(page, old), UNTYPED);
  return asked(model, movedBy(model, cleared, 1), [{ row, drafts: read.drafts, typed: row.field.text }]);
}

/** Everything due that is neither saved nor typed in: seen and unchanged. What was never looked at is left, and all of it counted. */
export function saveRest(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round') return [model, []];
  const ground = groundOf(model, page, null);
  if (!ground) return [model, []];
  const open = page.rows.filter((row) => savedOf(page, row) === null);
  const untyped = open.filter(({ field }) => field.text.trim() === '');
  const looks = untyped.flatMap((row) => {
    const drafts = unchanged(row, ground);
    return drafts === null ? [] : [{ row, drafts, typed: '' }];
  });
  const notice = restWords(
    looks.map(({ row }) => row),
    untyped.length - looks.length,
    open.length - untyped.length,
  );
  if (looks.length === 0) return [{ ...model, notice }, []];
  const [next, requests] = asked(model, page, looks);
  return [{ ...next, notice }, requests];
}

/** Strikes what this round saved last, a row or all that one key saved; what was typed comes back into its field. */
export function strikeLast(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round') return [model, []];
  const last = page.saves.findLast((one) => !one.struck);
  if (!last) return [{ ...model, notice: 'nothing of this round is saved' }, []];
  const batch = page.saves.filter((one) => one.asked === last.asked && !one.struck);
  const without = {
    ...page,
    saves: page.saves.map((one) => (batch.includes(one) ? { ...one, struck: true } : one)),
  };
  const at = 1 + page.rows.findIndex(({ look }) => look.id === last.row);
  const there = batch.length === 1 ? { ...without, at, from: 0 } : without;
  const empty = batch.length === 1 && there.rows[at - 1]?.field.text === '';
  const back = empty ? withTyped(there, { field: fieldWith(last.typed) }) : there;
  const [next, requests] = strikesAsked(model, back);
  return [{ ...next, notice: `struck: ${counted(batch.length, 'look', 'looks')}` }, requests];
}

/** What a look is read against; `old` is what it is to take the place of. Null while there is no boat. */
export function groundOf(model: Model, page: RoundPage, old: Saved | null): Ground | null {
  const { boat, now, zone, by } = model;
  if (boat.is !== 'open') return null;
  return { loaded: standing(page, boat.loaded, now, old), moment: page.when.moment ?? now, zone, by };
}

type Read =
  | { readonly drafts: readonly Draft[]; readonly troubles: RoundRow['told'] }
  | { readonly notice: string };

/** What Enter saves of a row, or why it cannot. */
export function inHand(row: RoundRow, old: Saved | null, ground: Ground): Read {
  const typed = row.field.text.trim();
  if (typed === '') {
    const drafts = unchanged(row, ground);
    return drafts ? { drafts, troubles: [] } : { notice: 'not' in row.same ? row.same.not : '' };
  }
  const read = typedLook(
    row,
    typed,
    baseOf(old?.drafts[0] ?? ('found' in row.same ? row.same.found : {})),
    ground,
  );
  return read.ok ? { drafts: read.value, troubles: [] } : { drafts: [], troubles: read.troubles };
}

function struck(page: RoundPage, old: Saved | null): RoundPage {
  return { ...page, saves: page.saves.map((one) => (one === old ? { ...one, struck: true } : one)) };
}

interface Look {
  readonly row: RoundRow;
  readonly drafts: readonly Draft[];
  readonly typed: string;
}

/** Asks for the looks to be saved, all or none, and for what they take the place of to be struck. */
function asked(model: Model, page: RoundPage, looks: readonly Look[]): Step {
  const drafts = looks.flatMap((look) => look.drafts);
  const saves = looks.map(
    (look): Saved => ({
      row: look.row.look.id,
      drafts: look.drafts,
      asked: drafts,
      typed: look.typed,
      entries: null,
      struck: false,
      strikes: null,
    }),
  );
  const [next, strikes] = strikesAsked(model, { ...page, saves: [...page.saves, ...saves] });
  return [next, [{ do: 'save', drafts }, ...strikes]];
}

function restWords(looked: readonly RoundRow[], never: number, typed: number): string {
  const each = passes.flatMap((pass) => {
    const count = looked.filter((row) => row.pass === pass).length;
    return count === 0 ? [] : [`${count} ${PASS_TITLES[pass].toLowerCase()}`];
  });
  return [
    looked.length === 0 ? 'nothing seen and unchanged' : `seen and unchanged: ${each.join(', ')}`,
    ...(never === 0 ? [] : [`${never} to be typed`]),
    ...(typed === 0 ? [] : [`${typed} typed in, not saved`]),
  ].join('; ');
}
