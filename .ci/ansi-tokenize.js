// Bundled in place of the package of that name, for Ink: it takes every line apart at every frame, though most are those of the frame before.
import {
  styledCharsFromTokens as styled,
  tokenize as takenApart,
} from '../node_modules/@alcalzone/ansi-tokenize/build/index.js';

export { styledCharsToString } from '../node_modules/@alcalzone/ansi-tokenize/build/index.js';

/** Some pages of a large window. */
const MOST_LINES = 500;
const tokensOf = new Map();
const charsOf = new WeakMap();

export function tokenize(text) {
  const known = tokensOf.get(text);
  if (known) return known;
  if (tokensOf.size >= MOST_LINES) tokensOf.clear();
  const tokens = takenApart(text);
  tokensOf.set(text, tokens);
  return tokens;
}

export function styledCharsFromTokens(tokens) {
  const known = charsOf.get(tokens);
  if (known) return known;
  const chars = styled(tokens);
  charsOf.set(tokens, chars);
  return chars;
}
