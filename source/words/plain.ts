/** Letters and signs known to take one column each, so that most texts need no measuring: Latin, the board's own signs, braille. */
const ONE_EACH =
  /^[ -~\u00a1-\u00ac\u00ae-\u024f\u2013\u2014\u2018-\u201d\u2026\u2191\u2193\u2500\u25aa\u25ab\u2800-\u28ff]*$/u;

/** Whether every letter is one of those: a column each, and none of them able to do anything but be seen. */
export function isPlain(text: string): boolean {
  return ONE_EACH.test(text);
}
