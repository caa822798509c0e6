/** Control sequences of terminals: they colour, move and write over. */
const SEQUENCES =
  /\u001b\[[0-9;?]{0,40}[ -/]{0,5}[@-~]|\u001b\][^\u0007\u001b]{0,500}(?:\u0007|\u001b\\)|\u001b[@-Z\\-_]/g;
/** Controls but tab and line feed, marks that turn the direction of writing, and marks without width. */
const CONTROLS =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/g;

/** A text without anything that could move a cursor, and whether there was such a thing. Each leaves a blank, so that no two figures become one. */
export function plainText(text: string): { readonly text: string; readonly cleaned: boolean } {
  const lines = text.replace(/^\ufeff/, '').replace(/\r+\n|\r/g, '\n');
  const clean = lines.replace(SEQUENCES, ' ').replace(CONTROLS, ' ');
  return { text: clean, cleaned: clean !== lines };
}

/**
 * Text from bytes: UTF-16 by its mark, else UTF-8; what is no UTF-8 is read as Latin 1, as old receivers write. The start of a text may end within a
 * character.
 */
export function decoded(bytes: Uint8Array, part: 'whole' | 'start' = 'whole'): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: part === 'start' });
  } catch {
    return new TextDecoder('latin1').decode(bytes);
  }
}
