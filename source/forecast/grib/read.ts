import { productAt, readEdition1 } from './edition1.ts';
import { readEdition2 } from './edition2.ts';
import type { Field } from './field.ts';
import type { Grid } from './grid.ts';
import { type FileProblem, type Message, messagesIn } from './messages.ts';
import { Refused, type Why } from './refused.ts';

/** A GRIB file by its headers; `decode` gives a field's values. */
export interface GribFile {
  /** Every field that can be read, of use or not, in the order of the file. */
  readonly messages: readonly Field[];
  readonly problems: readonly GribProblem[];
  /** What is not taken, with the reason; fields alike are counted together. */
  readonly skipped: readonly Skipped[];
}

/** A message cut short tells what it was of, where its headers came through. */
export type GribProblem = FileProblem & { readonly of?: Heading | null };

export type Heading = Pick<Field, 'parameter' | 'from' | 'member'>;

export interface Skipped {
  /** The parameter, where its header could be read; else empty. */
  readonly what: string;
  readonly why: Why;
  readonly fields: number;
  /** The first of them. */
  readonly message: number;
}

/** More fields than any boat asks for. */
const MOST_FIELDS = 20_000;

/** Reads the headers of all messages in any bytes. Never throws for what the bytes hold. */
export function readGrib(octets: Uint8Array): GribFile {
  const { messages, problems } = messagesIn(octets);
  const fields: Field[] = [];
  const skipped = new Map<string, Skipped>();
  const skip = (message: number, what: string, why: Why) => {
    const key = `${what}/${why.kind}/${why.name}`;
    const before = skipped.get(key);
    skipped.set(key, before ? { ...before, fields: before.fields + 1 } : { what, why, fields: 1, message });
  };
  const grids = new Map<string, Grid>();
  for (const message of messages) {
    if (fields.length >= MOST_FIELDS) {
      skip(message.number, '', { kind: 'too many', name: `fields beyond ${MOST_FIELDS}` });
      continue;
    }
    const read = fieldsOf(message);
    for (const field of read.fields) {
      fields.push({ ...field, grid: shared(grids, field.grid) });
      if (field.unused) skip(message.number, field.parameter.name, field.unused);
    }
    for (const { what, why } of read.refused) skip(message.number, what, why);
  }
  const told = problems.map((problem) =>
    problem.kind === 'cut short' ? { ...problem, of: headingOf(problem.start) } : problem,
  );
  return { messages: fields, problems: told, skipped: [...skipped.values()] };
}

function fieldsOf({ edition, octets, number }: Message): {
  readonly fields: readonly Field[];
  readonly refused: readonly { readonly what: string; readonly why: Why }[];
} {
  try {
    if (edition === 2) return readEdition2(octets, number);
    return { fields: [readEdition1(octets, number)], refused: [] };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return { fields: [], refused: [{ what: '', why: error.why }] };
  }
}

/** What the start of a message says it is of. */
function headingOf(start: Uint8Array): Heading | null {
  try {
    return start[7] === 1 ? productAt(start, 0) : readEdition2(start, 0).unfinished;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return null;
  }
}

/** Grids alike become one object, so that what is worked out for one serves all. */
function shared(grids: Map<string, Grid>, grid: Grid): Grid {
  const key = JSON.stringify(grid);
  const known = grids.get(key);
  if (known) return known;
  grids.set(key, grid);
  return grid;
}
