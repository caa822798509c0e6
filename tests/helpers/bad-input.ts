/** What fingers, cats and clipboards put into a field, by name. */
export const BAD_INPUT: readonly (readonly [what: string, text: string])[] = [
  ['nothing', ''],
  ['letters', 'abc'],
  ['1e9', '1e9'],
  ['-1', '-1'],
  ['a great number', '99999999999999999999'],
  ['control characters', '\u0007\u001b[2J\u0000\u0085'],
  ['a pasted page', 'a line of some length\r\n'.repeat(400)],
  ['wide letters', '\u5e06\u8239'.repeat(60)],
  ['right-to-left text', '\u05e1\u05d9\u05e8\u05d4 \u202e12'],
];
