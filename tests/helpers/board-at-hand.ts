import type { Draft, Entry } from '../../source/logbook/entries.ts';
import { type Stream, stream } from '../../source/maths/stream.ts';
import { inOneGo } from '../../source/maths/turns.ts';
import { textOf } from '../../source/screens/lines.ts';
import { type Model, pageOf, type Request, type Step } from '../../source/screens/model.ts';
import { spokenLines } from '../../source/screens/spoken.ts';
import { update } from '../../source/screens/update.ts';
import { tracing } from '../../source/words/traced.ts';
import { aDocument, aLoaded, withEntries } from './a-document.ts';
import { aModel, SIZES, seen } from './a-model.ts';
import { anEntry } from './an-entry.ts';
import { keyScript, messageOf } from './key-scripts.ts';

/** What a figure or a word that is not there looks like once it is drawn. */
const NOTHING_DRAWN = /undefined|NaN|\[object|Infinity/u;

/** From so many columns on, all that is said at the bottom has room. */
const ROOMY = 80;
/** But for what gives back what was typed, which may be of any length. */
const GIVES_BACK = /^ {2}(?:saved: |NOT SAVED: .*: )/u;

const READ_ONLY = { kind: 'read only', folder: '/boats/sandpiper', code: 'EROFS' } as const;

/**
 * Types keys by chance into the invented boat's board, whose disk refuses now and then or may only be read, and whose window changes its size. After each key nothing may be
 * drawn or spoken that is not there, nor the bottom line be cut where there is room; nothing may be thrown. Null, or the first that was not so, with the keys.
 */
export function shownWrongly(seed: number): string | null {
  const chances = stream(seed, 'board at hand');
  const sometimes = (share: number) => chances.uniform() < share;
  const given = {
    size: aSize(chances),
    by: sometimes(0.5) ? 'Ada' : null,
    arrows: sometimes(0.8),
    colour: sometimes(0.8),
  };
  const readOnly = sometimes(0.1) ? READ_ONLY : null;
  let model = aModel(given, aDocument(), aLoaded({ readOnly }));
  const script = keyScript(chances);
  for (const [at, key] of script.entries()) {
    const fault = attempt(() => {
      model = answered(update(model, messageOf(key)), chances);
      if (sometimes(0.05)) model = answered(update(model, { is: 'resized', size: aSize(chances) }), chances);
      return faultOf(model);
    });
    if (fault !== null)
      return `${pageOf(model).page}: ${fault} after ${JSON.stringify(script.slice(0, at + 1))}`;
  }
  return null;
}

function attempt(look: () => string | null): string | null {
  try {
    return look();
  } catch (error) {
    return String(error);
  }
}

function aSize({ uniform }: Stream): Model['size'] {
  if (uniform() < 0.7) return SIZES[Math.floor(uniform() * SIZES.length)]!;
  return { columns: 20 + Math.floor(uniform() * 140), rows: 5 + Math.floor(uniform() * 60) };
}

function faultOf(model: Model): string | null {
  const lines = seen(model);
  const bottom = lines.at(-1)!.trimEnd();
  const mayBeCut = model.size.columns < ROOMY || GIVES_BACK.test(bottom);
  if (!mayBeCut && bottom.endsWith('…')) return `cut off: ${bottom}`;
  return [...lines, ...spokenLines(model).map(textOf)].find((line) => NOTHING_DRAWN.test(line)) ?? null;
}

/** The model once the world has answered all it asked. */
function answered([model, requests]: Step, chances: Stream): Model {
  return requests.reduce((next, request) => answeredOne(next, request, chances), model);
}

function answeredOne(model: Model, request: Request, chances: Stream): Model {
  if (request.do === 'trace') {
    const { loaded, asked } = request;
    const told = inOneGo(tracing(loaded, asked));
    return answered(update(model, { is: 'traced', of: loaded, asked, told }), chances);
  }
  if (request.do !== 'save' || model.boat.is !== 'open') return model;
  const { drafts } = request;
  if (chances.uniform() < 0.15) {
    const troubles = [{ kind: 'not saved' as const, code: 'EIO', text: JSON.stringify(drafts) }];
    return answered(update(model, { is: 'saved', drafts, result: { ok: false, troubles } }), chances);
  }
  const value = drafts.map(({ kind, at, ...fields }: Draft) => anEntry(kind, fields as never, at) as Entry);
  const loaded = withEntries(model.boat.loaded, value);
  const saved = answered(update(model, { is: 'saved', drafts, result: { ok: true, value } }), chances);
  return answered(update(saved, { is: 'loaded', result: { ok: true, value: loaded } }), chances);
}
