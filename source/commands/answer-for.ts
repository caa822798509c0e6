import type { Condition } from '../condition/condition.ts';
import { conditionAt } from '../condition/condition-at.ts';
import { forecastAt } from '../forecast/choose.ts';
import { believe } from '../inference/believe.ts';
import type { LoadedBoat } from '../outside.ts';
import { forecastMet } from '../readiness/forecast-met.ts';
import { forecastsAboard } from '../readiness/forecasts-aboard.ts';
import { judge } from '../readiness/judge.ts';
import { weatherNow } from '../readiness/weather-now.ts';
import { documentOf, type VerdictDocument } from '../words/document.ts';

/** When to answer for, ms since 1970 UTC, and with which simulated passages. */
export interface Question {
  readonly at: number;
  readonly seed: number;
  readonly simulations: number;
}

/** The one road from a boat and her log to an answer: the shell and the board both take it, so they cannot differ. Damage of the log counts into the answer. */
export function answerFor(
  { boat, entries, troubles, forecasts }: LoadedBoat,
  { at, seed, simulations }: Question,
): { condition: Condition; document: VerdictDocument } {
  const condition = conditionAt(boat, entries, at);
  const beliefs = believe(boat, condition);
  const forecast = forecastAt(forecasts, at, condition.forecastChoice);
  const answer = judge({
    boat,
    condition,
    beliefs,
    forecast,
    seed,
    simulations,
    trouble: [...troubles, ...condition.troubles],
  });
  const told = {
    aboard: forecastsAboard(forecasts, condition, boat.limits.forecastError),
    now: weatherNow(boat, condition, forecast),
    met: forecastMet(boat, condition, forecasts),
  };
  return { condition, document: documentOf({ boat, condition, beliefs, answer, forecasts: told }) };
}
