import { createHash } from 'node:crypto';
import { crc32 } from 'node:zlib';
import { readBoat } from '../../source/boat/read.ts';
import { type Forecast, forecastFileName } from '../../source/forecast/forecast.ts';
import type { Draft, Entry } from '../../source/logbook/entries.ts';
import { readLine, writeLine } from '../../source/logbook/line.ts';
import { foldLog } from '../../source/logbook/order.ts';
import { lineVersion } from '../../source/logbook/upgrades.ts';
import type { BoatFolder, LoadedBoat, Outside, Settings, Terminal } from '../../source/outside.ts';
import { readTable } from '../../source/tracing/read-table.ts';
import { bad, good, type Result, type Trouble } from '../../source/trouble.ts';
import { decodeJpeg2000 } from './jpeg-2000.ts';

const WRITER = 'aaaaaaaa';

/** A boat folder in memory: the text of its boat.json, and its log as the lines of one writer. */
export interface FolderInMemory {
  readonly boatText: string;
  readonly lines: Uint8Array[];
  readonly readOnly: Trouble | null;
  /** The code of a disk that fails when saving. */
  readonly failing: string | null;
  /** Taken in, by file name. */
  readonly forecasts: Map<string, Forecast>;
  /** The owner's tables, as text by file name. */
  readonly tracing: { readonly [name: string]: string };
}

export interface Written {
  readonly out: string;
  readonly err: string;
}

/** Tuesday 3 February 2026, 07:40 UTC. */
export const NOW = Date.UTC(2026, 1, 3, 7, 40);

/** A folder with this boat file and these entries, saved one after the other as they would be on a disk. */
export function aFolder(
  boatFile: object | string,
  drafts: readonly Draft[] = [],
  more: Partial<FolderInMemory> = {},
): FolderInMemory {
  const boatText = typeof boatFile === 'string' ? boatFile : JSON.stringify(boatFile, null, 2);
  const folder = {
    boatText,
    lines: [],
    readOnly: null,
    failing: null,
    forecasts: new Map(),
    tracing: {},
    ...more,
  };
  for (const draft of drafts) save(folder, [draft], Date.parse(draft.at));
  return folder;
}

/** All the program asks of the world, in memory: folders by path, a clock that stands still, and what was printed kept as text. */
export function anOutside(given: {
  folders?: { readonly [path: string]: FolderInMemory };
  now?: number;
  input?: string;
  files?: { readonly [path: string]: Uint8Array };
  /** What is answered to questions, in order; then nobody is there to ask. */
  answers?: readonly string[];
  settings?: Partial<Settings>;
  terminal?: Partial<Terminal>;
}): Outside & { written(): Written; readonly remembered: object[]; readonly questions: string[] } {
  let out = '';
  let err = '';
  const remembered: object[] = [];
  const questions: string[] = [];
  const folders = new Map(Object.entries(given.folders ?? {}));
  const answers = [...(given.answers ?? [])];
  const now = given.now ?? NOW;
  return {
    now: () => now,
    zone: 'UTC',
    print: (text) => {
      out += text;
    },
    complain: (text) => {
      err += text;
    },
    input: async (mostBytes) => {
      const text = given.input ?? '';
      return text.length <= mostBytes
        ? good(new TextEncoder().encode(text))
        : bad({ kind: 'file too large', file: 'standard input', bytes: text.length, most: mostBytes });
    },
    file: async (path) => {
      const bytes = given.files?.[path];
      return bytes ? good(bytes) : bad({ kind: 'cannot read', file: path, code: 'ENOENT' });
    },
    ask: async (question) => {
      questions.push(question);
      return answers.shift() ?? null;
    },
    decodeJpeg2000,
    sha256: (bytes) => createHash('sha256').update(bytes).digest('hex'),
    boat: (path) => folderAt(path, folders.get(path), now),
    newBoat: async (folder) =>
      folders.has(folder)
        ? bad({ kind: 'folder not empty', folder })
        : good({
            path: folder,
            fill: async (boatText, drafts) => {
              const made = aFolder(boatText);
              folders.set(folder, made);
              return good(save(made, drafts, now));
            },
          }),
    sample: async () => good('sample'),
    settings: async () => ({
      lastBoat: null,
      name: null,
      palette: 'day',
      backup: null,
      checkedCopies: [],
      zone: null,
      volume: 'litres',
      height: 'm',
      wind: 'kn',
      clock: '24 h',
      ...given.settings,
      set: async (change) => void remembered.push(change),
    }),
    terminal: {
      interactive: false,
      columns: 80,
      colour: false,
      utf8: true,
      screenReader: false,
      ...given.terminal,
    },
    written: () => ({ out, err }),
    remembered,
    questions,
  };
}

function folderAt(path: string, folder: FolderInMemory | undefined, now: number): BoatFolder {
  return {
    path,
    read: async () => (folder ? load(folder) : bad({ kind: 'no boat folder', folder: path })),
    append: async (drafts) => {
      if (!folder) return bad({ kind: 'no boat folder', folder: path });
      const text = drafts.map((draft) => JSON.stringify(draft)).join('\n');
      if (folder.failing !== null) return bad({ kind: 'not saved', code: folder.failing, text });
      return good(save(folder, drafts, now));
    },
    changeBoat: async () => bad({ kind: 'no boat folder', folder: path }),
    keepForecast: async (forecast) => {
      if (!folder) return bad({ kind: 'no boat folder', folder: path });
      folder.forecasts.set(forecastFileName(forecast), forecast);
      return good(`forecasts/${forecastFileName(forecast)}`);
    },
    tables: async () => tablesIn(folder),
    accept: async () => bad({ kind: 'no boat folder', folder: path }),
    merge: async () => bad({ kind: 'no boat folder', folder: path }),
    copyTo: async () => bad({ kind: 'no boat folder', folder: path }),
    watch: () => () => {},
  };
}

function tablesIn(folder: FolderInMemory | undefined) {
  const read = Object.entries(folder?.tracing ?? {}).map(([name, text]) =>
    readTable(text, `tracing/${name}`),
  );
  return {
    tables: read.flatMap((one) => (one.ok ? [one.value] : [])),
    troubles: read.flatMap((one) => (one.ok ? [] : one.troubles)),
  };
}

function load(folder: FolderInMemory): Result<LoadedBoat> {
  const boat = readBoat(folder.boatText, 'boat.json');
  if (!boat.ok) return boat;
  const lines = folder.lines.map((bytes) => readLine(bytes, crc32));
  const { entries, struck, said, quiet } = foldLog([{ name: `log/${WRITER}.ndjson`, writer: WRITER, lines }]);
  return good({
    boat: boat.value,
    entries,
    struck,
    troubles: said,
    quiet,
    forecasts: [...folder.forecasts.values()],
    readOnly: folder.readOnly,
  });
}

function save(folder: FolderInMemory, drafts: readonly Draft[], now: number): readonly Entry[] {
  return drafts.map(({ kind, at, by, key, ...fields }) => {
    const n = folder.lines.length + 1;
    const before = folder.lines.at(-1);
    const p = before ? new TextDecoder().decode(before).slice(-10, -2) : '00000000';
    const frame = { v: lineVersion, id: `${WRITER}-${n}`, p, lc: n };
    const rec = new Date(now).toISOString();
    const { bytes } = writeLine({ ...frame, at, rec, by, kind, key, ...fields }, crc32);
    folder.lines.push(bytes.subarray(0, -1));
    const line = readLine(bytes.subarray(0, -1), crc32);
    if (line.how !== 'entry') throw new Error(`a test entry that cannot be read: ${line.how}`);
    return line.frame;
  });
}
