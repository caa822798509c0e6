import { bad, good, type Result } from '../../trouble.ts';
import type { Content } from '../content.ts';
import type { PlaceForecast, Position, Problem, Step } from '../forecast.ts';
import { oddities } from '../oddities.ts';
import { centreName } from './centres.ts';
import { commonFields, type Ensemble, ensembleAt } from './ensemble.ts';
import type { Field } from './field.ts';
import { areaOf } from './grid.ts';
import type { DecodeJpeg2000 } from './jpeg2000.ts';
import { type LayerKind, layersOf } from './layers.ts';
import type { GribFile, GribProblem, Heading, Skipped } from './read.ts';
import { type Sampled, sample } from './sampling.ts';
import { type Steps, stepsOf } from './steps.ts';

/** Where a forecast is wanted: a piece of a leg by its middle, an anchorage. */
export interface Point {
  readonly place: string;
  readonly at: Position;
}

/** As many problems of one kind are shown; more of the same say nothing new. */
const MOST_OF_A_KIND = 5;
/** As the one shape of a forecast allows. */
const MOST_LETTERS = 200;
const MOST_NOT_READ = 1000;

/**
 * The forecast a GRIB file gives for some points, hour by hour: its values between sea points or at the nearest one in space, between its times in time.
 * Of an ensemble the steps are the control's, with what each member says beside them. Not ok where nothing in it is of use, or no point lies on its grids.
 */
export async function forecastFromGrib(
  file: GribFile,
  points: readonly Point[],
  { decodeJpeg }: { decodeJpeg?: DecodeJpeg2000 } = {},
): Promise<Result<Content>> {
  const fields = commonFields(file);
  const layers = layersOf(fields);
  if (layers.length === 0) return bad({ kind: 'nothing of use', found: foundIn(file) });
  const positions = points.map(({ at }) => at);
  const sampled = await sample(layers, positions, decodeJpeg);
  if (sampled.reached.every((kinds) => kinds.size === 0))
    return bad({ kind: 'outside the grid', areas: areasOf(fields) });
  const made = points.map((point, i): Made => ({ ...point, ...stepsOf(sampled.places[i]!) }));
  const spoken = made.filter(({ steps }) => steps.length > 0);
  if (spoken.length === 0) return bad({ kind: 'no figures' });
  const ensemble = await ensembleAt(file, spoken, decodeJpeg);
  const issued = made.flatMap((one) => (one.issued === null ? [] : [one.issued]));
  // The control is read twice: for the steps, and as a member.
  const odd = new Map([...sampled.odd, ...ensemble.odd].map((one) => [one.field, one])).values();
  const damaged = new Set([...sampled.damaged, ...ensemble.damaged]);
  const places = spoken.map((one, i) => placeFrom(one, ensemble.members[i]!));
  return good({
    source: 'grib',
    issuer: short([...new Set(fields.map(({ centre }) => centreName(centre)))].join(', ')),
    issuedAt: new Date(Math.min(...issued)).toISOString(),
    places,
    notRead: [...file.skipped.map(notReadOf), ...[...damaged].map(damagedOf)].slice(0, MOST_NOT_READ),
    problems: fewOfAKind([
      ...file.problems.flatMap(problemOfFile),
      ...[...odd].flatMap(problemsOfField),
      ...leftOutOf(ensemble),
      ...places.flatMap(incomplete),
      ...made.flatMap((one, i) => problemsOfPlace(one, sampled.reached[i]!)),
    ]),
  });
}

type Made = Point & Steps;

function placeFrom(
  { place, at, steps, nearestSeaNm }: Made,
  members: NonNullable<PlaceForecast['members']>,
): PlaceForecast {
  return {
    ...{ place, at: [...at], headlines: [], steps: [...steps] },
    ...(members.length > 0 ? { members } : {}),
    ...(nearestSeaNm > 0 ? { nearestSeaNm } : {}),
  };
}

/** What a file holds instead of wind and seas, and what became of it on the way. */
function foundIn({ problems, skipped }: GribFile): readonly string[] {
  const broken = problems
    .flatMap(problemOfFile)
    .map(({ kind, where, text }) => [`${where}, ${kind}`, text].filter((part) => part).join(': '));
  return [...broken, ...skipped.map(skippedWords)];
}

function notReadOf(skipped: Skipped): Content['notRead'][number] {
  return { where: `message ${skipped.message}`, text: skippedWords(skipped) };
}

function skippedWords({ what, why, fields }: Skipped): string {
  const name = why.name === what ? '' : `${why.kind} not read: ${why.name}`;
  const counted = fields === 1 ? '1 field' : `${fields} fields`;
  return `${[what, name].filter((part) => part !== '').join(', ')} (${counted})`;
}

