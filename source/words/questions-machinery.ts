import type { Boat } from '../boat/boat.ts';
import type { Fluid } from '../boat/fluid.ts';
import { type NewBoat, NOT_LOOKED_AT, type Question, usual, withAnswers, withReadings } from './new-boat.ts';
import { shownUnit } from './preferred.ts';
import { amountIn, levelIn, momentBefore, nameIn, numberOf } from './question-answers.ts';

/** Engines, their hours, and the marks on the stick. */
export function machinery(so: NewBoat, boat: Boat): readonly Question[] {
  const { template, engineName, oil } = so.answers;
  if (boat.engines.length === 0) return [];
  const named = template === 'twin' ? [] : [engineNameQuestion(so, engineName)];
  const hours = boat.engines.map(
    ({ id, name }): Question => ({
      field: id,
      ask: `${name}: hours on the meter`,
      usual: { text: 'not read' },
      read: amountIn(id, 'h', { least: 0, most: 1e6 }, (reading) =>
        withReadings(so, { hours: { ...so.readings.hours, [id]: reading } }),
      ),
    }),
  );
  return [
    ...named,
    ...hours,
    {
      field: 'oil-low',
      ask: 'Engine oil in the sump at the low mark of the stick',
      usual: usual(oil.low, 'L'),
      read: amountIn('oil-low', 'L', { least: 0.1, most: 1000, about: oil.full }, (low) =>
        withAnswers(so, { oil: { low, full: numberOf(low + oil.full - oil.low) } }),
      ),
    },
    {
      field: 'oil-full',
      ask: 'Engine oil at the full mark',
      usual: usual(oil.full, 'L'),
      read: amountIn('oil-full', 'L', { above: oil.low, most: 2000, about: oil.full }, (full) =>
        withAnswers(so, { oil: { ...oil, full } }),
      ),
    },
  ];
}

function engineNameQuestion(so: NewBoat, engineName: string): Question {
  return {
    field: 'engine',
    ask: 'What the engine is called',
    usual: { text: engineName },
    read: nameIn('engine', (name) => withAnswers(so, { engineName: name })),
  };
}

export function tanks(so: NewBoat): readonly Question[] {
  const { template, fuelTankL, waterTankL } = so.answers;
  const size = { above: 0, most: 100_000 };
  const fuel: Question = {
    field: 'fuel-tank',
    ask: `${template === 'outboard' ? 'Petrol' : 'Fuel'} tank holds`,
    usual: usual(fuelTankL, 'L'),
    read: amountIn('fuel-tank', 'L', { ...size, about: fuelTankL }, (litres) =>
      withAnswers(so, { fuelTankL: litres }),
    ),
  };
  const water: Question = {
    field: 'water-tank',
    ask: 'Fresh water tanks hold, in all',
    usual: usual(waterTankL, 'L'),
    read: amountIn('water-tank', 'L', { ...size, about: waterTankL }, (litres) =>
      withAnswers(so, { waterTankL: litres }),
    ),
  };
  return template === 'sail' ? [water] : [fuel, water];
}

export function levelQuestion(so: NewBoat, fluid: Fluid): Question {
  const { id, name, low, full } = fluid;
  const { said } = shownUnit('L', full);
  const off = low > 0 ? `full, 1/2, off the stick (off), or ${said}` : `full, 1/2, or ${said}`;
  return {
    field: id,
    ask: `${name} now: ${off}`,
    usual: NOT_LOOKED_AT,
    read: levelIn(fluid, (level) => withReadings(so, { levels: { ...so.readings.levels, [id]: level } })),
  };
}

/** When the oil was changed, and once that is known at what hours. */
export function oilChange(so: NewBoat, boat: Boat): readonly Question[] {
  const { oilChange: change, hours } = so.readings;
  if (boat.engines.length === 0) return [];
  const when: Question = {
    field: 'oil-change',
    ask: 'Last change of engine oil and filter, when (2026-01-15, "20 days ago")',
    usual: { text: 'not known' },
    read: momentBefore('oil-change', (at) => withReadings(so, { oilChange: { at, hours: {} } })),
  };
  if (change === null) return [when];
  const metered = boat.engines.flatMap(({ id, name }) => {
    const now = hours[id];
    return now === undefined ? [] : [{ id, name, now }];
  });
  return [
    when,
    ...metered.map(
      ({ id, name, now }): Question => ({
        field: `${id}-at-oil-change`,
        ask: `${name}: hours on the meter then`,
        usual: { text: 'not known' },
        read: (typed, clock) => {
          const most = Math.max(0, now - (clock.now - change.at) / 3_600_000 - SLACK_HOURS);
          const range = { least: numberOf(Math.ceil(most * 10) / 10), most: now };
          return amountIn(`${id}-at-oil-change`, 'h', range, (reading) =>
            withReadings(so, { oilChange: { ...change, hours: { ...change.hours, [id]: reading } } }),
          )(typed, clock);
        },
      }),
    ),
  ];
}

/** Dates are typed without their time of day, as the rule for meters allows. */
const SLACK_HOURS = 24;
