import { stream } from '../../source/maths/stream.ts';
import {
  allTold,
  aSimulatedBoat,
  read,
  type SimulatedBoat,
  writeRemarks,
} from '../helpers/a-simulated-boat.ts';
import { anOutcome, type Campaign, found, type Outcome } from './campaign.ts';

type Chance = () => number;
type Lines = readonly string[];

/** What hands and sync programs do to a file of lines. Each gives another file than it was given. */
const DEEDS: { readonly [name: string]: (lines: Lines, other: Lines, chance: Chance) => Lines } = {
  deleted: (lines, _, chance) => {
    const at = below(chance, lines.length);
    return lines.toSpliced(at, 1 + below(chance, lines.length - at));
  },
  doubled: (lines, _, chance) =>
    lines.toSpliced(below(chance, lines.length + 1), 0, lines[below(chance, lines.length)]!),
  swapped: (lines, _, chance) => {
    const at = below(chance, lines.length - 1);
    const to = at + 1 + below(chance, lines.length - at - 1);
    return lines.with(at, lines[to]!).with(to, lines[at]!);
  },
  'inserted, another’s': (lines, other, chance) =>
    lines.toSpliced(below(chance, lines.length + 1), 0, other[below(chance, other.length)]!),
  'inserted, made up': (lines, _, chance) =>
    lines.toSpliced(below(chance, lines.length + 1), 0, chance() < 0.5 ? 'a note' : '{"kind":"remark"}'),
  'an older copy put back': (lines, _, chance) => lines.slice(0, below(chance, lines.length)),
};

/** Lines deleted, doubled, swapped, inserted, and an older copy put back: always told, and every line that still stands is read. */
export const shuffledLines: Campaign = {
  name: 'lines deleted, doubled, swapped, inserted; an older copy',
  count: 2000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) await oneLog(stream(seed, `shuffled ${n}`).uniform, n, outcome);
    return outcome;
  },
};

async function oneLog(chance: Chance, n: number, outcome: Outcome): Promise<void> {
  const [ours, theirs] = [aSimulatedBoat('mast0000'), aSimulatedBoat('them0000')];
  const texts = Array.from({ length: 3 + below(chance, 9) }, (_, i) => `line ${i}`);
  await writeRemarks(ours.open(), texts);
  await writeRemarks(theirs.open(), ['theirs, one', 'theirs, two']);
  const names = Object.keys(DEEDS);
  const name = names[n % names.length]!;
  const lines = DEEDS[name]!(linesOf(ours), linesOf(theirs), chance);
  ours.disk.put(ours.file, Buffer.from(lines.map((line) => `${line}\n`).join('')));
  outcome.count += 1;
  const seen = await read(ours.open());
  const note = `${n} (${name}): ${JSON.stringify(allTold(seen))}`;
  if (allTold(seen).length === 0) found(outcome, 'undetected', note);
  const known = new Set(seen.entries.map(({ id }) => id));
  const stands = new Set(lines.flatMap((line) => /"id":"(\w{8}-\d+)"/.exec(line)?.[1] ?? []));
  if (known.size !== stands.size || [...stands].some((id) => !known.has(id))) found(outcome, 'lost', note);
}

function linesOf(boat: SimulatedBoat): Lines {
  return boat.disk.see(boat.file)!.toString().trimEnd().split('\n');
}

function below(chance: Chance, most: number): number {
  return Math.floor(chance() * most);
}
