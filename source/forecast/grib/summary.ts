import { centreName } from './centres.ts';
import { membersIn } from './ensemble.ts';
import type { Field } from './field.ts';

import { areaOf } from './grid.ts';
import { levelName } from './levels.ts';
import type { GribFile } from './read.ts';

/** What of a GRIB file can be used, by its headers alone: nothing is unpacked. */
export interface Summary {
  readonly issuers: readonly string[];
  /** When the forecasts in it were made, ms since 1970 UTC, the newest first. */
  readonly issued: readonly number[];
  readonly grids: readonly GridSummary[];
  readonly parameters: readonly ParameterSummary[];
  /** The members of an ensemble, the control first; empty where there is none. */
  readonly members: readonly number[];
}

/** Degrees; `east` lies below `west` where the grid lies over the date line. */
interface GridSummary {
  readonly south: number;
  readonly north: number;
  readonly west: number;
  readonly east: number;
  readonly rows: number;
  readonly columns: number;
  readonly rowDeg: number;
  readonly columnDeg: number;
}

interface ParameterSummary {
  readonly name: string;
  /** `10 m`, `surface`. */
  readonly level: string;
  /** How many times it is given for, and the first and last of them, ms since 1970 UTC. */
  readonly times: number;
  readonly from: number;
  readonly to: number;
}

/** Fields that are of no use are left out; `skipped` of the file has them. */
export function summaryOf(file: GribFile): Summary {
  const fields = file.messages.filter(({ quantity }) => quantity !== null);
  const distinct = <T>(of: (field: Field) => T) => [...new Set(fields.map(of))];
  const grids = distinct(({ grid }) => grid);
  return {
    issuers: distinct(({ centre }) => centreName(centre)),
    issued: distinct(({ referenceTime }) => referenceTime).toSorted((a, b) => b - a),
    grids: grids.map((grid) => {
      const { rows, columns, rowDeg, columnDeg } = grid;
      return { ...areaOf(grid), rows, columns, rowDeg, columnDeg };
    }),
    parameters: parametersOf(fields),
    members: membersIn(file),
  };
}

function parametersOf(fields: readonly Field[]): readonly ParameterSummary[] {
  const groups = Map.groupBy(fields, ({ parameter, level }) => `${parameter.name}/${levelName(level)}`);
  return [...groups.values()].map((group) => {
    const { parameter, level } = group[0]!;
    const times = group.map(({ to }) => to);
    return {
      name: parameter.name,
      level: levelName(level),
      times: new Set(times).size,
      from: Math.min(...group.map(({ from }) => from)),
      to: Math.max(...times),
    };
  });
}
