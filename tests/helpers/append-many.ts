/** Run as a process of its own: `node append-many.ts <boat> <state> <name> <count>` saves that many remarks, one by one, and prints the ids. */
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';

const [folder = '', state = '', name = '', count = '0'] = process.argv.slice(2);
const boat = boatFolder(keepingOn(folder, state, Date.now));
for (let i = 0; i < Number(count); i += 1) {
  const saved = await boat.append([{ kind: 'remark', at: '2026-02-03T07:42:00Z', text: `${name} ${i}` }]);
  if (!saved.ok) throw new Error(JSON.stringify(saved.troubles));
  process.stdout.write(`${saved.value[0]!.id}\n`);
}
