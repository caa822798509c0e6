import { brief } from './brief.ts';
import type { Command } from './command.ts';
import { forecast } from './forecast.ts';
import { inspect } from './inspect.ts';
import { item } from './item.ts';
import { log } from './log.ts';
import { merge } from './merge.ts';
import { newBoat } from './new.ts';
import { preferences } from './preferences.ts';
import { record } from './record.ts';
import { round } from './round.ts';
import { schema } from './schema.ts';
import { stores } from './stores.ts';
import { trace } from './trace.ts';
import { verdict } from './verdict.ts';

/** Every command, in the order help shows them. A new one: its file, and a line here. */
export const COMMANDS: readonly Command[] = [
  verdict,
  brief,
  record,
  forecast,
  log,
  item,
  trace,
  round,
  stores,
  inspect,
  merge,
  schema,
  newBoat,
  preferences,
];
