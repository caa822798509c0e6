import { readdirSync, readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { itemsOf } from '../source/boat/boat.ts';
import { readBoat } from '../source/boat/read.ts';
import { conditionAt } from '../source/condition/condition-at.ts';
import { forecastAt } from '../source/forecast/choose.ts';
import { forecastFileName } from '../source/forecast/forecast.ts';
import { believe } from '../source/inference/believe.ts';
import { readDraft } from '../source/logbook/drafts.ts';
import type { Entry, EntryKind, EntryOf } from '../source/logbook/entries.ts';
import { readLine } from '../source/logbook/line.ts';
import { foldLog } from '../source/logbook/order.ts';
import type { Answer } from '../source/readiness/answer.ts';
import { judge } from '../source/readiness/judge.ts';
import { forecastText, sampleLog, sampleLogPath } from './helpers/make-sample-boat.ts';
import { flu, gearJob, lastMorning, namedInstants } from './helpers/sample-calendar.ts';
import { sampleForecasts } from './helpers/sample-forecasts.ts';
import { sampleLife } from './helpers/sample-life.ts';

const folder = new URL('../sample-boat/', import.meta.url);
const logBytes = readFileSync(new URL(sampleLogPath, folder));
const boat = sampleBoat();
const logbook = foldLog([{ name: sampleLogPath, writer: '7kq3w9pn', lines: linesOf(logBytes) }]);
const { entries } = logbook;
const DAY = 86_400_000;

describe('the sample boat', () => {
  it('has the log its maker makes, byte for byte, however often', () => {
    expect(sampleLog().equals(logBytes)).toBe(true);
    expect(sampleLog().equals(logBytes)).toBe(true);
  });

  it('has only entries that `record` would take, naming only what she has, and nothing to doubt', () => {
    const refused = sampleLife().flatMap(({ draft }) => (readDraft(draft).ok ? [] : [draft]));
    expect(refused).toEqual([]);
    expect(conditionAt(boat, entries, Date.parse(namedInstants.notReady)).troubles).toEqual([]);
    expect(logbook.said).toEqual([]);
  });

  it('has eight months of log by two people, to the morning of the last day', () => {
    const times = entries.map(({ at }) => Date.parse(at));
    expect(entries.length).toBeGreaterThan(300);
    expect((Math.max(...times) - Math.min(...times)) / DAY).toBeGreaterThan(240);
    expect(entries.at(-1)?.at.slice(0, 10)).toBe(lastMorning);
    expect(Math.max(...times)).toBeLessThan(Date.parse(namedInstants.notReady));
    expect(new Set(entries.map(({ by }) => by))).toEqual(new Set(['Nell', 'Josef']));
  });

  it('has a round on most mornings, and days nobody looked', () => {
    const mornings = new Set(of('dip').map(({ at }) => at.slice(0, 10)));
    expect(mornings.size).toBeGreaterThan(110);
    expect(mornings.size).toBeLessThan(220);
    expect(entries.filter(({ at }) => at > flu.from && at.slice(0, 10) <= flu.to)).toEqual([]);
  });

  it('has one line cut off by a power cut, told by `inspect` alone, and typed again', () => {
    expect(logbook.quiet.map(({ kind }) => kind)).toEqual(['line cut off']);
    expect(
      of('check').filter(({ check, at }) => check === 'charging' && at.startsWith('2026-03-03')),
    ).toHaveLength(1);
  });

  it('has a struck entry with its reason', () => {
    expect(logbook.struck.map(({ kind }) => kind)).toEqual(['dip']);
    expect(sampleLife().filter(({ draft }) => draft.kind === 'strike' && draft.why)).toHaveLength(1);
  });

  it('has a new hour meter that loses no hours', () => {
    expect(of('hours').filter(({ swapped }) => swapped)).toHaveLength(1);
    const { readings } = conditionAt(boat, entries, Date.parse(namedInstants.notReady)).engines.get('main')!;
    const hours = readings.map((reading) => reading.hours);
    expect(hours).toEqual(hours.toSorted((a, b) => a - b));
    expect(hours.at(-1)! - hours[0]!).toBeGreaterThan(200);
  });

  it('renewed the pencil anode three times in one place', () => {
    expect(of('renew').map(({ anode }) => anode)).toEqual(['pencil', 'pencil', 'pencil']);
  });

  it('read the gear oil off the stick once, and only once', () => {
    expect(
      of('dip')
        .filter(({ off }) => off)
        .map(({ fluid, off }) => [fluid, off]),
    ).toEqual([['gear-oil', 'below']]);
  });

  it('lost about a tenth of the gear-oil marks a day until the job five weeks before the end', () => {
    const job = of('job').filter(({ item }) => item === 'gear-oil');
    expect(job).toHaveLength(1);
    expect(Math.round((Date.parse(lastMorning) - Date.parse(job[0]!.at)) / (7 * DAY))).toBe(5);
    const before = gearOilLost('2025-10-15', gearJob);
    expect(before.ofTheMarksADay).toBeGreaterThan(0.07);
    expect(before.ofTheMarksADay).toBeLessThan(0.12);
  });

  it('lost about a third as much of it after the job, for the same use', () => {
    const before = gearOilLost('2025-10-15', gearJob);
    const ratio = gearOilLost(gearJob, namedInstants.notReady).perHour / before.perHour;
    expect(ratio).toBeGreaterThan(0.25);
    expect(ratio).toBeLessThan(0.42);
  });

  it('shows all four states, all six kinds and a way to get ready on the last morning', () => {
    const answer = answerAt(namedInstants.notReady);
    expect(new Set(answer.items.map(({ state }) => state))).toEqual(
      new Set(['fit', 'watch', 'unfit', 'unseen']),
    );
    expect(new Set(answer.items.map(({ kind }) => kind)).size).toBe(6);
    expect(answer.items).toHaveLength(itemsOf(boat).length);
    expect(answer.items.find(({ id }) => id === 'bilge-float')?.why[0]).toMatchObject({
      why: 'looked at long ago',
    });
    expect(answer.toGetReady.map((action) => [action.do, action.item])).toEqual([
      ['look', 'raw-water'],
      ['top up', 'gear-oil'],
    ]);
    expect(answer.toGetReadySuffices).toBe(true);
  });

  it('is not ready on the last morning: gear oil low, raw water not looked at since the pencil was renewed', () => {
    const { verdict, items } = answerAt(namedInstants.notReady);
    expect(verdict).toBe('not ready');
    expect(items.find(({ id }) => id === 'gear-oil')?.state).toBe('unfit');
    expect(items.find(({ id }) => id === 'raw-water')?.why[0]).toMatchObject({
      why: 'unsettled',
      by: 'pencil',
    });
  });

  it.each(['hold', 'go', 'shelter'] as const)(
    'is herself fit to leave on the morning named for %s',
    (name) => {
      const { verdict, score } = answerAt(namedInstants[name]);
      expect(verdict).not.toBe('not ready');
      expect(score.boat).toBeGreaterThanOrEqual(95);
    },
  );

  it('has the forecasts its maker makes', () => {
    const made = sampleForecasts().map((one) => [forecastFileName(one), forecastText(one)]);
    const kept = readdirSync(new URL('forecasts/', folder)).sort();
    expect(kept.map((name) => [name, readFileSync(new URL(`forecasts/${name}`, folder), 'utf8')])).toEqual(
      made,
    );
  });

  it('holds for a window that opens later and closes, on the morning named for it', () => {
    const { verdict, windows } = answerAt(namedInstants.hold);
    expect([verdict, windows.length > 0]).toEqual(['hold', true]);
    expect(windows[0]!.at).toBeGreaterThan(Date.parse(namedInstants.hold));
    expect(windows[0]!.closes).not.toBeNull();
  });

  it('goes on the morning they left', () => {
    expect(answerAt(namedInstants.go)).toMatchObject({
      verdict: 'go',
      reasons: [{ reason: 'fit' }, { reason: 'go' }],
    });
  });

  it('has no place to stay on the morning the southerly arrives, and somewhere to go', () => {
    const { verdict, staying, shelter } = answerAt(namedInstants.shelter);
    expect(verdict).toBe('hold');
    expect(new Date(staying!.until).toISOString().slice(0, 10)).toBe('2026-06-11');
    expect(shelter).toMatchObject([{ passage: 'to-wicketholm', verdict: 'go' }]);
  });

  it('says so past the end of the forecast, and tells no window', () => {
    const { verdict, reasons, windows, score } = answerAt(namedInstants.forecastOver);
    expect([verdict, windows, score.weather]).toEqual(['hold', [], null]);
    expect(reasons.map(({ reason }) => reason)).toContain('forecast over');
  });

  it('names its mornings in its README', () => {
    const readme = readFileSync(new URL('README.md', folder), 'utf8');
    for (const instant of Object.values(namedInstants)) expect(readme).toContain(instant);
  });
});

function sampleBoat() {
  const read = readBoat(readFileSync(new URL('boat.json', folder), 'utf8'), 'boat.json');
  if (!read.ok) throw new Error(JSON.stringify(read.troubles, null, 2));
  return read.value;
}

function linesOf(bytes: Buffer) {
  const texts = bytes.toString('latin1').split('\n').slice(0, -1);
  return texts.map((text) => readLine(Buffer.from(text, 'latin1'), crc32));
}

function of<K extends EntryKind>(kind: K): EntryOf<K>[] {
  return entries.filter((entry): entry is Entry & EntryOf<K> => entry.kind === kind);
}

function answerAt(instant: string): Answer {
  const condition = conditionAt(boat, entries, Date.parse(instant));
  const beliefs = believe(boat, condition);
  return judge({
    boat,
    condition,
    beliefs,
    forecast: forecastAt(sampleForecasts(), condition.at, null),
    seed: 1,
    simulations: 4096,
    trouble: condition.troubles,
  });
}

/** A day loses about as much as this many hours under way: it was made so, before and after the job. */
const DAY_IN_HOURS = 0.23;

/** By bookkeeping alone: what was poured in, and what the stick lost from the first reading to the last. */
function gearOilLost(from: string, to: string) {
  const within = ({ at }: Entry) => at > from && at < to;
  const { low, full } = boat.fluids.find(({ id }) => id === 'gear-oil')!;
  const shares = of('dip').filter(
    (dip) => within(dip) && dip.fluid === 'gear-oil' && dip.share !== undefined,
  );
  const [first, last] = [shares[0]!, shares.at(-1)!];
  const poured = of('topup')
    .filter(({ fluid, at }) => fluid === 'gear-oil' && at > first.at && at < last.at)
    .reduce((sum, { amount }) => sum + amount, 0);
  const lostL = poured + (first.share! - last.share!) * (full - low);
  const days = (Date.parse(last.at) - Date.parse(first.at)) / DAY;
  const hours = hoursUnderWay(first.at, last.at) + DAY_IN_HOURS * days;
  return { ofTheMarksADay: lostL / (full - low) / days, perHour: lostL / hours };
}

function hoursUnderWay(from: string, to: string): number {
  const { engines, spans } = conditionAt(boat, entries, Date.parse(to));
  const main = engines.get('main')!;
  return spans
    .filter((span) => span.from >= Date.parse(from) && span.to !== null)
    .reduce((sum, span) => sum + main.hoursAt(span.to!) - main.hoursAt(span.from), 0);
}
