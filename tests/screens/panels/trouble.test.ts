import { describe, expect, it } from 'vitest';
import type { Trouble } from '../../../source/trouble.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, moved, SIZES, seen } from '../../helpers/a-model.ts';

const board = (readOnly: Trouble, size: (typeof SIZES)[number]) =>
  seen(aModel({ size }, aDocument(), aLoaded({ readOnly }))).join('\n');

describe('a boat folder nothing can be saved in', () => {
  it.each([
    ['ENOSPC', 'the disk is full'],
    ['EROFS', 'the disk is set to read only'],
    ['EACCES', 'its permissions do not allow it'],
  ])('for %s says so on the board, before anyone types', (code, why) => {
    for (const size of SIZES.slice(1))
      expect(board({ kind: 'read only', folder: '/boats/whimbrel', code }, size)).toContain(
        `! nothing can be saved: ${why}`,
      );
  });

  it('is not counted among what else is wrong, and opens it all the same', () => {
    const readOnly: Trouble = { kind: 'read only', folder: '/boats/whimbrel', code: 'EROFS' };
    expect(board(readOnly, SIZES[2])).not.toContain('wrong with the files');
    const chosen = aModel({ size: SIZES[2] }, aDocument(), aLoaded({ readOnly }));
    expect(seen(moved({ ...chosen, chosen: 'trouble' }, 'enter')).join('\n')).toContain('read only (EROFS)');
    const more: Trouble[] = [{ kind: 'newer entries', count: 3 }];
    const both = seen(aModel({ size: SIZES[2] }, aDocument(), aLoaded({ readOnly, troubles: more })));
    expect(both.join('\n')).toContain('! 1 thing wrong with the files');
  });

  it('for a log that is no folder says so too', () => {
    expect(board({ kind: 'not a plain file', file: 'log' }, SIZES[2])).toContain(
      '! nothing can be saved: log is not a plain file',
    );
  });
});
