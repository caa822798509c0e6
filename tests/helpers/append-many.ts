/**
 * Run as a process of its own: `node append-many.ts <boat> <state> <name> <count> [fault]` saves that many remarks, one by one, and prints the id of each
 * that was saved. With a fault it does so without the lock, or drops it as a program would that opens the file of the lock a second time.
 */
import fs from 'node:fs';
import path from 'node:path';
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';
import type { Lock } from '../../source/files/lock.ts';

const [folder = '', state = '', name = '', count = '0', fault = ''] = process.argv.slice(2);
const keeping = keepingOn(folder, state, Date.now);
const faults: { readonly [fault: string]: Lock } = {
  'no lock': (_, work) => work(),
  'lock dropped': (writer, work) =>
    keeping.lock(writer, () => {
      fs.closeSync(fs.openSync(path.join(state, `${writer}.lock`), 'r'));
      return work();
    }),
};
const boat = boatFolder({ ...keeping, lock: faults[fault] ?? keeping.lock });
for (let i = 0; i < Number(count); ) {
  const saved = await boat.append([{ kind: 'remark', at: '2026-02-03T07:42:00Z', text: `${name} ${i}` }]);
  if (saved.ok) process.stdout.write(`${saved.value[0]!.id}\n`);
  /** On a slow disk the others may keep one waiting too long: it is told so, and tries again as a person would. */ else if (
    saved.troubles.some((trouble) => trouble.kind === 'not saved' && trouble.code === 'EBUSY')
  )
    continue;
  else if (fault === '') throw new Error(JSON.stringify(saved.troubles));
  i += 1;
}
