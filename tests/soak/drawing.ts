import { stream } from '../../source/maths/stream.ts';
import { clean, cleanLine } from '../../source/words/clean.ts';
import { anOutcome, type Campaign, found } from './campaign.ts';

/** What no terminal may be sent from outside: controls, bidi, hidden, private and unassigned characters, halves, separators. */
const FORBIDDEN =
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\p{Bidi_Control}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]|(?!\u200d)\p{Cf}/u;
const PIECES = [
  '\u001b[2J',
  '\u001b]0;title\u0007',
  '\u001b]8;;http://x\u001b\\',
  '\u009b31m',
  '\u0090q',
  '\u202e',
  '\u2066',
  '\u200f',
  '\u061c',
  '\u200b',
  '\ufeff',
  '\u00ad',
  '\ue000',
  '\u{e0041}',
  '\u{50000}',
  '\u2028',
  '\r',
  '\b',
  '\u007f',
  '\ud800',
  '\udc00',
  '\u0301',
  '\ufe0f',
  '\u{1f1e6}',
  '\u1100',
  '\u0e33',
  '\u0d4e',
  '\u0600',
  '\u0915\u094d',
  '👩\u200d🔧',
  '🏽',
  'é',
  'a',
  ' ',
  '\n',
  '\t',
  '燈',
];
const mostPieces = 30;

/** Hostile texts by chance through the drawing filter, on one line and on several. */
export const drawingFilter: Campaign = {
  name: 'drawing filter on hostile texts',
  count: 200_000,
  async run(count, seed) {
    const outcome = anOutcome();
    const chance = stream(seed, 'drawing').uniform;
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      const text = Array.from({ length: Math.floor(chance() * mostPieces) }, () =>
        chance() < 0.8
          ? PIECES[Math.floor(chance() * PIECES.length)]!
          : String.fromCodePoint(Math.floor(chance() * 0x110000)),
      ).join('');
      const [drawn, line] = [clean(text, 60), cleanLine(text, 60)];
      if (FORBIDDEN.test(drawn) || FORBIDDEN.test(line) || line.includes('\n'))
        found(outcome, 'undetected', JSON.stringify(text));
    }
    return outcome;
  },
};
