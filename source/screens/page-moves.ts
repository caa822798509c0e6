import { type Model, pageOf, type Step, turnedBack, turnedTo, withTop } from './model.ts';
import { nextPalette } from './palette.ts';
import { mostFrom, pageRows } from './turned.ts';

/** The page on top moves by so many lines, never past its ends. */
export function scroll(by: number): (model: Model) => Step {
  return (model) => {
    const page = pageOf(model);
    if (page.page === 'board') return [model, []];
    const from = Math.max(0, Math.min(mostFrom(model), page.from + by));
    return [withTop(model, { ...page, from }), []];
  };
}

export function scrollPage(by: 1 | -1): (model: Model) => Step {
  return (model) => scroll(by * Math.max(1, pageRows(model.size) - 2))(model);
}

export function back(model: Model): Step {
  return [turnedBack(model), []];
}

export function trouble(model: Model): Step {
  return pageOf(model).page === 'trouble' ? [model, []] : [turnedTo(model, { page: 'trouble', from: 0 }), []];
}

export function keys(model: Model): Step {
  const { page } = pageOf(model);
  return page === 'keys' ? back(model) : [turnedTo(model, { page: 'keys', of: page, from: 0 }), []];
}

export function palette(model: Model): Step {
  if (!model.colour) return [{ ...model, notice: 'plain: no colour here, or none wanted' }, []];
  const next = nextPalette(model.palette);
  return [{ ...model, palette: next, notice: next }, [{ do: 'keep palette', palette: next }]];
}

export function afresh(model: Model): Step {
  return [model, [{ do: 'draw afresh' }, { do: 'load' }]];
}

export function suspend(model: Model): Step {
  return [model, [{ do: 'suspend' }]];
}

export function quit(model: Model): Step {
  return [model, [{ do: 'quit' }]];
}
