import { hoursAway } from '../../words/engine-item.ts';
import { instant } from '../../words/figures.ts';
import { amountWords } from '../../words/say.ts';
import { type Line, line, type Stop, say } from '../lines.ts';
import { margin, named, type Panel } from '../panel.ts';
import type { ShownItem } from '../shown-item.ts';
import { itemsOfKind, type Sight } from '../sight.ts';
import { soonWords } from '../when.ts';
import { onThePoint, pad, widthOf } from '../width.ts';

type Service = Extract<ShownItem, { kind: 'service' }>;

/** The engines' meters, then the services that fall due by them. */
export function engineHoursPanel(sight: Sight): Panel<Service> {
  return {
    part: 'engine hours',
    title: 'ENGINE HOURS',
    heads: ['due', 'or'],
    items: itemsOfKind(sight, 'service'),
    cells: ({ dueInHours, dueOn }) => {
      const on = dueOn === null ? '' : soonWords(Date.parse(dueOn), sight.at, sight.model.zone);
      return dueInHours === null ? [on, ''] : [hoursAway(dueInHours), on];
    },
    onPoint: [],
    mayGo: [1],
    one: 'service',
    many: 'services',
    lead: engineLines(sight),
  };
}

/** Every engine with its meter; what it runs a day is null until the first reckoning. */
export function enginesIn({ boat, document }: Sight) {
  return document?.engines ?? waiting(boat.loaded);
}

function engineLines(sight: Sight): Line[] {
  const engines = enginesIn(sight);
  const names = Math.max(0, ...engines.map(({ name }) => widthOf(name)));
  const meters = onThePoint(
    engines.map(({ hours }) => (hours === null ? 'not read yet' : hoursWords(hours))),
  );
  return engines.map(({ id, name, perDay }, index) => {
    const daily = perDay === null ? '' : `  ${amountWords(perDay, 'h')} a day lying`;
    const stop: Stop = { key: `engine:${id}`, part: 'engine hours', opens: { open: 'engine', id } };
    return {
      ...line(
        ...margin(sight, stop, null),
        named(sight, stop, pad(name, names)),
        say(`  ${meters[index]}${daily}`),
      ),
      stop,
    };
  });
}

function waiting({ boat, condition }: Sight['boat']['loaded']) {
  return boat.engines.map(({ id, name }) => {
    const record = condition.engines.get(id);
    const readAt = record?.readAt ?? null;
    return {
      id,
      name,
      hours: record?.hours ?? null,
      readAt: readAt === null ? null : instant(readAt),
      perDay: null,
    };
  });
}

/** `3 412.6 h`: a meter as it is read, thousands apart. */
export function hoursWords(hours: number): string {
  const [whole = '', tenth = '0'] = hours.toFixed(1).split('.');
  return `${whole.replace(/\B(?=(\d{3})+$)/gu, ' ')}.${tenth} h`;
}
