import { amountFrom } from '../../words/amounts.ts';

/** What is typed of a fluid in one line, each part as typed; null where it is not there. */
export interface FluidLine {
  readonly level: string | null;
  readonly added: string | null;
  /** The level after topping up. */
  readonly after: string | null;
  readonly drip: string | null;
}

const DRIP = /(?:^|\s)(dry|wet|drops|falls)(?=\s|$)/iu;
const POURED = /\+|\b(?:poured|added|add)\b/iu;

/**
 * `1/2 +300ml drops`: the level found, what was poured in, how it drips; each may be left out. A level behind what was poured in is the
 * level after: `1/2 +300ml full`. A change alone is of the level (`+0.2`); `poured 300ml` is poured in.
 */
export function fluidLine(typed: string): FluidLine {
  const drip = DRIP.exec(typed)?.[1]?.toLowerCase() ?? null;
  const text = typed.replace(DRIP, ' ').trim();
  const poured = POURED.exec(text);
  if (!poured) return { level: orNull(text), added: null, after: null, drip };
  const level = orNull(text.slice(0, poured.index).trim());
  const [added, after] = amountFirst(text.slice(poured.index + poured[0].length).trim());
  if (poured[0] === '+' && level === null && after === null)
    return { level: text, added: null, after: null, drip };
  return { level, added, after, drip };
}

/** The longest amount the words begin with, and the rest; all of it where they begin with none, to be told as not understood. */
function amountFirst(text: string): readonly [string, string | null] {
  const words = text.split(/\s+/u);
  for (let count = words.length; count > 0; count -= 1) {
    const amount = words.slice(0, count).join(' ');
    const rest = words.slice(count).join(' ');
    if (amountFrom(amount, 'L', 'amount').ok && !/^[+\-\u2212]/u.test(rest)) return [amount, orNull(rest)];
  }
  return [text, null];
}

function orNull(text: string): string | null {
  return text === '' ? null : text;
}
