import { unsigned } from './octets.ts';
import { type Mangling, manglingOf } from './text-mode.ts';

/** One whole message as it lies in the bytes. */
export interface Message {
  /** From 1, in the order of the file; damaged ones count. */
  readonly number: number;
  readonly edition: 1 | 2;
  readonly octets: Uint8Array;
}

/** Something wrong with the file around its messages. */
export type FileProblem =
  /** Mail or a bulletin heading stands before or between messages: harmless. */
  | { readonly kind: 'text around'; readonly octets: number }
  | { readonly kind: 'nothing found' }
  /** The last message ends early. `start` is what there is of it. */
  | {
      readonly kind: 'cut short';
      readonly message: number;
      readonly missing: number;
      readonly start: Uint8Array;
    }
  | { readonly kind: 'broken message'; readonly message: number }
  | { readonly kind: 'mangled'; readonly how: Mangling };

const MARK = [0x47, 0x52, 0x49, 0x42];
const END = 0x37373737;
/** Section 0 of each edition, and the shortest message there can be. */
const LEAST = { 1: 52, 2: 120 };
/** Longest message looked for: past this a length is damage. */
const MOST_OCTETS = 2 ** 26;

/** Finds the messages in any bytes: a file, a saved mail, the start of a download. Whole ones are kept whatever is wrong with the rest. */
export function messagesIn(octets: Uint8Array): {
  readonly messages: readonly Message[];
  readonly problems: readonly FileProblem[];
} {
  const messages: Message[] = [];
  const problems: FileProblem[] = [];
  let around = 0;
  let [number, from] = [0, 0];
  for (let at = nextMark(octets, 0); at >= 0; at = nextMark(octets, from)) {
    around += textIn(octets.subarray(from, at));
    const head = headAt(octets, at);
    if (!head) {
      around += MARK.length;
      from = at + MARK.length;
      continue;
    }
    number += 1;
    if (head.whole) {
      messages.push({ number, edition: head.edition, octets: octets.subarray(at, at + head.length) });
      from = at + head.length;
      continue;
    }
    const next = nextWhole(octets, at + MARK.length);
    problems.push(brokenAt(octets, { at, next, number, length: head.length }));
    from = next < 0 ? octets.length : next;
  }
  around += textIn(octets.subarray(from));
  if (messages.length > 0 && around > 0) problems.push({ kind: 'text around', octets: around });
  if (number === 0) problems.push(nothingIn(octets));
  return { messages, problems };
}

/** Zeros fill up blocks and say nothing. */
function textIn(octets: Uint8Array): number {
  return octets.some((octet) => octet !== 0) ? octets.length : 0;
}

interface Head {
  readonly edition: 1 | 2;
  readonly length: number;
  readonly whole: boolean;
}

/** Null where the mark stands in plain text. A message of no edition known is not whole. */
function headAt(octets: Uint8Array, at: number): Head | null {
  if (at + 16 > octets.length || octets.subarray(at + 4, at + 8).every(isLetter)) return null;
  const edition = octets[at + 7];
  if (edition !== 1 && edition !== 2) return { edition: 2, length: 0, whole: false };
  const length =
    edition === 1
      ? unsigned(octets, at + 4, 3)
      : unsigned(octets, at + 8, 4) * 2 ** 32 + unsigned(octets, at + 12, 4);
  const end = at + length;
  const whole = length >= LEAST[edition] && end <= octets.length && unsigned(octets, end - 4, 4) === END;
  return { edition, length, whole };
}

function isLetter(octet: number): boolean {
  return (octet >= 0x20 && octet < 0x7f) || (octet >= 0x09 && octet <= 0x0d);
}

function nextMark(octets: Uint8Array, from: number): number {
  for (let at = octets.indexOf(MARK[0]!, from); at >= 0; at = octets.indexOf(MARK[0]!, at + 1)) {
    if (MARK.every((letter, i) => octets[at + i] === letter)) return at;
  }
  return -1;
}

function nextWhole(octets: Uint8Array, from: number): number {
  for (let at = nextMark(octets, from); at >= 0; at = nextMark(octets, at + MARK.length)) {
    if (headAt(octets, at)?.whole) return at;
  }
  return -1;
}

/** What keeps a message from being whole: the last of the file may be cut; any may have gone through a transfer meant for text. */
function brokenAt(
  octets: Uint8Array,
  { at, next, number, length }: { at: number; next: number; number: number; length: number },
): FileProblem {
  const rest = octets.subarray(at, next < 0 ? octets.length : next);
  const missing = at + length - octets.length;
  const how = manglingOf(rest, length > rest.length);
  if (how) return { kind: 'mangled', how };
  if (next < 0 && missing > 0 && length <= MOST_OCTETS)
    return { kind: 'cut short', message: number, missing, start: rest };
  return { kind: 'broken message', message: number };
}

function nothingIn(octets: Uint8Array): FileProblem {
  const at = nextMark(octets, 0);
  const how = at >= 0 ? manglingOf(octets.subarray(at), false) : null;
  return how ? { kind: 'mangled', how } : { kind: 'nothing found' };
}
