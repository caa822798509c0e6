import { stream } from '../../source/maths/stream.ts';
import { aSimulatedBoat, textsOf, writeRemarks } from '../helpers/a-simulated-boat.ts';
import { anOutcome, type Campaign, found, type Outcome } from './campaign.ts';

/** What may stand where the rest of a line was to be: nothing, zeros, garbage, bytes of an old file with line ends among them. */
const FILLINGS: readonly (readonly [name: string, fill: (rest: Buffer) => Buffer])[] = [
  ['cut', () => Buffer.of()],
  ['zeros', (rest) => Buffer.alloc(rest.length)],
  ['garbage', (rest) => Buffer.from(rest.map((byte) => byte ^ 0x95))],
  ['old bytes', (rest) => Buffer.from('5}\n{"v":1\n'.repeat(rest.length)).subarray(0, rest.length)],
];

/** A power cut at every byte of the last line of a log, whatever was there before; then the next entry is saved, and the log read again. */
export const tornLines: Campaign = {
  name: 'last line cut, zeros, garbage, old bytes at every byte',
  count: 20,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) await oneLog(stream(seed, `torn ${n}`).uniform, `log ${n}`, outcome);
    return outcome;
  },
};

async function oneLog(chance: () => number, name: string, outcome: Outcome): Promise<void> {
  const boat = aSimulatedBoat('tern0000');
  const text = () => 'a letter é '.repeat(Math.floor(chance() * 4)) + chance();
  const before = Array.from({ length: 1 + Math.floor(chance() * 3) }, text);
  const last = text();
  await writeRemarks(boat.open(), before);
  const [whole, mark] = [boat.disk.see(boat.file)!, boat.disk.see(boat.mark)!];
  await writeRemarks(boat.open(), [last]);
  const bytes = boat.disk.see(boat.file)!;
  for (const [how, fill] of FILLINGS) {
    for (let cut = whole.length; cut < bytes.length; cut += 1) {
      outcome.count += 1;
      const rest = fill(bytes.subarray(cut));
      boat.disk.put(boat.file, Buffer.concat([bytes.subarray(0, cut), rest]));
      boat.disk.put(boat.mark, mark);
      /** Only the line end was still to come: the line counts. */
      const stands = cut === bytes.length - 1 && rest.length === 0 ? [...before, last] : before;
      const open = boat.open();
      const seen = await textsOf(open);
      await writeRemarks(open, ['after']);
      const again = await textsOf(boat.open());
      if (!same(seen, stands) || !same(again, [...stands, 'after']))
        found(outcome, 'lost', `${name}, ${how} at ${cut}: ${JSON.stringify([stands, seen, again])}`);
    }
  }
}

function same(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((text, i) => text === b[i]);
}
