import type { Boat } from '../../source/boat/boat.ts';
import { readBoat } from '../../source/boat/read.ts';
import { templateBoat } from '../../source/boat/template.ts';
import type { TemplateAnswers } from '../../source/boat/template-answers.ts';
import { assert } from '../../source/trouble.ts';

/** What the crew of an invented boat would answer. */
export const answers: TemplateAnswers = {
  name: 'Sanderling',
  crew: 2,
  engineName: 'Main engine',
  oil: { low: 4, full: 5 },
  fuelTankL: 200,
  waterTankL: 300,
  passage: {
    name: 'Heron Bight to Otter Cay',
    legs: [
      { from: [41.2, -30.4], to: [41.4, -30], nm: 22 },
      { from: [41.4, -30], to: [41.9, -29.5], nm: 38 },
    ],
  },
};

/** The boat a template makes of answers, written as boat.json and read back. */
export function aTemplateBoat(own: Partial<TemplateAnswers> = {}): Boat {
  const read = readBoat(JSON.stringify(templateBoat({ ...answers, ...own }), null, 2), 'boat.json');
  assert(read.ok, 'a template that cannot be read');
  return read.value;
}
