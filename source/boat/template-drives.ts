import type { Template, TemplateAnswers } from './template-answers.ts';

/** One engine of a new boat, and how the things that belong to it are told from those of another. */
export interface Drive {
  readonly id: string;
  readonly name: string;
  /** Ends the ids of what belongs to it: `engine-oil-port`. */
  readonly mark: string;
  /** Begins the names: `Port engine oil`. */
  readonly side: string;
}

/** The engines of a template, in walking order; none where she sails only. */
export function drivesOf({
  template = 'single',
  engineName,
}: Pick<TemplateAnswers, 'template' | 'engineName'>): readonly Drive[] {
  const drives: { readonly [T in Template]: readonly Drive[] } = {
    single: [{ id: 'main', name: engineName, mark: '', side: '' }],
    twin: [
      { id: 'port', name: 'Port engine', mark: '-port', side: 'Port' },
      { id: 'starboard', name: 'Starboard engine', mark: '-starboard', side: 'Starboard' },
    ],
    outboard: [{ id: 'outboard', name: engineName, mark: '', side: '' }],
    sail: [],
  };
  return drives[template];
}

/** The id and name of a thing that every engine has one of. */
export function belonging({ mark, side }: Drive, id: string, name: string): { id: string; name: string } {
  const lower = name.slice(0, 1).toLowerCase() + name.slice(1);
  return { id: `${id}${mark}`, name: side === '' ? name : `${side} ${lower}` };
}
