import type { Condition } from '../condition/condition.ts';
import { conditionAt } from '../condition/condition-at.ts';
import { forecastAt } from '../forecast/choose.ts';
import { believing } from '../inference/believe.ts';
import { inOneGo, type Turns } from '../maths/turns.ts';
import type { LoadedBoat } from '../outside.ts';
import { forecastMet } from '../readiness/forecast-met.ts';
import { forecastsAboard } from '../readiness/forecasts-aboard.ts';
import { judging } from '../readiness/judge.ts';
import { weatherNow } from '../readiness/weather-now.ts';
import { documentOf, type VerdictDocument } from '../words/document.ts';

/** When to answer for, ms since 1970 UTC, and with which simulated passages. */
export interface Question {
  readonly at: number;
  readonly seed: number;
  readonly simulations: number;
}

/** The one road from a boat and her log to an answer: the shell and the board both take it, so they cannot differ. Damage of the log counts into the answer. */
export function answerFor(loaded: Known, { at, seed, simulations }: Question): Answered {
  const condition = conditionAt(loaded.boat, loaded.entries, at);
  return inOneGo(answering({ ...loaded, condition }, { seed, simulations }));
}

type Known = Pick<LoadedBoat, 'boat' | 'entries' | 'troubles' | 'forecasts'>;

interface Answered {
  readonly condition: Condition;
  readonly document: VerdictDocument;
}

/** The same road in turns, for who has keys to answer meanwhile, from her condition at the moment it is for. */
export function* answering(
  { boat, condition, troubles, forecasts }: Omit<Known, 'entries'> & { readonly condition: Condition },
  { seed, simulations }: Omit<Question, 'at'>,
): Turns<Answered> {
  const { at } = condition;
  const beliefs = yield* believing(boat, condition);
  const forecast = forecastAt(forecasts, at, condition.forecastChoice);
  const answer = yield* judging({
    boat,
    condition,
    beliefs,
    forecast,
    seed,
    simulations,
    trouble: [...troubles, ...condition.troubles],
  });
  yield;
  const told = {
    aboard: forecastsAboard(forecasts, condition, boat.limits.forecastError),
    now: weatherNow(boat, condition, forecast),
    met: forecastMet(boat, condition, forecasts),
  };
  yield;
  return { condition, document: documentOf({ boat, condition, beliefs, answer, forecasts: told }) };
}
