import { createScanner, type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import type { JsonFault } from '../trouble.ts';

/** The parser calls itself for each level, and a boat file needs seven. */
const DEEPEST = 64;

export interface Syntax {
  /** Absent where the text holds nothing that can be looked at further. */
  readonly tree?: Node;
  readonly faults: readonly SyntaxFault[];
}

interface SyntaxFault {
  readonly offset: number;
  readonly length: number;
  readonly what: JsonFault;
}

/** Reads strict JSON with the place of every value. The tree is there in spite of faults where they leave no doubt what is meant. Never throws. */
export function readSyntax(text: string): Syntax {
  const tooDeep = firstTooDeep(text);
  if (tooDeep) return { faults: [tooDeep] };
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  const faults = firstOfEachLine(
    text,
    errors.map((error) => faultOf(text, error)),
  );
  const clear = faults.every((fault) => MEANING_CLEAR.has(fault.what));
  return tree && clear ? { tree, faults } : { faults };
}

const MEANING_CLEAR: ReadonlySet<JsonFault> = new Set(['comment', 'trailing comma', 'no comma']);

function firstTooDeep(text: string): SyntaxFault | null {
  const scanner = createScanner(text, true);
  let depth = 0;
  // By its offset: after a comment left open the scanner's last token never has the length 0.
  for (scanner.scan(); scanner.getTokenOffset() < text.length; scanner.scan()) {
    const first = text.charAt(scanner.getTokenOffset());
    if (first === '{' || first === '[') depth += 1;
    if (first === '}' || first === ']') depth -= 1;
    if (depth > DEEPEST) return { offset: scanner.getTokenOffset(), length: 1, what: 'too deep' };
  }
  return null;
}

function faultOf(text: string, { error, offset, length }: ParseError): SyntaxFault {
  return { offset, length, what: whatIsWrong(text, error, offset) };
}

function whatIsWrong(text: string, error: ParseError['error'], offset: number): JsonFault {
  switch (printParseErrorCode(error)) {
    case 'InvalidCommentToken':
      return leftOpen(text, offset) ? 'not closed' : 'comment';
    case 'UnexpectedEndOfComment':
    case 'CloseBraceExpected':
    case 'CloseBracketExpected':
      return 'not closed';
    case 'CommaExpected':
      return startsNumber(text, offset - 1) && startsNumber(text, offset) ? 'number' : 'no comma';
    case 'ColonExpected':
      return 'no colon';
    case 'PropertyNameExpected':
      return missing(text, 'no field name', offset);
    case 'ValueExpected':
      return missing(text, 'no value', offset);
    case 'EndOfFileExpected':
      return 'after the end';
    case 'UnexpectedEndOfString':
      return 'text not closed';
    case 'UnexpectedEndOfNumber':
    case 'InvalidNumberFormat':
      return 'number';
    case 'InvalidUnicode':
    case 'InvalidEscapeCharacter':
      return 'escape';
    case 'InvalidCharacter':
      return 'control character';
    case 'InvalidSymbol':
    case '<unknown ParseErrorCode>':
      return symbol(text, offset);
  }
}

function leftOpen(text: string, comment: number): boolean {
  return text.startsWith('/*', comment) && !text.includes('*/', comment + 2);
}

function missing(text: string, what: 'no field name' | 'no value', offset: number): JsonFault {
  if (text.trim() === '') return 'empty';
  if (text.slice(offset).trim() === '') return 'not closed';
  const closes = text.charAt(offset) === '}' || text.charAt(offset) === ']';
  return closes && lastBefore(text, offset) === ',' ? 'trailing comma' : what;
}

function symbol(text: string, offset: number): JsonFault {
  const first = text.charAt(offset);
  if (/['`\u2018-\u201f]/.test(first)) return 'other quotes';
  if (startsNumber(text, offset)) return 'number';
  return 'symbol';
}

function startsNumber(text: string, offset: number): boolean {
  return /[0-9.+-]/.test(text.charAt(offset));
}

function lastBefore(text: string, offset: number): string {
  let at = offset - 1;
  while (at >= 0 && /\s/.test(text.charAt(at))) at -= 1;
  return text.charAt(at);
}

/** One slip makes the parser complain several times; the first on a line is the one a person made. */
function firstOfEachLine(text: string, faults: readonly SyntaxFault[]): readonly SyntaxFault[] {
  const kept: SyntaxFault[] = [];
  let end = -1;
  for (const fault of [...faults].sort((a, b) => a.offset - b.offset)) {
    const follows = kept.length > 0 && fault.offset === text.length;
    if (fault.offset < end || follows) continue;
    kept.push(fault);
    const lineEnd = text.indexOf('\n', fault.offset);
    end = lineEnd < 0 ? text.length + 1 : lineEnd + 1;
  }
  return kept;
}
