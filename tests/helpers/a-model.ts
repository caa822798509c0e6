import { inOneGo } from '../../source/maths/turns.ts';
import { textOf } from '../../source/screens/lines.ts';
import { firstModel, type Loaded, type Message, type Model, type Step } from '../../source/screens/model.ts';
import { screenLines } from '../../source/screens/screen.ts';
import { update } from '../../source/screens/update.ts';
import type { VerdictDocument } from '../../source/words/document.ts';
import { tracing } from '../../source/words/traced.ts';
import { AT, aDocument, aLoaded } from './a-document.ts';

/** The four sizes every screen is made for. */
export const SIZES = [
  { columns: 40, rows: 12 },
  { columns: 80, rows: 24 },
  { columns: 120, rows: 36 },
  { columns: 200, rows: 60 },
] as const;

/** A model before anything is read. */
export function aFirstModel(given: Partial<Parameters<typeof firstModel>[0]> = {}): Model {
  const size = { columns: 80, rows: 24 };
  return firstModel({
    now: Date.parse(AT),
    zone: 'UTC',
    by: null,
    size,
    palette: 'day',
    colour: true,
    copy: null,
    ...given,
  })[0];
}

/** The board open on the invented boat and answer. */
export function aModel(
  given: Partial<Parameters<typeof firstModel>[0]> = {},
  document: VerdictDocument = aDocument(),
  loaded: Loaded = aLoaded(),
): Model {
  return moved(
    aFirstModel(given),
    { is: 'loaded', result: { ok: true, value: loaded } },
    { is: 'judged', of: loaded, document },
  );
}

/** The model moved on by messages; a text is a key. What is asked of a trace is told at once. */
export function moved(model: Model, ...messages: readonly (Message | string)[]): Model {
  return messages.reduce<Model>(
    (next, message) =>
      toldTraces(update(next, typeof message === 'string' ? { is: 'key', key: message } : message)),
    model,
  );
}

/** The model once all that was asked of a trace is told. */
function toldTraces([model, requests]: Step): Model {
  return requests.reduce<Model>((next, request) => {
    if (request.do !== 'trace') return next;
    const { loaded, asked } = request;
    return toldTraces(
      update(next, { is: 'traced', of: loaded, asked, told: inOneGo(tracing(loaded, asked)) }),
    );
  }, model);
}

/** What a person sees, line by line. */
export function seen(model: Model): string[] {
  return screenLines(model).map(textOf);
}
