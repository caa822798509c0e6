import { z } from 'zod';
import { boatSchema } from './boat.ts';

/** boat.json as a JSON Schema (draft 2020-12), for editors and the reference docs. Every call builds it anew. */
export function boatJsonSchema(): object {
  return { title: 'boat.json', ...z.toJSONSchema(boatSchema, { io: 'input' }) };
}
