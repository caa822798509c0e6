import { readSyntax } from '../boat/syntax.ts';
import type { NewFolder, Outside } from '../outside.ts';
import { bad, good, type Result } from '../trouble.ts';
import { cleanLine } from '../words/clean.ts';
import { wrapped } from '../words/lines.ts';
import type { NewBoat } from '../words/new-boat.ts';
import { verdictPage } from '../words/page.ts';
import { counted } from '../words/say.ts';
import { answerFor } from './answer-for.ts';
import { beginBoat } from './begin-boat.ts';
import type { Command, Request } from './command.ts';
import { answersFrom, interview, questionFields } from './interview.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';

const MOST_INPUT_BYTES = 1024 * 1024;
const INPUT = 'standard input';

export const newBoat: Command = {
  word: 'new',
  takes: '<folder> [-]',
  says: 'begins a boat folder from a short interview; with - from answers as JSON',
  /** Made when asked for: it takes every template. */
  get more() {
    return [
      'An empty answer takes what stands in brackets; q or Ctrl+D leaves, and nothing is written.',
      'Levels, hours and looks have no default: what nobody looked at is not entered.',
      '--yes asks for her name only.',
      'new <folder> - reads one {"field": answer, ...} from standard input, answers as they are typed. The fields:',
      ...wrapped(questionFields().join(', '), 76, 2),
    ];
  },
  example: 'hoveshort new ~/whimbrel',
  options: ['yes'],
  async run(request, outside) {
    const { words, options } = request;
    const [folder, dash] = words;
    if (folder === undefined || folder === '-')
      return complainOf([{ kind: 'wanting', what: 'a folder', example: newBoat.example }], outside);
    if (words.length > 2 || (dash !== undefined && dash !== '-')) {
      const text = words.slice(1).join(' ');
      return complainOf(
        [{ kind: 'not understood', field: 'new', text, expected: 'one folder, and - for answers as JSON' }],
        outside,
      );
    }
    const place = await outside.newBoat(folder);
    if (!place.ok) return complainOf(place.troubles, outside);
    const answered =
      dash === '-' ? await answersPiped(request, outside) : await answersAsked(request, outside);
    if (!answered.ok) {
      const status = complainOf(answered.troubles, outside);
      return dash === '-' ? STATUS.data : status;
    }
    if (answered.value === null) {
      outside.complain('left; nothing was written\n');
      return STATUS.cannotCreate;
    }
    return await make(
      answered.value,
      { place: place.value, now: options.at ?? outside.now(), request },
      outside,
    );
  },
};

/** Null: the person left. */
async function answersAsked({ options }: Request, outside: Outside): Promise<Result<NewBoat | null>> {
  const now = options.at ?? outside.now();
  if (!options.yes && outside.terminal.interactive)
    outside.complain(
      'What stands in brackets is taken where nothing is typed. q leaves; nothing is written before the end.\n',
    );
  const boat = await interview(outside, { now, onlyNeeded: options.yes });
  if (boat !== null || outside.terminal.interactive) return good(boat);
  const example = `echo '{"name": "Whimbrel"}' | hoveshort new <folder> -`;
  return bad({ kind: 'wanting', what: 'somebody to answer', example });
}

async function answersPiped({ options }: Request, outside: Outside): Promise<Result<NewBoat>> {
  const input = await outside.input(MOST_INPUT_BYTES);
  if (!input.ok) return input;
  const text = new TextDecoder().decode(input.value).replace(/^\ufeff/, '');
  const value = jsonOf(text);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const fault = readSyntax(text).faults[0];
    if (fault) return bad({ kind: 'not json', place: { file: INPUT }, what: fault.what });
    const expected = 'one {"field": answer, ...}';
    return bad({ kind: 'wrong entry', line: 1, field: INPUT, value, expected });
  }
  const clock = { now: options.at ?? outside.now(), zone: outside.zone };
  return answersFrom(value as { readonly [field: string]: unknown }, clock);
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

interface Making {
  readonly place: NewFolder;
  readonly now: number;
  readonly request: Request;
}

/** Writes the folder, then shows what it comes to. What would be in trouble once it is there is not written at all. */
async function make(answered: NewBoat, { place, now, request }: Making, outside: Outside): Promise<number> {
  const begun = await beginBoat(answered, { place, now }, outside);
  if (!begun.ok) return complainOf(begun.troubles, outside);
  const { file, saved } = begun.value;
  if (request.options.json) {
    outside.print(jsonText({ format: 1, boat: file.name, folder: place.path, saved }));
    return STATUS.done;
  }
  const { columns } = outside.terminal;
  const entries = counted(saved.length, 'entry', 'entries');
  const said = [
    `saved: ${cleanLine(file.name)} in ${cleanLine(place.path, 300)}: boat.json, and ${entries} in her log`,
    ...wrapped(
      'What was not asked stands in boat.json at its default, with a note of where it comes from. Change there what is otherwise aboard.',
      columns,
    ),
  ];
  const read = await outside.boat(place.path).read();
  if (!read.ok) return complainOf(read.troubles, outside);
  const { document } = answerFor(read.value, { ...request.options, at: now });
  outside.print(`${said.join('\n')}\n\n${verdictPage(document, columns, outside.zone)}`);
  return STATUS.done;
}
