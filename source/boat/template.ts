import { BOAT_FORMAT, type BoatFile } from './boat.ts';
import { COMMON_PRACTICE, type TemplateAnswers } from './template-answers.ts';
import { templateChecks, templateDated } from './template-looks.ts';
import { templateAnodes, templateFluids, templateServices } from './template-machinery.ts';
import { templateSpares } from './template-stores.ts';

/** Charging by the engine alone; 0.2 with good solar. */
const HOURS_A_DAY = 0.7;

/**
 * The boat.json of a sailing boat of about 11 m with one diesel, from a few answers. Every default is judgement from common practice unless its
 * note names a source; makers' manuals come first.
 */
export function templateBoat(answers: TemplateAnswers): BoatFile {
  const { name, crew, engineName, usualHoursPerDay = HOURS_A_DAY, passage } = answers;
  return {
    format: BOAT_FORMAT,
    name,
    crew,
    engines: [
      {
        id: 'main',
        name: engineName,
        usualHoursPerDay,
        note: `Hours a day at anchor: ${HOURS_A_DAY}, or 0.2 with good solar. ${COMMON_PRACTICE}`,
      },
    ],
    fluids: templateFluids(answers),
    anodes: templateAnodes(answers.tropics ?? false),
    spares: templateSpares(answers),
    services: templateServices(),
    checks: templateChecks(answers),
    dated: templateDated(),
    limits: templateLimits(answers.limits),
    passages: passage ? [templatePassage(passage)] : [],
    ...(passage ? { passage: FIRST_PASSAGE } : {}),
  };
}

const FIRST_PASSAGE = 'first-passage';

function templatePassage({ name, legs }: NonNullable<TemplateAnswers['passage']>) {
  return {
    id: FIRST_PASSAGE,
    name,
    legs: legs.map(({ from, to, nm }): { from: [number, number]; to: [number, number]; nm?: number } => ({
      from: [from[0], from[1]],
      to: [to[0], to[1]],
      ...(nm === undefined ? {} : { nm }),
    })),
    speed: { mean: 5.2, sd: 0.7 },
    motoring: { main: { mean: 0.35, sd: 0.15 } },
    reserveDays: 2,
    note: `Speed 5.2 knots give or take 0.7; motoring a third of the way where there is no forecast. ${COMMON_PRACTICE}`,
  };
}

function templateLimits(own: TemplateAnswers['limits'] = {}) {
  return {
    wind: 22,
    gust: 30,
    seas: 2,
    headwind: 15,
    periodPerMetre: 3,
    alone: { wind: 17, gust: 24, seas: 1.5, headwind: 12, daylight: { afterSunrise: 0, beforeSunset: 0 } },
    ...own,
    note: `What a crew of two will go out in, and one alone. ${COMMON_PRACTICE}`,
  };
}
