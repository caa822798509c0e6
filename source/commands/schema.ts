import { boatJsonSchema } from '../boat/schema.ts';
import type { Command } from './command.ts';
import { jsonText } from './show.ts';
import { STATUS } from './status.ts';

export const schema: Command = {
  word: 'schema',
  takes: '',
  says: 'the JSON Schema of boat.json, for an editor that completes and checks',
  more: ['Name the file it is kept in as "$schema" in boat.json.'],
  example: 'hoveshort schema > boat.schema.json',
  options: [],
  async run(_request, outside) {
    outside.print(jsonText(boatJsonSchema()));
    return STATUS.done;
  },
};
