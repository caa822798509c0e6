/**
 * Run as a process of its own: `node merge-many.ts <boat> <state> <clone> <its state> <count>` saves that many remarks in the clone, one by one, and merges the
 * clone into the boat after each. Prints the text of each that was merged.
 */
import { boatFolder } from '../../source/files/boat-folder.ts';
import { keepingOn } from '../../source/files/keeping.ts';

const [folder = '', state = '', clone = '', itsState = '', count = '0'] = process.argv.slice(2);
const boat = boatFolder(keepingOn(folder, state, Date.now));
const other = boatFolder(keepingOn(clone, itsState, Date.now));
for (let i = 0; i < Number(count); i += 1) {
  const text = `clone ${i}`;
  const saved = await other.append([{ kind: 'remark', at: '2026-02-03T07:42:00Z', text }]);
  const merged = saved.ok ? await boat.merge(clone, false) : saved;
  if (!merged.ok) throw new Error(JSON.stringify(merged.troubles));
  process.stdout.write(`${text} ${merged.value.files.map(({ how }) => how).join(' ')}\n`);
}
