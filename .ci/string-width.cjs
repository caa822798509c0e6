// Bundled in place of the package of that name, also for Ink: it is only set up for texts that want it, which takes a tenth of a start.
const { isPlain } = require('../source/words/plain.ts');

/** Colours and weights, as the board's own lines have them: they take no room. */
const STYLES = /\u001b\[[\d;]*m/g;
let measure = null;

module.exports = (text, options) => {
  if (isPlain(text)) return text.length;
  if (!options?.countAnsiEscapeCodes) {
    const bare = text.replace(STYLES, '');
    if (isPlain(bare)) return bare.length;
  }
  measure ??= require('../node_modules/string-width/index.js').default;
  return measure(text, options);
};
