import { describe, expect, it } from 'vitest';
import type { Trouble } from '../../../source/trouble.ts';
import { aDocument, aLoaded } from '../../helpers/a-document.ts';
import { aModel, SIZES, seen } from '../../helpers/a-model.ts';

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

  it('for a log that is no folder says so too', () => {
    expect(board({ kind: 'not a plain file', file: 'log' }, SIZES[2])).toContain(
      '! nothing can be saved: log is not a plain file',
    );
  });
});
