import { mergeFolder } from '../../source/files/merge.ts';
import type { Draft } from '../../source/logbook/entries.ts';
import { stream } from '../../source/maths/stream.ts';
import { aLaptop, aRemark, type Laptop } from '../helpers/a-laptop.ts';
import { allTold, aSimulatedBoat, read, type SimulatedBoat } from '../helpers/a-simulated-boat.ts';
import { SimulatedDisk } from '../helpers/simulated-disk.ts';
import { anOutcome, type Campaign, found, type Outcome } from './campaign.ts';

type Chance = () => number;

const names = ['mast0000', 'gaff0000', 'keen0000', 'bear0000'];

/**
 * Two to four laptops with a copy of the boat each, cloned laptops among them, entries and strikes of one another's: merged in two different orders until all have
 * heard of all, every copy of the log is the same bytes and the same log, nothing is missing, and merging once more changes nothing.
 */
export const mergeLaws: Campaign = {
  name: 'merge laws over 2 to 4 laptops, forks, crossing strikes',
  count: 5000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      await oneFleet(stream(seed, `merge ${n}`).uniform, `seed ${seed}, fleet ${n}`, outcome);
    }
    return outcome;
  },
};

async function oneFleet(chance: Chance, name: string, outcome: Outcome): Promise<void> {
  const laptops = aFleet(chance);
  const written = new Set(laptops.flatMap(({ bytes }) => bytes.map((line) => Buffer.from(line).toString())));
  const folds: string[] = [];
  for (const order of [shuffled(laptops, chance), shuffled(laptops, chance)]) {
    const boats = aboard(order);
    mergeAll(boats, chance);
    const logs = boats.map(logOf);
    if (new Set(logs).size !== 1) found(outcome, 'lost', `${name}: copies differ`);
    if (mergeAll(boats, chance).some((how) => how !== 'same'))
      found(outcome, 'lost', `${name}: a second merge changed something`);
    for (const line of written) if (!logs[0]!.includes(line)) found(outcome, 'lost', `${name}: ${line}`);
    const whole = await read(boats[0]!.open());
    const forked = allTold(whole).some(({ kind }) => kind === 'same id twice');
    if (forked !== hasForks(laptops)) found(outcome, 'undetected', `${name}: forks told: ${forked}`);
    folds.push(JSON.stringify([whole.entries, whole.struck]));
  }
  if (folds[0] !== folds[1]) found(outcome, 'lost', `${name}: another order, another log`);
}

/** Laptops that write, strike and hear of one another by chance; now and then one is cloned and both go on. */
function aFleet(chance: Chance): readonly Laptop[] {
  const fleet = names.slice(0, 2 + Math.floor(chance() * 3)).map((name) => aLaptop(name));
  if (chance() < 0.4) {
    fleet[0]!.write(aRemark('before the clone'));
    fleet.splice(1, 1, fleet[0]!.clone());
  }
  for (let deed = 0; deed < 14; deed += 1) {
    const [laptop, other] = [pick(fleet, chance), pick(fleet, chance)];
    if (chance() < 0.3) laptop.hear(other);
    const ids = other.lines.flatMap((line) => (line.how === 'entry' ? [line.frame.id] : []));
    const at = `2026-02-03T07:0${Math.floor(chance() * 3)}:00Z`;
    const strike: Draft | null =
      ids.length > 0 && chance() < 0.4 ? { kind: 'strike', at, entry: pick(ids, chance) } : null;
    laptop.write(strike ?? { ...aRemark(`deed ${deed}`, at), ...(chance() < 0.2 ? { key: 'page' } : {}) });
  }
  return fleet;
}

/** Each laptop's file in a boat folder of its own. */
function aboard(laptops: readonly Laptop[]): readonly SimulatedBoat[] {
  const disk = new SimulatedDisk(() => 0.5, ['/'], {});
  return laptops.map(({ writer, bytes }, i) => {
    const boat = aSimulatedBoat(`${writer.slice(0, 4)}${String(i).padStart(4, '0')}`, { disk });
    disk.makeFolder(`${boat.keeping.boat}/log`);
    disk.put(`${boat.keeping.boat}/log/${writer}.ndjson`, Buffer.concat(bytes));
    return boat;
  });
}

/** Merges pairs at random, then each with each twice round, so that all have heard of all. */
function mergeAll(boats: readonly SimulatedBoat[], chance: Chance): readonly string[] {
  const pairs = boats.flatMap((into) =>
    boats.filter((from) => from !== into).map((from) => [into, from] as const),
  );
  return [...shuffled(pairs, chance), ...shuffled(pairs, chance), ...pairs, ...pairs].flatMap(
    ([into, from]) => {
      const merged = mergeFolder(into.keeping, from.keeping.boat, false);
      if (!merged.ok || merged.value.troubles.length > 0) throw new Error(JSON.stringify(merged));
      return merged.value.files.map(({ how }) => how);
    },
  );
}

function logOf({ disk, keeping: { boat } }: SimulatedBoat): string {
  const files = disk.list(`${boat}/log`).toSorted();
  return files.map((file) => `${file}\n${disk.see(`${boat}/log/${file}`)}`).join('');
}

function hasForks(laptops: readonly Laptop[]): boolean {
  const crcs = Map.groupBy(
    laptops.flatMap(({ lines }) => lines.flatMap((line) => (line.how === 'entry' ? [line.frame] : []))),
    ({ id }) => id,
  );
  return [...crcs.values()].some((same) => new Set(same.map(({ crc }) => crc)).size > 1);
}

function pick<T>(from: readonly T[], chance: Chance): T {
  return from[Math.floor(chance() * from.length)]!;
}

function shuffled<T>(all: readonly T[], chance: Chance): readonly T[] {
  return all
    .map((one) => ({ one, at: chance() }))
    .sort((a, b) => a.at - b.at)
    .map(({ one }) => one);
}
