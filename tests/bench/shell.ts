import { execFileSync, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { cleanEnvironment } from '../helpers/terminal.ts';
import { LAST_MORNING } from './long-log.ts';
import { medians, type Row, timeOf } from './row.ts';

const RUNS = 21;

/** The verdict of the sample boat in the shell, whole process, beside a Node that does nothing. */
export async function verdictRow(folder: string): Promise<Row> {
  const env = cleanEnvironment({
    XDG_CONFIG_HOME: join(folder, 'config'),
    XDG_STATE_HOME: join(folder, 'state'),
  });
  const run = (...args: string[]) => timeOf(() => spawnSync(process.execPath, args, { env }));
  const verdict = ['built/hoveshort.js', 'verdict', '--json', '--boat', 'sample-boat', '--at', LAST_MORNING];
  const { ours, nothing } = await medians(RUNS, {
    nothing: () => run('-e', '0'),
    ours: () => run(...verdict),
  });
  return {
    what: 'verdict --json, sample boat',
    unit: 'ms',
    ours,
    floor: { what: 'node -e 0', value: nothing },
    goal: { atMost: 5 },
  };
}

/** What a user installs, gzipped. */
export function packageRow(): Row {
  const said = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], { encoding: 'utf8' });
  const [packed] = JSON.parse(said) as [{ size: number }];
  return {
    what: 'package, gzipped',
    unit: 'kB',
    ours: packed.size / 1000,
    floor: null,
    goal: { atMost: 600 },
  };
}