function damagedOf(field: Field): Content['notRead'][number] {
  return { where: `message ${field.message}`, text: `${headingWords(field)}: its values are damaged` };
}

function headingWords({ parameter, from, member }: Heading): string {
  return `${parameter.name}${member === null ? '' : `, member ${member},`} for ${new Date(from).toISOString()}`;
}

function problemOfFile(problem: GribProblem): readonly Problem[] {
  if (problem.kind === 'cut short') {
    const { message, missing, of } = problem;
    const what = of ? `${headingWords(of)}, ` : '';
    return [{ kind: 'cut short', where: `message ${message}`, text: `${what}${missing} octets missing` }];
  }
  if (problem.kind === 'mangled')
    return [{ kind: 'garbled', where: 'the file', text: `sent as text, ${problem.how}; send it as binary` }];
  if (problem.kind === 'broken message') return [{ kind: 'garbled', where: `message ${problem.message}` }];
  return [];
}

function problemsOfField({ field, beyond, worst, apart, most }: Sampled['odd'][number]): readonly Problem[] {
  const where = headingWords(field);
  return [
    ...(beyond > 0 ? [{ kind: 'cannot be', where, value: worst } as const] : []),
    ...(apart > 0 ? [{ kind: 'apart from its neighbours', where, value: most } as const] : []),
  ];
}

function leftOutOf({ leftOut, members }: Ensemble): readonly Problem[] {
  if (leftOut === 0) return [];
  const text = `${leftOut} of ${leftOut + members[0]!.length}: more than is kept`;
  return [{ kind: 'members left out', where: 'the ensemble', text }];
}

/** Members that do not say wind or seas at an hour of which the steps do: that hour bars the passages that meet them. */
function incomplete({ place, at, steps, members = [] }: PlaceForecast): readonly Problem[] {
  const lacks = members.filter(({ wind, seas }) =>
    steps.some(
      (step, i) => (step.wind !== null && wind?.[i] === null) || (step.seas !== null && seas?.[i] === null),
    ),
  );
  if (lacks.length === 0) return [];
  const where = place === '' ? position(at![0], at![1]) : place;
  const text = `${lacks.length} of ${members.length} do not say all its hours`;
  return [{ kind: 'members incomplete', where, text }];
}

/** Rounding and interpolation put a gust a little below its wind. */
const LEAST_BELOW_KN = 1;

function problemsOfPlace(made: Made, reached: ReadonlySet<LayerKind>): readonly Problem[] {
  const { place, at, steps, seasPutTogether } = made;
  const where = place === '' ? position(at[0], at[1]) : place;
  if (reached.size === 0) return [{ kind: 'outside the area', where }];
  const without = (kind: Problem['kind'], lacks: (step: Step) => boolean): readonly Problem[] => {
    const hours = steps.filter(lacks).length;
    return hours === 0 ? [] : [{ kind, where, text: `${hours} of ${steps.length} hours` }];
  };
  const noSea = reached.has('seas') && steps.every(({ seas }) => seas === null);
  return [
    ...without('no wind', ({ wind }) => wind === null),
    ...(noSea ? [{ kind: 'no sea here', where } as const] : without('no seas', ({ seas }) => seas === null)),
    ...without('no gusts', ({ gust }) => gust === null),
    ...(seasPutTogether ? [{ kind: 'seas put together', where } as const] : []),
    ...oddities(steps, true)
      .filter(isOfFigures)
      .map((problem) => ({ ...problem, where: `${where} ${problem.where}` })),
  ];
}

/** What is missing is said once a place, not once an hour. */
function isOfFigures({ kind, value, than }: Problem): boolean {
  if (kind === 'gust below wind') return than! - value! >= LEAST_BELOW_KN;
  return kind !== 'no wind' && kind !== 'no seas' && kind !== 'no gusts';
}

function fewOfAKind(problems: readonly Problem[]): Problem[] {
  const counts = new Map<Problem['kind'], number>();
  const few = problems.filter(({ kind }) => {
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
    return counts.get(kind)! <= MOST_OF_A_KIND;
  });
  return few.map((problem) => ({ ...problem, where: short(problem.where) }));
}

function short(text: string): string {
  return text.slice(0, MOST_LETTERS);
}

/** Each grid as its south-west and north-east corners. */
function areasOf(fields: readonly Field[]): readonly string[] {
  const areas = [...new Set(fields.map(({ grid }) => grid))].map(areaOf);
  const words = areas.map(
    ({ south, north, west, east }) => `${position(south, west)} to ${position(north, east)}`,
  );
  return [...new Set(words)];
}

function position(lat: number, lon: number): string {
  return `${Math.abs(lat).toFixed(2)}${lat < 0 ? 'S' : 'N'} ${Math.abs(lon).toFixed(2)}${lon < 0 ? 'W' : 'E'}`;
}
