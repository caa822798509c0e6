import path from 'node:path';
import type { Settings } from '../outside.ts';
import { codeOf, type Disk } from './disk.ts';
import { readTextFile } from './read-text.ts';
import { replaceFile } from './replace.ts';

type Preferences = Readonly<Record<string, unknown>>;

const mostBytes = 64 * 1024;
const mostTextLength = 1000;

/**
 * A person's preferences, one small JSON file in `folder`, read when first asked for. Fields this version does not know survive. They are a convenience:
 * a file that cannot be read or written stops nothing, and one that is damaged is set aside under another name, never wiped.
 */
export function settingsIn(disk: Disk, folder: string): Settings {
  const file = path.join(folder, 'preferences.json');
  let held: Preferences | null = null;
  const preferences = () => {
    held ??= readPreferences(disk, file);
    return held;
  };
  return {
    get lastBoat() {
      return textOf(preferences().lastBoat);
    },
    get name() {
      return textOf(preferences().name);
    },
    get palette() {
      const { palette } = preferences();
      return palette === 'night' || palette === 'plain' ? palette : 'day';
    },
    set: (change) => {
      /** Read again: another window may have set something else meanwhile. */
      held = { ...readPreferences(disk, file), ...change };
      write(disk, folder, file, held);
    },
  };
}

function textOf(value: unknown): string | null {
  return typeof value === 'string' && value !== '' && value.length <= mostTextLength ? value : null;
}

function readPreferences(disk: Disk, file: string): Preferences {
  const text = readTextFile(disk, file, mostBytes);
  if (text.ok) {
    const preferences = parsed(text.value);
    if (preferences) return preferences;
    setAside(disk, file);
  }
  return {};
}

function parsed(text: string): Preferences | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? (value as Preferences)
      : null;
  } catch {
    return null;
  }
}

function setAside(disk: Disk, file: string): void {
  try {
    disk.rename(file, freeName(disk, file));
  } catch (error) {
    codeOf(error);
  }
}

function freeName(disk: Disk, file: string): string {
  const taken = new Set(disk.list(path.dirname(file)));
  const name = (n: number) => `preferences.damaged${n > 1 ? `-${n}` : ''}.json`;
  let n = 1;
  while (taken.has(name(n))) n += 1;
  return path.join(path.dirname(file), name(n));
}

function write(disk: Disk, folder: string, file: string, preferences: Preferences): void {
  try {
    disk.makeFolder(folder);
    replaceFile(disk, file, new TextEncoder().encode(`${JSON.stringify(preferences, null, 2)}\n`));
  } catch (error) {
    codeOf(error);
  }
}
