import { isZone } from '../maths/wall-clock.ts';
import { CLOCKS, HEIGHTS, type Settings, VOLUMES, WINDS } from '../outside.ts';
import { bad, good, type Result } from '../trouble.ts';
import { unknownWord } from './unknown-word.ts';

/** What a person can prefer, as it is kept. */
export type Kept = Pick<
  Settings,
  'volume' | 'height' | 'wind' | 'clock' | 'zone' | 'palette' | 'name' | 'backup'
>;

export interface PreferenceField {
  readonly field: keyof Kept;
  readonly says: string;
  /** What it can be, one of these words; absent where it is a text. */
  readonly choices?: readonly string[];
  /** What stands where there is no text. */
  readonly none?: string;
  readonly example?: string;
}

/** Every preference, in the order they are shown. */
export const preferenceFields: readonly PreferenceField[] = [
  { field: 'volume', says: 'oil, fuel and water', choices: VOLUMES },
  { field: 'height', says: 'seas and lengths', choices: HEIGHTS },
  { field: 'wind', says: 'wind and speed', choices: WINDS },
  { field: 'clock', says: 'the clock', choices: CLOCKS },
  { field: 'zone', says: 'time zone', none: 'that of this laptop', example: 'Europe/Lisbon, UTC' },
  { field: 'palette', says: 'colours', choices: ['day', 'night', 'plain'] },
  { field: 'name', says: 'who types, for the log', none: 'not said', example: 'Mara' },
  {
    field: 'backup',
    says: 'copied on leaving to',
    none: 'nowhere',
    example: '/media/stick, a folder that is there',
  },
];

const MOST_LETTERS = 500;

/** A preference as typed; an empty text takes it away. */
export function preferenceFrom(
  { field, choices, example }: PreferenceField,
  typed: string,
): Result<Partial<Kept>> {
  const text = typed.trim();
  if (choices) {
    const word = choices.find(
      (one) => one.toLowerCase().replace(' ', '') === text.toLowerCase().replace(' ', ''),
    );
    return word === undefined ? bad(unknownChoice(field, text, choices)) : good({ [field]: word });
  }
  if (text === '') return good({ [field]: null });
  const expected =
    field === 'zone' ? 'the name of a time zone' : `up to ${MOST_LETTERS} letters, on one line`;
  const wrong = {
    kind: 'not understood' as const,
    field,
    text: typed,
    expected,
    ...(example ? { example } : {}),
  };
  if (text.length > MOST_LETTERS || /\p{Cc}/u.test(text)) return bad(wrong);
  if (field === 'zone' && !isZone(text)) return bad(wrong);
  return good({ [field]: text });
}

function unknownChoice(field: string, text: string, choices: readonly string[]) {
  const { near } = unknownWord('field', text, choices);
  const example = near ?? choices[0]!;
  return { kind: 'not understood' as const, field, text, expected: `one of ${choices.join(', ')}`, example };
}
