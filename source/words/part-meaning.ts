import type { Boat } from '../boat/boat.ts';
import type { PartField } from '../boat/part-fields.ts';
import { rhumbLine } from '../passage/distance.ts';
import { nameOf, unitOf } from './names.ts';
import { textOf } from './part-texts.ts';
import { amountWords, rateWords } from './say.ts';
import type { Leg } from './typed-leg.ts';

/**
 * What a value of boat.json was understood as, beside what was typed for it: names for ids, one way of writing for many. Null where there is no more to say.
 * `begins`: where a leg begins, where that is known.
 */
export function meaningOf(
  value: unknown,
  field: PartField,
  { boat, typed, begins }: { boat: Boat; typed: string; begins: readonly [number, number] | null },
): string | null {
  const { holds } = field;
  const plain = () => {
    const text = textOf(value, field, boat);
    return text === typed.trim() ? null : text;
  };
  switch (holds.is) {
    case 'words':
      return null;
    case 'number':
      return rateText(value as number, holds.unit) ?? plain();
    case 'bad day':
      return `a spread of ${textOf(value, field, boat)}`;
    case 'id':
    case 'ids':
      return [value]
        .flat()
        .map((id) => nameOf(boat, String(id)))
        .join('; ');
    case 'parts':
      return (value as readonly { spare: string; count: number }[])
        .map(({ spare, count }) => `${nameOf(boat, spare)} ${amountWords(count, unitOf(boat, spare))}`)
        .join('; ');
    case 'position':
      return (
        [plain(), anchorageAt(value as [number, number], boat)].filter((one) => one !== null).join(', ') ||
        null
      );
    case 'leg':
      return legWords(value as Leg, boat, { begins, plain: plain() });
    default:
      return plain();
  }
}

/** What counts while a field is empty, and where that comes from; null where the schema's words say it. */
export function usualWords({ usual, holds, says }: PartField): string | null {
  if (usual === undefined || Array.isArray(usual) || /where absent/iu.test(says)) return null;
  const value = usual === true ? 'yes' : usual === false ? 'no' : String(usual);
  return holds.is === 'number'
    ? `${value} where nothing is written: common practice, no source.`
    : `${value} where nothing is written.`;
}

function rateText(value: number, unit: string | null): string | null {
  if (value <= 0) return null;
  if (unit === 'uses an engine hour') return rateWords({ mean: value, per: 'engine hour' });
  return unit === 'uses a day' ? rateWords({ mean: value, per: 'day' }) : null;
}

/** What was typed where it was put otherwise, which anchorage it ends at, and how far that is: a slip in a position shows in its length. */
function legWords(
  { to }: Leg,
  boat: Boat,
  { begins, plain }: { begins: readonly [number, number] | null; plain: string | null },
): string | null {
  const direct = begins === null ? null : `${amountWords(rhumbLine(begins, to).nm, 'nm')} as the rhumb line`;
  return [plain, anchorageAt(to, boat), direct].filter((one) => one !== null).join('; ') || null;
}

function anchorageAt([latitude, longitude]: readonly [number, number], { anchorages }: Boat): string | null {
  return anchorages.find(({ at }) => at[0] === latitude && at[1] === longitude)?.name ?? null;
}
