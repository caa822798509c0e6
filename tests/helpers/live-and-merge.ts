/**
 * Run as a process of its own, to be killed: `node live-and-merge.ts <parent> <from>` lives aboard with two laptops, `a` and `b`, each with its copy of the
 * boat and its state in `parent`: opens, saves and merges, far longer than it will be let live. Prints `try <text>` before and `ok <text>` after each entry, and `ready` at the start.
 */
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';

const [parent = '', from = '0'] = process.argv.slice(2);
const rounds = 1000;
const sides = ['a', 'b'] as const;
const keeping = {
  a: { ...keepingOn(`${parent}/a`, `${parent}/state-a`, Date.now), machine: 'a'.repeat(16) },
  b: { ...keepingOn(`${parent}/b`, `${parent}/state-b`, Date.now), machine: 'b'.repeat(16) },
};
/** Loads what is only loaded at the first lock, outside the time in which it is killed. */
keeping.a.lock('warm', () => {});
process.stdout.write('ready\n');
for (let n = Number(from); n < Number(from) + rounds; n += 1) {
  for (const side of sides) {
    const boat = boatFolder(keeping[side]);
    const read = await boat.read();
    if (!read.ok) throw new Error(JSON.stringify(read.troubles));
    const texts = Array.from({ length: 1 + (n % 3) }, (_, i) => `${side} ${n}.${i}`);
    for (const text of texts) process.stdout.write(`try ${text}\n`);
    const saved = await boat.append(
      texts.map((text) => ({ kind: 'remark', at: '2026-02-03T07:42:00Z', text })),
    );
    if (!saved.ok) throw new Error(JSON.stringify(saved.troubles));
    for (const text of texts) process.stdout.write(`ok ${text}\n`);
    const merged = await boat.merge(`${parent}/${side === 'a' ? 'b' : 'a'}`, false);
    if (!merged.ok || merged.value.troubles.length > 0) throw new Error(JSON.stringify(merged));
  }
}
