import { hoursAway } from '../words/engine-item.ts';
import type { SpreadDocument } from '../words/item-document.ts';
import { isUnknown } from '../words/item-page.ts';
import {
  amountWords,
  badHundred,
  currentWords,
  dayHere,
  dayWords,
  durationWords,
  experimentWords,
  figureWords,
  goodHundred,
  hundred,
  lastingWords,
  momentWords,
  moneyWords,
  rateWords,
} from '../words/say.ts';
import { levelSentence } from './charts/level-bar.ts';
import { goodUntilWords } from './panels/fluids.ts';
import type { ShownItem } from './shown-item.ts';
import { nameOf, type Sight } from './sight.ts';

type Figures = readonly (readonly [label: string, text: string])[];
type Of<K extends ShownItem['kind']> = Extract<ShownItem, { kind: K }>;

/** All the document says of an item, a label and a text each; what is not known is left out. */
export function figuresOf(sight: Sight, item: ShownItem): Figures {
  const { zone } = sight.model;
  const now = item.now ? `${amountWords(item.now.value, item.now.unit)}${doubt(item.now)}` : null;
  return given([
    ['now', item.kind === 'fluid' && item.now ? levelWords(item) : now],
    ...(isUnknown(item) ? [] : holding(sight, item)),
    ['looked at', item.lookedAt === null ? null : momentWords(Date.parse(item.lookedAt), zone, sight.at)],
    ...ownFigures(sight, item),
  ]);
}

function holding(sight: Sight, item: ShownItem): [string, string | null][] {
  return [
    ['holds, leaving now', item.chance === null ? 'working' : hundred(item.chance * 100)],
    ['good until', goodUntilWords(sight, item) || null],
  ];
}

function ownFigures(sight: Sight, item: ShownItem): [string, string | null][] {
  switch (item.kind) {
    case 'fluid':
      return fluidFigures(sight, item);
    case 'anode':
      return anodeFigures(item);
    case 'spare':
      return spareFigures(item);
    case 'service':
      return [
        ['due', item.dueInHours === null ? null : hoursAway(item.dueInHours)],
        ['due at', item.dueHours === null ? null : amountWords(item.dueHours, 'h')],
        ['due on', item.dueOn === null ? null : dayHere(Date.parse(item.dueOn))],
        ...partsOf(sight, item),
      ];
    case 'check':
      return [['answer', item.ok === null ? null : item.ok ? 'as it should be' : 'not as it should be']];
    case 'dated':
      return [
        ['expires', item.expires === null ? 'not entered yet' : dayWords(Date.parse(item.expires), 'UTC')],
      ];
  }
}

function fluidFigures({ model }: Sight, item: Of<'fluid'>): [string, string | null][] {
  const { leak, lookAgain, job } = item;
  return [
    ['give or take', item.now && item.now.sd > 0 ? amountWords(item.now.sd, 'L', item.full) : null],
    ['to be kept', amountWords(item.reserve, 'L', item.full)],
    ['lost running', spreadWords(item.run, ' an engine hour')],
    ['lost lying', spreadWords(item.rest, ' a day')],
    ['lost on a usual day', spreadWords(item.usualDay, '')],
    [
      'lasts',
      item.lasts &&
        `${lastingWords(item.lasts.days)} like the usual ones in 9 of 10, down to ${amountWords(item.reserve, 'L', item.full)}`,
    ],
    [
      'with the stores',
      item.lasts && item.lasts.withStores !== null ? lastingWords(item.lasts.withStores) : null,
    ],
    ['at the end', spreadWords(item.atEnd, '', item.full)],
    [
      'in 100 chances',
      leak &&
        `tight ${part(leak.tight)}, leaks running ${part(leak.running)}, leaks lying ${part(leak.lying)}, both ${part(leak.both)}`,
    ],
    [
      'running or lying',
      item.split === 'cannot tell' ? `cannot tell yet: ${experimentWords(item.toSettle)}` : null,
    ],
    [
      'look again',
      lookAgain &&
        `within ${'days' in lookAgain ? amountWords(lookAgain.days, 'd') : amountWords(lookAgain.engineHours, 'engine h')}`,
    ],
    [
      'since the job',
      job &&
        `${job.text}, ${dayWords(Date.parse(job.at), model.zone)}: ${goodHundred(job.lowerChance)} that it helped; the loss is ${amountWords(job.ratio.p50, null)} of what it was (${amountWords(job.ratio.p10, null)} to ${amountWords(job.ratio.p90, null)})${settles(job.daysToSettle)}`,
    ],
  ];
}

function anodeFigures({ wear, reachesLimit, limit, currentA }: Of<'anode'>): [string, string | null][] {
  const day = (instant: string) => dayHere(Date.parse(instant));
  return [
    ['finished at', amountWords(limit, 'share')],
    ['wears', wear && `${amountWords(wear.mean * 30, 'share')} in 30 days`],
    [
      'reaches its limit',
      reachesLimit &&
        `about ${day(reachesLimit.p50)}; 8 in 10 between ${day(reachesLimit.p10)} and ${day(reachesLimit.p90)}`,
    ],
    ['galvanic current', currentA === null ? null : `${currentWords(currentA)} on average`],
  ];
}

function spareFigures({
  count,
  unit,
  rate,
  shortChance,
  cover95,
  buy,
  cost,
  locker,
}: Of<'spare'>): [string, string | null][] {
  return [
    ['aboard', count === null ? 'not entered yet' : amountWords(count, unit)],
    ['used', rate && rateWords(rate)],
    ['runs short', shortChance === null ? null : badHundred(shortChance)],
    ['enough in 95 of 100', cover95 === null ? null : amountWords(cover95, unit)],
    [
      'to buy',
      buy > 0 ? `${amountWords(buy, unit)}${cost === null ? '' : `, about ${moneyWords(cost)}`}` : null,
    ],
    ['stowed', locker],
  ];
}

function partsOf(sight: Sight, { id }: Of<'service'>): [string, string | null][] {
  const uses = sight.boat.loaded.boat.services.find((service) => service.id === id)?.uses ?? [];
  return uses.map(({ spare, count }) => {
    const stock = sight.items.find((item) => item.id === spare);
    const aboard = stock?.kind === 'spare' && stock.count !== null ? `, ${stock.count} aboard` : '';
    return ['takes', `${count} x ${nameOf(sight, spare)}${aboard}`];
  });
}

function levelWords({ now, low, full, atEnd }: Of<'fluid'>): string {
  return levelSentence({ low, full, now: now!.value, end: atEnd?.mean ?? null });
}

function doubt({ sd, unit }: { sd: number; unit: string }): string {
  return sd > 0 ? `, give or take ${amountWords(sd, unit)}` : '';
}

/** Litres. */
function spreadWords(of: SpreadDocument | null, per: string, about = of?.p90 ?? 0): string | null {
  if (!of) return null;
  const figure = (value: number) => figureWords(value, 'L', about);
  return `${amountWords(of.mean, 'L', about)}${per}; 8 in 10 between ${figure(of.p10)} and ${figure(of.p90)}`;
}

function settles(days: number | null): string {
  return days === null ? '' : `; ${durationWords(days * 24)} more of readings would settle it`;
}

function part(chance: number): string {
  return String(Math.round(chance * 100));
}

function given(figures: readonly [string, string | null | undefined][]): Figures {
  return figures.flatMap(([label, text]) =>
    text === null || text === undefined || text === '' ? [] : [[label, text] as const],
  );
}
