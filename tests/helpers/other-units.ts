/** What is said in litres, knots, metres, UTC or by the 24 h clock: for who prefers others. */
export function otherUnits(text: string): string[] {
  return text
    .split('\n')
    .filter((one) => OTHERS.some((other) => other.test(one)) && !AS_IT_IS.some((own) => own.test(one)))
    .map((one) => one.trim());
}

const OTHERS = [
  /\d (?:L|kn|m)\b(?!\/)/u,
  /\b(?:litres?|knots?|metres)\b(?! a second)/iu,
  /\bUTC\b/u,
  /\b[0-2]?\d:[0-5]\d\b(?!:)/u,
];

/** Ways to type something, shown as such; a note of the owner's. */
const AS_IT_IS = [
  /\b(?:type|such as|will do|not understood|1\.2-2m)\b|at="today 07:40"/u,
  /^\s*Sounding stick marked every 5 litres\.\s*$/u,
];
