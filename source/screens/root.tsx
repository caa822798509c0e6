import { useApp, useInput, usePaste, useWindowSize } from 'ink';
import { useEffect, useSyncExternalStore } from 'react';
import type { Driver } from './driver.ts';
import { keysOf } from './keys.ts';
import { Page } from './page.tsx';
import { screenLines } from './screen.ts';
import { spokenLines } from './spoken.ts';
import type { Suspension } from './suspension.ts';

interface RootProps {
  readonly driver: Driver;
  readonly suspension: Suspension;
  readonly utf8: boolean;
  readonly spoken: boolean;
  /** The moment, ms since 1970 UTC. */
  readonly now: () => number;
  /** Rows of the window to leave alone. */
  readonly rowsKept: number;
}

/** The one component with a life: keys and size go in as messages, the model comes out as a page. */
export function Root({ driver, suspension, utf8, spoken, now, rowsKept }: RootProps) {
  const model = useSyncExternalStore(driver.subscribe, driver.model);
  const { suspendTerminal } = useApp();
  const window = useWindowSize();
  const { columns } = window;
  const rows = window.rows - rowsKept;
  useEffect(() => suspension.hold({ suspendTerminal }), [suspension, suspendTerminal]);
  useEffect(() => driver.send({ is: 'resized', size: { columns, rows } }), [driver, columns, rows]);
  useInput((input, key) => {
    for (const one of keysOf(input, key)) driver.send({ is: 'key', key: one, now: now() });
  });
  usePaste((text) => driver.send({ is: 'pasted', text }));
  const fits = model.size.columns === columns && model.size.rows === rows;
  const sized = fits ? model : { ...model, size: { columns, rows } };
  const lines = spoken ? spokenLines(sized) : screenLines(sized);
  const height = spoken ? lines.length : rows;
  return <Page lines={lines} palette={model.palette} utf8={utf8} columns={columns} rows={height} />;
}
