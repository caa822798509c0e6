import type { Draft } from '../../logbook/entries.ts';
import type { Trouble } from '../../trouble.ts';
import { doubtsAbout } from '../../words/doubts.ts';
import { momentFrom } from '../../words/moments.ts';
import { counted } from '../../words/say.ts';
import { CANNOT_SAVE } from '../looking-only.ts';
import { type Model, pageOf, type Request, type Step, turnedBack, turnedTo, withTop } from '../model.ts';
import { type Entered, enteredAt, type RoundPage, TIME } from './round.ts';
import { unsavedText } from './round-field.ts';
import { roundRows } from './rows.ts';
import { strikesAsked, struckWhere } from './striking.ts';
import { rowDrafts } from './typed-row.ts';

/** Opens the round; where nothing can be saved or nothing is due, says so instead. */
export function begin(model: Model): Step {
  if (model.boat.is !== 'open') return [model, []];
  const { loaded, document } = model.boat;
  if (loaded.readOnly) return [{ ...model, notice: CANNOT_SAVE }, []];
  const rows = roundRows(loaded, document);
  if (rows.length === 0) return [{ ...model, notice: 'nothing is due a look' }, []];
  const answer = { began: document, latest: document };
  const nothing = { fields: {}, when: null, told: null, failed: {}, batches: [], leaving: false };
  const page: RoundPage = { page: 'round', from: 0, rows, ground: loaded, at: 0, ...nothing, ...answer };
  return [turnedTo(model, page), []];
}

/** To the next row or the one before; the time stands above the first. A time that is not understood is not left. */
export function toRoundRow(by: 1 | -1): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page !== 'round') return [model, []];
    const timed = withTime(page, model);
    const at = Math.max(-1, Math.min(page.rows.length, page.at + by));
    return [withTop(model, timed.told ? timed : { ...timed, at, told: null, leaving: false, from: 0 }), []];
  };
}

/** Saves the row in hand and goes on to the next that is open. What was typed over a row already entered takes its place. */
export function enterRow(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round') return [model, []];
  if (page.at < 0) return toRoundRow(1)(model);
  const row = page.rows[page.at];
  if (!row) return leaveRound(model);
  const { id } = row.look;
  const text = unsavedText(page, id);
  const before = enteredAt(page, id);
  if (before && text === '') return [withTop(model, onward(page)), []];
  const read = rowDrafts(row, text, page, model);
  if (read === null) return [{ ...model, notice: 'never looked at: type what you find' }, []];
  const troubles = read.ok ? doubted(read.value, page, model) : read.troubles;
  if (!read.ok || troubles.length > 0)
    return [withTop(model, { ...page, told: { troubles, insisted: read.ok }, leaving: false }), []];
  const struck = before ? struckWhere(page, (look) => look === before.entered) : page;
  const [next, requests] = entered(struck, [{ row: id, text, drafts: read.value }], model);
  return [withTop(model, onward(next)), requests];
}

/** All the rest seen and unchanged; the looks before leaving only where one of them is in hand, since they are made at the anchor's coming up. */
export function restUnchanged(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round') return [model, []];
  const leaving = page.rows[page.at]?.pass === 'leaving';
  const open = page.rows.filter(
    ({ look, pass }) => !enteredAt(page, look.id) && (leaving || pass !== 'leaving'),
  );
  const given = open.flatMap((row) => {
    if (unsavedText(page, row.look.id) !== '') return [];
    const read = rowDrafts(row, '', page, model);
    return read?.ok ? [{ row: row.look.id, text: '', drafts: read.value }] : [];
  });
  const never = open.filter(({ last }) => last === null).length;
  const typed = open.length - given.length - never;
  const notice = [
    `${given.length} unchanged`,
    ...(never > 0 ? [`${never} never seen`] : []),
    ...(typed > 0 ? [`${typed} unsaved`] : []),
  ].join(', ');
  if (given.length === 0) return [{ ...model, notice }, []];
  const [next, requests] = entered(page, given, model);
  return [{ ...withTop(model, toFirstOpen(next)), notice }, requests];
}

