import { describe, expect, it } from 'vitest';
import { conditionAt } from '../../source/condition/condition-at.ts';
import type { Entry } from '../../source/logbook/entries.ts';
import { aBoat } from '../helpers/a-boat.ts';
import { anEntry } from '../helpers/an-entry.ts';

const at = Date.UTC(2026, 0, 1);
const troubles = (...entries: readonly Entry[]) => conditionAt(aBoat(), entries, at).troubles;

describe('a name the boat does not have', () => {
  it('is told with the nearest one that would fit, entry by entry', () => {
    const dips = [1, 2].map(() => anEntry('dip', { fluid: 'gear-oll', share: 1 }, at));
    expect(troubles(...dips)).toEqual(
      dips.map(({ id, at: when }) => ({
        kind: 'unknown item',
        entry: id,
        at: when,
        item: 'gear-oll',
        near: 'gear-oil',
      })),
    );
  });

  it('has no near one where none is like it, or none of the kind', () => {
    const [unlike, otherKind] = [
      anEntry('use', { spare: 'winch-handle', count: 1 }, at),
      anEntry('dip', { fluid: 'impellers', share: 1 }, at),
    ];
    expect(troubles(unlike!, otherKind!)).toEqual([
      { kind: 'unknown item', entry: unlike!.id, at: unlike!.at, item: 'winch-handle' },
      { kind: 'unknown item', entry: otherKind!.id, at: otherKind!.at, item: 'impellers' },
    ]);
  });

  it('is told wherever an entry names something', () => {
    const entries = [
      anEntry('hours', { engine: 'none-such', reading: 1 }, at),
      anEntry('topup', { fluid: 'gear-oil', amount: 0.1, from: 'none-such' }, at),
      anEntry('change', { fluid: 'none-such' }, at),
      anEntry('job', { item: 'none-such', text: 'x' }, at),
      anEntry('leak', { item: 'none-such', class: 'wet' }, at),
      anEntry('anode', { anode: 'none-such', share: 1 }, at),
      anEntry('renew', { anode: 'pencil', from: 'none-such' }, at),
      anEntry('stow', { spare: 'none-such', count: 1 }, at),
      anEntry('count', { spare: 'none-such', count: 1 }, at),
      anEntry('service', { service: 'none-such' }, at),
      anEntry('service', { service: 'impeller-change', uses: [{ spare: 'none-such', count: 1 }] }, at),
      anEntry('check', { check: 'none-such', ok: true }, at),
      anEntry('dated', { item: 'none-such', expires: '2027-01-01' }, at),
      anEntry('clue', { item: 'none-such', clue: 'smoke', seen: true }, at),
      anEntry('remark', { text: 'x', item: 'none-such' }, at),
      anEntry('plan', { passage: 'none-such' }, at),
      anEntry(
        'gate',
        { passage: 'none-such', leg: 0, from: '2026-01-01T00:00:00Z', to: '2026-01-02T00:00:00Z' },
        at,
      ),
      anEntry('left', { anchorage: 'none-such' }, at),
      anEntry('arrived', { anchorage: 'none-such' }, at),
    ];
    const told = troubles(...entries).map((trouble) => 'entry' in trouble && trouble.entry);
    expect(told.toSorted()).toEqual(entries.map(({ id }) => id).toSorted());
  });

  it('is told of a gate on a leg the passage does not have, counted from 1', () => {
    const gate = (leg: number) =>
      anEntry(
        'gate',
        { passage: 'to-otter-cay', leg, from: '2026-01-01T00:00:00Z', to: '2026-01-02T00:00:00Z' },
        at,
      );
    const legs = aBoat().passages.find(({ id }) => id === 'to-otter-cay')!.legs.length;
    expect(troubles(gate(legs - 1))).toEqual([]);
    expect(troubles(gate(legs))).toMatchObject([
      { kind: 'unknown item', item: `leg ${legs + 1} of to-otter-cay` },
    ]);
  });

  it('is none where an entry names nothing, or what the boat has, an engine too', () => {
    expect(
      troubles(
        anEntry('remark', { text: 'Quiet night' }, at),
        anEntry('left', {}, at),
        anEntry('job', { item: 'main', text: 'New belt' }, at),
        anEntry('clue', { item: 'main', clue: 'smoke', seen: false }, at),
      ),
    ).toEqual([]);
  });

  it('leaves the rest of its entry standing', () => {
    const topup = anEntry('topup', { fluid: 'gear-oil', amount: 0.1, from: 'none-such' }, at);
    const { fluids } = conditionAt(aBoat(), [topup], at);
    expect(fluids.get('gear-oil')!.events).toMatchObject([{ kind: 'topup', amountL: 0.1 }]);
  });
});
