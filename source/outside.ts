import type { Boat } from './boat/boat.ts';
import type { BoatChange } from './boat/change.ts';
import type { Forecast } from './forecast/forecast.ts';
import type { DecodeJpeg2000 } from './forecast/grib/jpeg2000.ts';
import type { Draft, Entry } from './logbook/entries.ts';
import type { Table } from './tracing/table.ts';
import type { LogTrouble, Place, Result, Trouble } from './trouble.ts';

/** All the program needs from the world. `main.tsx` builds the real one, tests hand in their own. */
export interface Outside {
  /** The clock, ms since 1970 UTC. */
  now(): number;
  /** The person's zone, as an IANA name. */
  readonly zone: string;
  print(text: string): void;
  complain(text: string): void;
  /** All of standard input, or a trouble when it is larger than `mostBytes`. */
  input(mostBytes: number): Promise<Result<Uint8Array>>;
  /** All of a plain file, or a trouble when it is larger than `mostBytes` or cannot be read. */
  file(path: string, mostBytes: number): Promise<Result<Uint8Array>>;
  /** Asks on the terminal; null where there is nobody to ask. */
  ask(question: string): Promise<string | null>;
  /** Decodes JPEG 2000, for the forecast files that are packed by it. */
  readonly decodeJpeg2000: DecodeJpeg2000;
  /** SHA-256, 64 hexadecimal digits. */
  sha256(bytes: Uint8Array): string;
  /** A boat folder: read it and write to its log. Never throws for what a person can put right. */
  boat(folder: string): BoatFolder;
  /** A place for a new boat folder, or why there can be none. Nothing is made yet. */
  newBoat(folder: string): Promise<Result<NewFolder>>;
  /** A fresh copy of the sample boat with its dates moved so that its last entry is this morning. Returns its folder. */
  sample(): Promise<Result<string>>;
  /** The preferences, read at the first asking. */
  settings(): Promise<Settings>;
  readonly terminal: Terminal;
}

export interface NewFolder {
  /** From the root, so that it is found again from anywhere. */
  readonly path: string;
  /** Makes the folder with this boat.json and these first entries: all of it, or nothing. */
  fill(boatText: string, drafts: readonly Draft[]): Promise<Result<readonly Entry[]>>;
}

export interface BoatFolder {
  /** From the root, so that it is found again from anywhere. */
  readonly path: string;
  /** Reads boat.json and the whole log. A boat file that cannot be used is not ok; damage in the log comes as troubles beside what is sound. */
  read(): Promise<Result<LoadedBoat>>;
  /** Saves entries at the end of this laptop's file, all or none. Ok only when they are on the disk. */
  append(drafts: readonly Draft[]): Promise<Result<readonly Entry[]>>;
  /** Changes boat.json as it stands on the disk. What would be in trouble is not written. */
  changeBoat(change: BoatChange): Promise<Result<null>>;
  /** Takes a forecast in; the same one again changes nothing. Returns the file. */
  keepForecast(forecast: Forecast): Promise<Result<string>>;
  /** The owner's own tables for `trace`, and what is wrong with those that cannot be used. */
  tables(): Promise<OwnTables>;
  /** Takes lines of the log that were changed by hand in again, as new entries. */
  accept(): Promise<Result<Accepted>>;
  /** Takes everything another copy of the boat folder has into this one; nothing is changed over there. A copy of `anyName` may be called otherwise. */
  merge(from: string, anyName: boolean): Promise<Result<Merged>>;
  /** Copies the folder into the folder `place`, which must be there, and reads the copy to check it. Ok only where all that is here was found there. */
  copyTo(place: string): Promise<Result<CheckedCopy>>;
  /** Calls back when the folder's log has changed on the disk; returns how to stop. */
  watch(changed: () => void): () => void;
}

export interface OwnTables {
  readonly tables: readonly Table[];
  readonly troubles: readonly Trouble[];
}

export interface LoadedBoat {
  readonly boat: Boat;
  /** In the order of `logbook/order.ts`, strikes applied, each `key` once. */
  readonly entries: readonly Entry[];
  /** Withdrawn by a strike; shown in the log, left out of every sum. */
  readonly struck: readonly Entry[];
  readonly troubles: readonly Trouble[];
  /** Lines that were never confirmed, or have been accepted since: for `inspect` only, nothing is missing by them. */
  readonly quiet: readonly LogTrouble[];
  /** Taken in, the newest issued last. */
  readonly forecasts: readonly Forecast[];
  /** Null when entries can be saved; else what stands in the way, to be said before typing. */
  readonly readOnly: Trouble | null;
}

/** What became of the lines changed by hand that had not been taken in yet. */
export interface Accepted {
  readonly taken: readonly { readonly place: Place; readonly entry: Entry }[];
  /** Those that are no entry as they stand, each with why. */
  readonly refused: readonly {
    readonly place: Place;
    readonly text: string;
    readonly troubles: readonly Trouble[];
  }[];
}

/** What a merge did with one file of the log. */
export interface MergedFile {
  readonly name: string;
  /** `longer`: theirs was ours and more, and took its place. `united`: the two had gone different ways. */
  readonly how: 'new' | 'longer' | 'united' | 'same' | 'ours longer';
}

export interface Merged {
  readonly files: readonly MergedFile[];
  /** The forecasts taken over, by file name. */
  readonly forecasts: readonly string[];
  /** Their boat.json is not ours. It is never touched. */
  readonly boatDiffers: boolean;
  /** Something of the log or of the forecasts is here and not over there. */
  readonly theyLack: boolean;
  /** What could not be read or written. All else is merged nevertheless, and merging again takes in the rest. */
  readonly troubles: readonly Trouble[];
}

export interface CheckedCopy {
  /** The boat folder and its copy, from the root. */
  readonly from: string;
  readonly to: string;
  /** So many are here, and all of them there. */
  readonly entries: number;
  /** So many are there and not here. */
  readonly more: number;
}

/** When a boat folder was last copied to a place, and the copy found sound. */
export interface CopyMade {
  readonly boat: string;
  readonly place: string;
  /** An instant, ISO 8601. */
  readonly at: string;
}

export const VOLUMES = ['litres', 'US', 'imperial'] as const;
export const HEIGHTS = ['m', 'ft'] as const;
export const WINDS = ['kn', 'm/s'] as const;
export const CLOCKS = ['24 h', '12 h'] as const;

/** The units a person reads and types. Files and JSON know nothing of them. */
export interface Preferred {
  readonly volume: (typeof VOLUMES)[number];
  readonly height: (typeof HEIGHTS)[number];
  readonly wind: (typeof WINDS)[number];
  readonly clock: (typeof CLOCKS)[number];
}

/** A person's preferences, kept outside the boat folder. */
export interface Settings extends Preferred {
  readonly lastBoat: string | null;
  readonly name: string | null;
  readonly palette: 'day' | 'night' | 'plain';
  /** The folder into which a boat folder is copied when the board is left; null: nowhere. */
  readonly backup: string | null;
  /** The last of each boat. */
  readonly checkedCopies: readonly CopyMade[];
  /** An IANA name in the place of the machine's zone; null takes that. */
  readonly zone: string | null;
  set(change: Preferences): Promise<void>;
}

/** What a person can set; absent stays as it is. */
type Preferences = {
  readonly [field in keyof Omit<Settings, 'set'>]?: Settings[field];
};

export interface Terminal {
  /** Standard input and output are both a terminal that can hold a screen. */
  readonly interactive: boolean;
  readonly columns: number;
  readonly colour: boolean;
  readonly utf8: boolean;
  readonly screenReader: boolean;
}
