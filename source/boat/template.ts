import { BOAT_FORMAT, type BoatFile } from './boat.ts';
import { templateAnodes } from './template-anodes.ts';
import { COMMON_PRACTICE, type TemplateAnswers, usualSpeed } from './template-answers.ts';
import { drivesOf } from './template-drives.ts';
import { templateFluids } from './template-fluids.ts';
import { templateChecks, templateDated } from './template-looks.ts';
import { templateServices } from './template-services.ts';
import { templateSpares } from './template-stores.ts';

/** Charging by the engines alone, shared between them; 0.2 with good solar. */
const HOURS_A_DAY = 0.7;

/**
 * The boat.json of a sailing boat of about 11 m with one diesel, or of another by analogy, from a few answers. Every default is judgement from common
 * practice unless its note names a source; makers' manuals come first.
 */
export function templateBoat(answers: TemplateAnswers): BoatFile {
  const { name, crew, passage } = answers;
  return {
    format: BOAT_FORMAT,
    name,
    crew,
    engines: templateEngines(answers),
    fluids: templateFluids(answers),
    anodes: templateAnodes(answers),
    spares: templateSpares(answers),
    services: templateServices(answers),
    checks: templateChecks(answers),
    dated: templateDated(),
    limits: templateLimits(answers.limits),
    passages: passage ? [templatePassage(answers, passage)] : [],
    ...(passage ? { passage: FIRST_PASSAGE } : {}),
  };
}

const FIRST_PASSAGE = 'first-passage';

function templateEngines(answers: TemplateAnswers): NonNullable<BoatFile['engines']> {
  const drives = drivesOf(answers);
  const { usualHoursPerDay = HOURS_A_DAY / Math.max(1, drives.length) } = answers;
  const shared = drives.length > 1 ? ', shared between the engines' : '';
  return drives.map(({ id, name }) => ({
    id,
    name,
    usualHoursPerDay,
    note: `Hours a day at anchor: ${HOURS_A_DAY}${shared}, or 0.2 with good solar. ${COMMON_PRACTICE}`,
  }));
}

/** What a passage begins with where nothing is known of it, in knots, shares of the passage and days. Common practice, no source. */
export function usualPassage(engines: readonly string[]) {
  return {
    speed: usualSpeed[engines.length === 0 ? 'sail' : 'single'],
    motoring: Object.fromEntries(engines.map((engine) => [engine, { mean: 0.35, sd: 0.15 }])),
    reserveDays: 2,
  };
}

function templatePassage(answers: TemplateAnswers, passage: NonNullable<TemplateAnswers['passage']>) {
  const { name, legs, speed = usualSpeed[answers.template ?? 'single'] } = passage;
  const drives = drivesOf(answers);
  const { motoring, reserveDays } = usualPassage(drives.map(({ id }) => id));
  const motors = drives.length === 0 ? '' : '; motoring a third of the way where there is no forecast';
  return {
    id: FIRST_PASSAGE,
    name,
    legs: legs.map(({ from, to, nm }): { from: [number, number]; to: [number, number]; nm?: number } => ({
      from: [from[0], from[1]],
      to: [to[0], to[1]],
      ...(nm === undefined ? {} : { nm }),
    })),
    speed,
    motoring,
    reserveDays,
    note: `Speed ${speed.mean} knots give or take ${speed.sd}${motors}. ${COMMON_PRACTICE}`,
  };
}

function templateLimits(own: TemplateAnswers['limits'] = {}) {
  const alone = { wind: 17, gust: 24, seas: 1.5, headwind: 12 };
  return {
    wind: 22,
    gust: 30,
    seas: 2,
    headwind: 15,
    periodPerMetre: 3,
    ...own,
    alone: {
      wind: lower(alone.wind, own.wind),
      gust: lower(alone.gust, own.gust),
      seas: lower(alone.seas, own.seas),
      headwind: lower(alone.headwind, own.headwind),
      daylight: { afterSunrise: 0, beforeSunset: 0 },
      ...own.alone,
    },
    note: `What a crew of two will go out in, and one alone. ${COMMON_PRACTICE}`,
  };
}

/** Alone never more than with a crew. */
function lower(usual: number, own: number | false | undefined): number {
  return typeof own === 'number' ? Math.min(usual, own) : usual;
}
