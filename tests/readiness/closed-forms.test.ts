import { describe, expect, it } from 'vitest';
import { closedForms } from '../helpers/closed-forms.ts';

describe('with one thing driving it, the model says what paper says', () => {
  it.each(closedForms)('$title', ({ run }) => {
    const { got, expected, within } = run();
    expect(Math.abs(got - expected), `${got} against ${expected}`).toBeLessThanOrEqual(within);
  });
});
