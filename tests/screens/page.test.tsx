import { renderToString } from 'ink';
import { render } from 'ink-testing-library';
import { describe, expect, it } from 'vitest';
import { Page } from '../../source/screens/page.tsx';
import { screenLines } from '../../source/screens/screen.ts';
import { aModel, SIZES, seen } from '../helpers/a-model.ts';

describe('the page as Ink draws it', () => {
  it.each(SIZES)('is the lines as they were made, at %o', (size) => {
    const model = aModel({ size });
    const drawn = renderToString(<Page lines={screenLines(model)} palette="plain" utf8 {...size} />, {
      columns: size.columns,
    });
    const bare = drawn.replace(/\u001b\[[\d;]*m/gu, '').split('\n');
    expect(bare.map((line) => line.trimEnd())).toEqual(seen(model).map((line) => line.trimEnd()));
  });

  it('is all ASCII where the terminal has no UTF-8', () => {
    const size = SIZES[1];
    const drawn = renderToString(
      <Page lines={screenLines(aModel({ size }))} palette="day" utf8={false} {...size} />,
      {
        columns: size.columns,
      },
    );
    expect(drawn).toMatch(/^[\u0000-\u007e]*$/u);
    expect(drawn).toContain('[ ooo#     ]');
  });

  it('is drawn anew when its lines change, and only they change', () => {
    const size = { columns: 100, rows: 24 };
    const page = (lines: ReturnType<typeof screenLines>) => (
      <Page lines={lines} palette="plain" utf8 {...size} />
    );
    const model = aModel({ size });
    const { lastFrame, rerender, unmount } = render(page(screenLines(model)));
    const before = lastFrame()!;
    rerender(page(screenLines({ ...model, pages: [{ page: 'keys', of: 'board', from: 0 }] })));
    expect(lastFrame()).not.toBe(before);
    rerender(page(screenLines(model)));
    expect(lastFrame()).toBe(before);
    unmount();
  });
});
