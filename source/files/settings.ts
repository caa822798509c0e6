import fs from 'node:fs';
import path from 'node:path';
import type Conf from 'conf';
import { CLOCKS, type CopyMade, HEIGHTS, type Settings, VOLUMES, WINDS } from '../outside.ts';
import { codeOf, realDisk } from './disk.ts';

type Preferences = Readonly<Record<string, unknown>>;

/** A file of preferences is some hundred bytes; far beyond this it is another one by the same name. */
const mostBytes = 64 * 1024;
const mostTextLength = 1000;

/**
 * A person's preferences, one small JSON file in `folder`, read when first asked for. Fields this version does not know survive. They are a convenience:
 * a file that cannot be read or written stops nothing, and one that is damaged is set aside under another name, never wiped.
 */
export function settingsIn(folder: string): () => Promise<Settings> {
  let settings: Promise<Settings> | null = null;
  return () => {
    settings ??= Promise.resolve(openSettings(folder));
    return settings;
  };
}

function openSettings(folder: string): Settings {
  const file = path.join(folder, 'preferences.json');
  let held: Preferences = attempt(() => readOrSetAside(file)) ?? {};
  return {
    get lastBoat() {
      return textOf(held.lastBoat);
    },
    get name() {
      return textOf(held.name);
    },
    get backup() {
      return textOf(held.backup);
    },
    get checkedCopies() {
      return Array.isArray(held.checkedCopies) ? held.checkedCopies.filter(isCopyMade) : [];
    },
    get palette() {
      const { palette } = held;
      return palette === 'night' || palette === 'plain' ? palette : 'day';
    },
    get volume() {
      return oneOf(VOLUMES, held.volume);
    },
    get height() {
      return oneOf(HEIGHTS, held.height);
    },
    get wind() {
      return oneOf(WINDS, held.wind);
    },
    get clock() {
      return oneOf(CLOCKS, held.clock);
    },
    get zone() {
      return textOf(held.zone);
    },
    set: async (change) => {
      held = { ...held, ...change };
      // Loaded here, so that a run that sets nothing never waits for it.
      const { default: Store } = await import('conf');
      attempt(() => realDisk.makeFolder(folder));
      if (!isThere(folder)) return;
      attempt(() => {
        // Opened anew each time: another window may have changed or damaged the file meanwhile.
        readOrSetAside(file);
        openStore(Store, folder).set(change);
      });
    },
  };
}

function openStore(Store: typeof Conf, folder: string): Conf {
  return new Store({
    cwd: folder,
    configName: 'preferences',
    clearInvalidConfig: false,
    configFileMode: 0o600,
    accessPropertiesByDotNotation: false,
  });
}

function isThere(file: string): boolean {
  return attempt(() => fs.lstatSync(file)) !== null;
}

/** What a file of preferences holds; null where there is none, or none that can be read: that is set aside. Nothing but a plain file is opened: a pipe would be waited for. */
function readOrSetAside(file: string): Preferences | null {
  if (!isThere(file)) return null;
  const read = attempt(() => {
    const facts = fs.statSync(file);
    return facts.isFile() && facts.size <= mostBytes ? preferencesIn(fs.readFileSync(file, 'utf8')) : null;
  });
  if (read === null) setAside(file);
  return read;
}

function preferencesIn(text: string): Preferences | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Preferences)
      : null;
  } catch {
    return null;
  }
}

function setAside(file: string): void {
  const taken = new Set(fs.readdirSync(path.dirname(file)));
  const name = (n: number) => `preferences.damaged${n > 1 ? `-${n}` : ''}.json`;
  let n = 1;
  while (taken.has(name(n))) n += 1;
  fs.renameSync(file, path.join(path.dirname(file), name(n)));
}

function isCopyMade(value: unknown): value is CopyMade {
  if (typeof value !== 'object' || value === null) return false;
  const { boat, place, at } = value as Readonly<Record<string, unknown>>;
  return [boat, place, at].every((one) => textOf(one) !== null) && !Number.isNaN(Date.parse(String(at)));
}

function textOf(value: unknown): string | null {
  return typeof value === 'string' && value !== '' && value.length <= mostTextLength ? value : null;
}

/** The first where it is none of them. */
function oneOf<T extends string>(words: readonly [T, ...T[]], value: unknown): T {
  return words.find((word) => word === value) ?? words[0];
}

/** Null where the disk says no. */
function attempt<T>(action: () => T): T | null {
  try {
    return action();
  } catch (error) {
    codeOf(error);
    return null;
  }
}
