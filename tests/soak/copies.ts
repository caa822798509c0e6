import { boatFolder } from '../../source/files/boat-folder.ts';
import { stream } from '../../source/maths/stream.ts';
import { aSimulatedBoat, read, textsOf, writeRemarks } from '../helpers/a-simulated-boat.ts';
import { PowerCut, SimulatedDisk } from '../helpers/simulated-disk.ts';
import { anOutcome, type Campaign, found, type Outcome } from './campaign.ts';

const rounds = 5;
/** A copy of a few entries takes fewer calls than this. */
const mostCalls = 120;
const HOW = ['power cut', 'power cut', 'EIO', 'ENOSPC', 'short write'] as const;

/** A boat is copied again and again while the power goes and the stick fails: whatever was once copied and checked is in the copy ever after. */
export const copiesOnAFailingDisk: Campaign = {
  name: 'copies to a second place, power cuts and failures at any call',
  count: 5000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      await copyOften(stream(seed, `copies ${n}`).uniform, `seed ${seed}, boat ${n}`, outcome);
    }
    return outcome;
  },
};

async function copyOften(chance: () => number, name: string, outcome: Outcome): Promise<void> {
  const disk = new SimulatedDisk(chance, ['/', '/stick', '/boat-tern0000', '/state-tern0000'], {});
  const boat = aSimulatedBoat('tern0000', { disk });
  const copy = `/stick${boat.keeping.boat}`;
  let checked: readonly string[] = [];
  for (let round = 0; round < rounds; round += 1) {
    disk.arm(null);
    await writeRemarks(boat.open(), [`entry ${round}`]);
    const here = await textsOf(boat.open());
    /** The first ones may go through, so that there is something to lose. */
    const how = HOW[Math.floor(chance() * HOW.length)]!;
    disk.arm(chance() < 0.3 ? null : { at: 1 + Math.floor(chance() * mostCalls), how, lasts: 1 });
    try {
      const made = await boat.open().copyTo('/stick');
      if (made.ok) checked = here;
      else if (disk.met.length === 0)
        found(outcome, 'undetected', `${name}: ${JSON.stringify(made.troubles)}`);
    } catch (error) {
      if (!(error instanceof PowerCut)) found(outcome, 'undetected', `${name}: ${String(error)}`);
    }
    disk.arm(null);
    disk.met.length = 0;
    if (chance() < 0.7) disk.restart();
    if (checked.length === 0) continue;
    try {
      const { entries } = await read(boatFolder({ ...boat.keeping, boat: copy, state: '/none' }));
      const there = new Set(entries.map((entry) => (entry.kind === 'remark' ? entry.text : '')));
      for (const text of checked) if (!there.has(text)) found(outcome, 'lost', `${name}: ${text}`);
    } catch (error) {
      found(outcome, 'lost', `${name}: ${String(error)}`);
    }
  }
}
