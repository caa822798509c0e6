import type { Disk } from '../../source/files/disk.ts';
import { lostBetweenTwoWriters } from '../helpers/interleaved-writers.ts';
import { type Findings, liveOnAFailingDisk } from '../helpers/life-on-a-failing-disk.ts';
import { PLANTED } from '../helpers/planted-faults.ts';
import { wrongAfterReplacing } from '../helpers/replaced-on-a-failing-disk.ts';
import { anOutcome, type Campaign, found } from './campaign.ts';
import { turnBits } from './flipped-bits.ts';

export const livesOnAFailingDisk: Campaign = {
  name: 'simulated file system: power cuts, EIO, ENOSPC, short writes',
  count: 20_000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      const { lost, untold } = faultsOf(await liveOnAFailingDisk(seed + n));
      outcome.count += 1;
      for (const fault of lost) found(outcome, 'lost', `seed ${seed + n}: ${fault}`);
      for (const fault of untold) found(outcome, 'undetected', `seed ${seed + n}: ${fault}`);
    }
    return outcome;
  },
};

export const replacedOnAFailingDisk: Campaign = {
  name: 'boat.json replaced on the simulated file system',
  count: 20_000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      const wrong = wrongAfterReplacing(seed + n);
      if (wrong) found(outcome, 'lost', `seed ${seed + n}: ${wrong}`);
    }
    return outcome;
  },
};

export const interleavedWriters: Campaign = {
  name: 'a second writer at every call, without the lock',
  count: 5000,
  async run(count, seed) {
    const outcome = anOutcome();
    for (let n = 0; n < count; n += 1) {
      outcome.count += 1;
      for (const text of await lostBetweenTwoWriters(seed + n))
        found(outcome, 'lost', `seed ${seed + n}: ${text}`);
    }
    return outcome;
  },
};

type Spoil = (disk: Disk) => Disk;

/** By which of the campaigns each planted fault is found out. */
const FINDERS: {
  readonly [fault in keyof typeof PLANTED]: (seed: number, spoil: Spoil) => Promise<boolean>;
} = {
  'no seal': lifeLoses,
  'stop at the first bad line': async (seed, spoil) => (await turnBits(1, seed, spoil)).lost > 0,
  'a write in two parts': writersLose,
  'no append mode': writersLose,
  'no sync': lifeLoses,
  'a rename without a sync of the folder': async (seed, spoil) => wrongAfterReplacing(seed, spoil) !== null,
  'what was written in part not taken back': lifeLoses,
};
const mostSeeds = 400;

/** Each fault is found out by a campaign above: were it in the program, the campaign would fail. */
export const plantedFaults: Campaign = {
  name: 'planted faults, each caught by a campaign above',
  count: Object.keys(PLANTED).length,
  async run(count, seed) {
    const outcome = anOutcome();
    for (const [fault, find] of Object.entries(FINDERS).slice(0, count)) {
      outcome.count += 1;
      const spoil = PLANTED[fault as keyof typeof PLANTED];
      let n = 0;
      while (n < mostSeeds && !(await find(seed + n, spoil))) n += 1;
      if (n === mostSeeds) found(outcome, 'undetected', fault);
    }
    return outcome;
  },
};

async function lifeLoses(seed: number, spoil: Spoil): Promise<boolean> {
  const { lost, untold } = faultsOf(await liveOnAFailingDisk(seed, spoil));
  return lost.length + untold.length > 0;
}

async function writersLose(seed: number, spoil: Spoil): Promise<boolean> {
  return (await lostBetweenTwoWriters(seed, spoil)).length > 0;
}

function faultsOf({ lost, invented, falseAlarms, broken }: Findings) {
  return { lost: [...lost, ...invented], untold: [...falseAlarms, ...broken] };
}
