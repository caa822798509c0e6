import type { z } from 'zod';
import type { Trouble } from '../trouble.ts';

const MOST = 10;

/** What a schema found wrong in a table, as troubles. The schema's own words say what is expected. */
export function tableTroubles(error: z.ZodError): readonly Trouble[] {
  return error.issues.slice(0, MOST).map(({ path, message }) => ({
    kind: 'table not understood',
    where: path.length === 0 ? 'the table' : path.map(String).join('.'),
    found: 'missing, or of another kind',
    expected: message,
  }));
}
