import { boatJsonSchema } from '../boat/schema.ts';
import { tableJsonSchema } from '../tracing/table.ts';
import { unknownWord } from '../words/unknown-word.ts';
import type { Command } from './command.ts';
import { complainOf, jsonText } from './show.ts';
import { STATUS } from './status.ts';

export const schema: Command = {
  word: 'schema',
  takes: '[boat | tracing]',
  says: 'the JSON Schema of boat.json, or of a table for trace, for an editor that completes and checks',
  more: ['Name the file it is kept in as "$schema" in boat.json.'],
  example: 'hoveshort schema > boat.schema.json',
  options: [],
  async run({ words: [of = 'boat'] }, outside) {
    if (of !== 'boat' && of !== 'tracing')
      return complainOf([unknownWord('schema', of, ['boat', 'tracing'])], outside);
    outside.print(jsonText(of === 'boat' ? boatJsonSchema() : tableJsonSchema()));
    return STATUS.done;
  },
};
