/** Where a trouble lies: a file, and in it a line and a path such as `fluids[2].low`. */
export interface Place {
  readonly file: string;
  readonly line?: number;
  readonly path?: string;
  /** The line as it stands in the file, and the columns (from 0) of the value in it. */
  readonly excerpt?: { readonly text: string; readonly from: number; readonly to: number };
}

/** Something wrong with a file, a line or a request that a person can put right. Facts only: `words/troubles.ts` makes the sentences. */
export type Trouble = FolderTrouble | BoatFileTrouble | LogTrouble | RequestTrouble | ForecastTrouble;

/** Folders and files that cannot be had as they should be. */
export type FolderTrouble =
  | { kind: 'no boat folder'; folder: string; near?: string }
  | { kind: 'folder not empty'; folder: string }
  /** A folder for a new boat; nothing of it is left. */
  | { kind: 'cannot make'; folder: string; code: string }
  /** A folder to be merged that is called otherwise than this boat; null where no name can be read. */
  | { kind: 'another boat'; folder: string; name: string | null; ours: string }
  | { kind: 'cannot read'; file: string; code: string }
  | { kind: 'cannot write'; file: string; code: string }
  | { kind: 'read only'; folder: string; code: string }
  | { kind: 'file too large'; file: string; bytes: number; most: number }
  | { kind: 'not a plain file'; file: string }
  /** A log file of which more than so many lines are none: read up to there. */
  | { kind: 'no log'; file: string; lines: number }
  /** A file in log/ whose name is no log file's: a copy made by hand or by a sync program. It is not read. */
  | { kind: 'stray file'; file: string }
  /** A file in forecasts/ that is not one of ours any more. It is not read. */
  | { kind: 'forecast damaged'; file: string; what: string }
  /** The second place named in the preferences cannot take a copy of this boat folder. Nothing was written there. */
  | {
      kind: 'no place for a copy';
      folder: string;
      why: 'not from the root' | 'the boat folder itself' | 'taken';
    }
  /** The copy is not complete; what it had before it still has. Null: the troubles beside this one say why. */
  | { kind: 'not copied'; to: string; code: string | null }
  /** Copied, and found wanting when read again. */
  | { kind: 'copy unsound'; folder: string; lacks: number }
  /** Entries can still be saved, but not for long. */
  | { kind: 'little room'; folder: string; bytes: number }
  /** The disk failed while saving; the entry is safe in a new file, the failed one is not written to again. */
  | { kind: 'disk error'; file: string; code: string };

/** What keeps a text from being JSON. */
export type JsonFault =
  | 'empty'
  | 'comment'
  | 'trailing comma'
  | 'no comma'
  | 'no colon'
  | 'no value'
  | 'no field name'
  | 'other quotes'
  | 'not closed'
  | 'text not closed'
  | 'number'
  | 'escape'
  | 'control character'
  | 'symbol'
  | 'after the end'
  | 'too deep';

/** boat.json: what is written there cannot be used. `near` of a wrong value is what would stand in the file, as JSON. */
export type BoatFileTrouble =
  | { kind: 'not json'; place: Place; what: JsonFault }
  | { kind: 'newer format'; place: Place; found: number; known: number }
  | { kind: 'field missing'; place: Place; field: string; expected: string }
  | { kind: 'wrong value'; place: Place; value: unknown; expected: string; near?: string }
  | { kind: 'misspelt field'; place: Place; field: string; near: string }
  | { kind: 'field twice'; place: Place; field: string; firstLine: number }
  | { kind: 'id twice'; place: Place; id: string; firstLine: number }
  | { kind: 'no such item'; place: Place; id: string; wants: string; near?: string }
  | {
      kind: 'out of order';
      place: Place;
      value: number;
      than: { path: string; value: number };
      unit: string;
      remedy: number | null;
    }
  | { kind: 'legs do not join'; place: Place; gapNm: number }
  | { kind: 'more troubles'; file: string; count: number };