/** Strikes what the last Enter or the last `a` entered, and goes back there. */
export function strikeLast(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round') return [model, []];
  const last = page.batches.findLast(({ looks }) => looks.some(({ strike }) => strike === null));
  if (!last) return [{ ...model, notice: 'nothing of this round to strike' }, []];
  const rows = last.looks.filter(({ strike }) => strike === null).map(({ row }) => row);
  const names = page.rows.filter(({ look }) => rows.includes(look.id)).map(({ look }) => look.name);
  const struck = struckWhere(page, (look) => last.looks.includes(look));
  const [next, requests] = strikesAsked(struck, model);
  const at = page.rows.findIndex(({ look }) => look.id === rows[0]);
  const what = names.length === 1 ? names[0] : counted(names.length, 'row', 'rows');
  return [{ ...withTop(model, { ...next, at, told: null, from: 0 }), notice: `struck: ${what}` }, requests];
}

/** Everything entered is saved; over text that is not, the first Escape says so. */
export function leaveRound(model: Model): Step {
  const page = pageOf(model);
  if (page.page !== 'round') return [model, []];
  const unsaved = page.rows.filter(({ look }) => unsavedText(page, look.id) !== '');
  const [first] = unsaved;
  if (!first || page.leaving) return [{ ...turnedBack(model), leftRound: page }, []];
  const at = page.rows.indexOf(first);
  return [
    {
      ...withTop(model, { ...page, at, told: null, leaving: true, from: 0 }),
      notice: 'Enter saves it, Esc again leaves it',
    },
    [],
  ];
}

type Given = Pick<Entered, 'row' | 'text' | 'drafts'>;

/** The page with these on their way to the disk, and what is to be struck for them. */
function entered(page: RoundPage, given: readonly Given[], model: Model): [RoundPage, Request[]] {
  const drafts = given.flatMap((one) => one.drafts);
  const looks = given.map((one): Entered => ({ ...one, ids: null, strike: null }));
  const rows = new Set(given.map(({ row }) => row));
  const left = <T>(of: { readonly [row: string]: T }) =>
    Object.fromEntries(Object.entries(of).filter(([row]) => !rows.has(row)));
  const batches = [...page.batches, { drafts, at: model.now, looks, score: null }];
  const cleared = { ...page, batches, fields: left(page.fields), failed: left(page.failed) };
  const [next, strikes] = strikesAsked(cleared, model);
  return [next, [{ do: 'save', drafts }, ...strikes]];
}

function doubted(drafts: readonly Draft[], page: RoundPage, { now }: Model): readonly Trouble[] {
  const asked = drafts.map((draft) => ({ draft }));
  return doubtsAbout(asked, page.ground, now, page.told?.insisted ?? false);
}

/** The next row that is open; past the last where there is none. */
function onward(page: RoundPage): RoundPage {
  const next = page.rows.findIndex(({ look }, index) => index > page.at && !enteredAt(page, look.id));
  return { ...page, at: next < 0 ? page.rows.length : next, told: null, leaving: false, from: 0 };
}

function toFirstOpen(page: RoundPage): RoundPage {
  return onward({ ...page, at: -1 });
}

/** The page with the time of the round understood, or told of. */
function withTime(page: RoundPage, { now, zone }: Model): RoundPage {
  if (page.at >= 0) return page;
  const text = unsavedText(page, TIME);
  if (text === '') return { ...page, when: null, told: null };
  const when = momentFrom(text, now, zone);
  if (when !== null) return { ...page, when, told: null };
  const expected = 'a moment by the clocks here';
  const trouble = { kind: 'not understood', field: 'at', text, expected, example: EXAMPLE } as const;
  return { ...page, told: { troubles: [trouble], insisted: false } };
}

const EXAMPLE = '07:40, yesterday 18:00, 3 h ago';
