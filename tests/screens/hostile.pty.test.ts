import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { forbiddenIn, HOSTILE, hostileBoat } from '../helpers/hostile-texts.ts';
import { openTerminal } from '../helpers/terminal.ts';

const PROGRAM = path.resolve('built/hoveshort.js');
const AT = '2026-06-14T07:30:00Z';
const parent = mkdtempSync(path.join(tmpdir(), 'hoveshort-hostile-'));
const env = { XDG_CONFIG_HOME: path.join(parent, 'config'), XDG_STATE_HOME: path.join(parent, 'state') };

afterAll(() => rmSync(parent, { recursive: true, force: true }));

/** What the board itself sends: colours and places, modes switched on and off, synchronized updates. */
const OWN = /\u001b\[[?>=]?[0-9;]*[A-Za-z]/g;

describe.skipIf(!existsSync(PROGRAM))(
  'hostile texts in every field on the built board (skipped until built)',
  () => {
    it('send no control or bidi character to the terminal, on any page', async () => {
      const boat = path.join(parent, 'turned\u202e\u001b[2J');
      mkdirSync(path.join(boat, 'log'), { recursive: true });
      const sample = JSON.parse(readFileSync('sample-boat/boat.json', 'utf8'));
      writeFileSync(path.join(boat, 'boat.json'), JSON.stringify(hostileBoat(sample, HOSTILE)));
      writeFileSync(path.join(boat, 'log', 'stray\u001b]0;owned\u0007\u009b.ndjson'), HOSTILE.join('\n'));
      writeFileSync(path.join(boat, 'log', 'aaaaaaaa.ndjson'), HOSTILE.join('\n'));
      const drafts = HOSTILE.flatMap((text): Draft[] => [
        { kind: 'remark', at: AT, text, by: text.slice(0, 200), item: 'gear-oil' },
        { kind: 'job', at: AT, item: 'gear-oil', text },
      ]);
      const saved = await boatFolder(
        keepingOn(boat, path.join(parent, 'state', 'hoveshort'), Date.now),
      ).append(drafts);
      expect(saved.ok).toBe(true);
      const terminal = openTerminal(process.execPath, [PROGRAM, '--boat', boat, '--at', AT], {
        columns: 120,
        rows: 36,
        env,
      });
      try {
        await terminal.until(
          (screen) => /\s(HOLD|NOT READY|GO)\s/u.test(screen) && !screen.includes('working'),
        );
        let before = terminal.screen().join('\n');
        for (const key of ['\r', '\u001b', '!', '\u001b', 'w', '\u001b', 'j', 'j', '\r', '\u001b', 'G']) {
          terminal.type(key);
          await terminal.until((screen) => screen !== before, `a change after ${JSON.stringify(key)}`);
          before = terminal.screen().join('\n');
          expect(forbiddenIn(before)).toBeNull();
        }
        terminal.type('\u0003');
        await terminal.ended;
        const written = terminal.written();
        expect(
          forbiddenIn(written.replaceAll(OWN, '').replaceAll('\r\n', '\n').replaceAll('\r', '')),
        ).toBeNull();
        for (const text of HOSTILE.filter((one) => /[\u0000-\u0008\u000b-\u001f]/u.test(one)))
          expect(written.includes(text), JSON.stringify(text)).toBe(false);
        expect(written).toContain('owned');
      } finally {
        terminal.close();
      }
    });
  },
);