/** The log: lines that cannot be used, or that are missing. None is ever thrown away. */
export type LogTrouble =
  | { kind: 'line cut off'; place: Place; text: string }
  | {
      kind: 'line damaged';
      place: Place;
      how: 'checksum' | 'not json' | 'zeros' | 'too long' | 'values';
      text: string;
    }
  | { kind: 'line edited'; place: Place; text: string }
  | {
      kind: 'lines missing';
      place: Place;
      writer: string;
      from: number;
      to: number;
      why: 'gap' | 'older copy' | 'file gone';
    }
  | { kind: 'chain broken'; place: Place; writer: string; number: number }
  /** A whole line where it does not belong: nothing is missing by it. */
  | { kind: 'line out of place'; place: Place; id: string; how: 'twice' | 'order' | 'other writer' }
  | { kind: 'same id twice'; place: Place; id: string }
  | { kind: 'count leap'; place: Place; lc: number }
  | { kind: 'more damage'; count: number }
  | { kind: 'newer entries'; count: number }
  | { kind: 'unknown item'; entry: string; at: string; item: string; near?: string }
  | {
      kind: 'odd reading';
      entry: string;
      at: string;
      item: string;
      value: number;
      unit: string;
      than: number;
      why:
        | 'meter back'
        | 'meter leapt'
        | 'outside tank'
        | 'more than new'
        | 'count below zero'
        | 'in the future';
    }
  | {
      kind: 'new size unknown';
      entry: string;
      at: string;
      item: string;
      field: 'massKg' | 'diameterMm' | 'lengthMm';
    }
  | { kind: 'clock'; entry: string; at: string; rec: string; why: 'went back' | 'leapt' };

/** A request (arguments, a typed value, an entry) that cannot be carried out. */
export type RequestTrouble =
  | {
      kind: 'unknown word';
      word: string;
      what:
        | 'command'
        | 'option'
        | 'entry kind'
        | 'field'
        | 'item'
        | 'id'
        | 'forecast'
        | 'schema'
        | 'table'
        | 'closed hunt';
      near?: string;
    }
  | { kind: 'wanting'; what: string; example: string }
  /** A thing no table of `trace` is for, with the ids of those that have one. */
  | { kind: 'no table'; item: string; others: readonly string[] }
  | { kind: 'not understood'; field: string; text: string; expected: string; example?: string }
  | { kind: 'wrong entry'; line?: number; field: string; value: unknown; expected: string; near?: string }
  /** An entry that looks wrong, before it is saved: asked about, and saved only on insisting. */
  | {
      kind: 'in doubt';
      line?: number;
      doubt: Extract<LogTrouble, { kind: 'odd reading' | 'unknown item' | 'clock' }>;
    }
  | { kind: 'not saved'; code: string; text: string }
  /** boat.json is no longer what a change was typed over. `field` null: the whole of it is gone. */
  | { kind: 'changed meanwhile'; id: string; field: string | null }
  /** A part that cannot go, since others name it: their names, and the field each does it in. */
  | { kind: 'still named'; name: string; by: readonly { name: string; field: string }[] };

/** A forecast that cannot be taken in as it was given. */
export type ForecastTrouble =
  | { kind: 'forecast empty' }
  | { kind: 'forecast too long'; bytes: number; most: number }
  | { kind: 'foreign file'; what: string }
  /** A text or table in which nothing of wind or seas was understood. */
  | { kind: 'no figures' }
  | { kind: 'not a forecast'; subjects: readonly string[] }
  | { kind: 'no such zone'; zone: string; zones: readonly string[] }
  | { kind: 'zone wanted'; zones: readonly string[] }
  | { kind: 'issue time wanted' }
  | { kind: 'direction wanted'; row: number; text: string; choices: readonly string[] }
  | { kind: 'forecast over'; ended: string; now: string }
  | { kind: 'row not understood'; row: number; text: string; word: string }
  | { kind: 'row says two'; row: number; text: string; what: string; first: string; second: string }
  | { kind: 'nothing above'; row: number }
  | { kind: 'too many rows'; rows: number; most: number }
  /** A JSON or CSV table: where in it, what stands there and what is expected. */
  | { kind: 'table not understood'; where: string; found: string; expected: string }
  /** A GRIB in which no wind or sea is read: what it holds instead, why that is not read, what is broken. */
  | { kind: 'nothing of use'; found: readonly string[] }
  /** Nothing of the passage lies on the grids of a GRIB; each as its corners. */
  | { kind: 'outside the grid'; areas: readonly string[] };

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly troubles: readonly Trouble[] };

export function good<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function bad(...troubles: readonly Trouble[]): Result<never> {
  return { ok: false, troubles };
}

/** Stops the program at a bug: what must hold does not. */
export function assert(holds: unknown, what: string): asserts holds {
  if (!holds) throw new Error(`a fault in hoveshort: ${what}`);
}
