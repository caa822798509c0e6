import { readDraft } from '../../logbook/drafts.ts';
import type { Draft } from '../../logbook/entries.ts';
import type { LoadedBoat } from '../../outside.ts';
import { bad, good, type Result } from '../../trouble.ts';
import { levelFrom } from '../../words/amounts.ts';
import { instant } from '../../words/figures.ts';
import { typedDraft } from '../../words/typed-draft.ts';
import { fluidLine } from './fluid-line.ts';
import type { RoundRow } from './round.ts';

/** What a look becomes an entry of. */
export interface Ground {
  readonly loaded: LoadedBoat;
  /** When it was looked at. */
  readonly moment: number;
  readonly zone: string;
  readonly by: string | null;
}

/** The entry that finds the same again; null where there is none. */
export function unchanged({ same }: RoundRow, { moment, by }: Ground): readonly Draft[] | null {
  if ('not' in same) return null;
  const at = instant(Math.floor(moment / 1000) * 1000);
  const draft = readDraft({ ...same.found, at, ...(by === null ? {} : { by }) });
  return draft.ok ? [draft.value] : null;
}

/** What was typed in a row as entries, or all that is wrong with it. `base`: the number a change is a change of; null where there is none. */
export function typedLook(
  { look }: RoundRow,
  text: string,
  base: number | null,
  ground: Ground,
): Result<readonly Draft[]> {
  const { kind, id } = look;
  switch (kind) {
    case 'engine':
      return changed(text, base, 'reading', ground, (reading) => ({ kind: 'hours', engine: id, reading }));
    case 'fluid':
      return fluidLook(id, text, base, ground);
    case 'anode':
      return changed(text, base, 'share', ground, (left) => ({
        kind: 'anode',
        anode: id,
        ...anodeFields(left),
      }));
    case 'check':
      return look.unit === null
        ? drafted([{ kind: 'check', check: id, ok: text }], ground)
        : changed(text, base, 'value', ground, (value) => ({ kind: 'check', check: id, value }));
  }
}

/** The number a change is a change of: of what was saved of the row, else of what was found last. */
export function baseOf(fields: object): number | null {
  for (const [name, value] of Object.entries(fields))
    if (['reading', 'level', 'share', 'value'].includes(name) && typeof value === 'number') return value;
  return null;
}

type Fields = { readonly kind: string } & { readonly [field: string]: string };

function drafted(entries: readonly Fields[], { loaded, moment, zone, by }: Ground): Result<readonly Draft[]> {
  const read = entries.map(({ kind, ...fields }) =>
    typedDraft([kind, ...Object.entries(fields).map(([field, text]) => `${field}=${text}`)], {
      loaded,
      now: moment,
      zone,
      by,
    }),
  );
  const troubles = read.flatMap((one) => one.troubles);
  return troubles.length > 0
    ? bad(...troubles)
    : good(read.flatMap(({ asked }) => asked.map(({ draft }) => draft)));
}

function fluidLook(id: string, text: string, base: number | null, ground: Ground): Result<readonly Draft[]> {
  const { level: typed, added, after, drip } = fluidLine(text);
  const { boat } = ground.loaded;
  const { stock, full } = boat.fluids.find((fluid) => fluid.id === id) ?? {};
  const read = typed === null || base === null ? null : levelFrom(typed, 'level', full);
  const level = read?.ok && 'change' in read.value ? `${tidy(base! + read.value.change)} L` : typed;
  const from = boat.spares.some((spare) => spare.id === stock) ? { from: stock! } : {};
  return drafted(
    [
      ...(level === null ? [] : [{ kind: 'dip', fluid: id, level }]),
      ...(added === null
        ? []
        : [
            { kind: 'topup', fluid: id, amount: added, ...(after === null ? {} : { level: after }), ...from },
          ]),
      ...(drip === null ? [] : [{ kind: 'leak', item: id, class: drip }]),
    ],
    ground,
  );
}

/** A number as it is, or a change of the last one: where that lies below zero a sign is the number's own. */
function changed(
  text: string,
  base: number | null,
  field: string,
  ground: Ground,
  fields: (text: string) => Fields,
): Result<readonly Draft[]> {
  const signed = base === null || base < 0 ? null : /^([+\-\u2212])\s*(.+)$/su.exec(text);
  if (!signed) return drafted([fields(text)], ground);
  const read = drafted([fields(signed[2]!)], ground);
  const [draft] = read.ok ? read.value : [];
  const by = draft && baseOf(draft);
  if (by == null) return read.ok ? drafted([fields(text)], ground) : read;
  const sum = base! + (signed[1] === '+' ? by : -by);
  const whole = readDraft({ ...draft, [field]: tidy(sum) });
  return whole.ok ? good([whole.value]) : whole;
}

/** What is left of an anode: a share, `40` per cent as the page of the round has it, a weight, a thickness; and whether it flakes. */
function anodeFields(text: string): { readonly [field: string]: string } {
  const flakes = /(?:^|\s)flakes(?=\s|$)/iu;
  const left = text.replace(flakes, ' ').trim();
  return { [anodeField(left)]: perCent(left), ...(flakes.test(text) ? { flakes: 'yes' } : {}) };
}

function anodeField(text: string): string {
  if (/\d\s*(?:g|kg|lb|oz)$/iu.test(text)) return 'massKg';
  return /\d\s*(?:mm|cm|in)$/iu.test(text) ? 'diameterMm' : 'share';
}

/** More than this new is no share, so per cent are meant. */
const MOST_NEW = 1.2;

function perCent(text: string): string {
  return /^\d{1,3}(?:[.,]\d+)?$/u.test(text) && Number(text.replace(',', '.')) > MOST_NEW
    ? `${text} %`
    : text;
}

/** Without the dust of a sum. */
function tidy(value: number): number {
  return Number(value.toPrecision(12));
}
