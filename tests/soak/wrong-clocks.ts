import { mergeFolder } from '../../source/files/merge.ts';
import { stream } from '../../source/maths/stream.ts';
import { allTold, aSimulatedBoat, read, type SimulatedBoat } from '../helpers/a-simulated-boat.ts';
import { SimulatedDisk } from '../helpers/simulated-disk.ts';
import { anOutcome, type Campaign, found, type Outcome } from './campaign.ts';

const hour = 3_600_000;
const day = 24 * hour;
/** What happens to a clock under way, in ms; null sets it to 1970. The last is a zone mistaken for the time. */
const TURNS = [-365 * day, 500 * day, null, -5 * hour];
const began = Date.parse('2026-02-03T08:00:00Z');
/** All happens at one instant, so that only cause and effect can order it. */
const at = '2026-02-03T08:00:00Z';

/** Two laptops whose clocks are set wrong under way, hearing of one another: what answers stands after what it answers, and the clock is told. */
export const wrongClocks: Campaign = {
  name: 'clocks back a year, on a year, to 1970, by a zone',
  count: 200,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      await onePassage(stream(seed, `clock ${n}`).uniform, TURNS[n % TURNS.length]!, `clock ${n}`, outcome);
    }
    return outcome;
  },
};

async function onePassage(chance: () => number, turn: number | null, name: string, outcome: Outcome) {
  const disk = new SimulatedDisk(() => 0.5, ['/'], {});
  const boats = ['mast0000', 'gaff0000'].map((writer) => aSimulatedBoat(writer, { disk })) as [
    SimulatedBoat,
    SimulatedBoat,
  ];
  const clocks = [began, began];
  const order: string[] = [];
  const struck = new Set<string>();
  const turned = 2 + Math.floor(chance() * 8);
  for (let step = 0; step < 12; step += 1) {
    const side = step === turned || step === turned + 1 ? 0 : chance() < 0.5 ? 0 : 1;
    clocks[0]! += hour;
    clocks[1]! += hour;
    if (step === turned + 1) clocks[0] = turn === null ? 9000 : clocks[0]! + turn;
    const [boat, other] = side === 0 ? boats : [boats[1], boats[0]];
    mergeFolder(boat.keeping, other.keeping.boat, false);
    const open = boat.open({ now: () => clocks[side]! });
    const { entries } = await read(open);
    const before = entries.at(-1);
    const strikes = before?.kind === 'remark' && chance() < 0.3;
    const saved = await open.append([
      strikes ? { kind: 'strike', at, entry: before.id } : { kind: 'remark', at, text: `step ${step}` },
    ]);
    if (!saved.ok) throw new Error(JSON.stringify(saved.troubles));
    if (strikes) struck.add(before.id);
    order.push(saved.value[0]!.id);
  }
  mergeFolder(boats[0].keeping, boats[1].keeping.boat, false);
  const seen = await read(boats[0].open());
  const standing = order.filter((id) => !struck.has(id));
  const kept = seen.entries.map(({ id }) => id);
  if (kept.join() !== standing.join()) found(outcome, 'lost', `${name}: ${kept} instead of ${standing}`);
  if (seen.struck.length !== struck.size) found(outcome, 'lost', `${name}: strikes`);
  if (
    !allTold(seen).some(({ kind }) => kind === 'clock') &&
    !struck.has(order[turned]!) &&
    !struck.has(order[turned + 1]!)
  )
    found(outcome, 'undetected', `${name}: turned by ${turn}`);
}
