import type { Problem } from '../forecast.ts';
import { areaSections } from './areas.ts';
import { type Block, blocksIn, type Product, productsIn } from './blocks.ts';
import { highSeasSections, isHighSeas } from './high-seas.ts';
import { type NavtexMessage, navtexMessages, subjectOf } from './navtex.ts';
import { timedPeriods } from './periods.ts';
import type { Section } from './section.ts';

/** All the sections of a text, and what is odd about the text as a whole. */
export interface Sections {
  readonly sections: readonly Section[];
  readonly issuer: string;
  readonly problems: readonly Problem[];
  /** Messages that are no forecast, where there is nothing else. */
  readonly subjects: readonly string[];
}

const OFFICE = /^ *((?:NATIONAL WEATHER SERVICE|NWS|NATIONAL HURRICANE CENTER)\b.{0,80})$/im;
const NEAR_SHORE = /^NSH[A-Z]{3}\s*$|\bNEARSHORE (?:MARINE )?FORECAST\b/im;

/** Takes a text apart into its sections, whatever form it has: with zone lines, of the high seas, by areas, in NAVTEX frames or without. */
export function sectionsIn(text: string): Sections {
  const messages = navtexMessages(text);
  if (messages.length === 0) {
    const ended = text.trimEnd().endsWith('.');
    const issuer = OFFICE.exec(text.slice(0, 5000))?.[1]?.trim() ?? '';
    return {
      sections: productsIn(text).flatMap((product) => inProduct(product, ended)),
      issuer,
      problems: [],
      subjects: [],
    };
  }
  const forecasts = messages.filter(({ subject }) => subject === 'E');
  const warnings = messages.filter(({ subject }) => subject === 'B').map(warningOf);
  return {
    sections: forecasts.flatMap(({ body, ended }) =>
      productsIn(body)
        .flatMap((product) => inProduct(product, ended))
        .map((section) => ({ ...section, headlines: [...warnings, ...section.headlines] })),
    ),
    issuer: `NAVTEX station ${messages[0]?.station ?? ''}`,
    problems: forecasts
      .filter(({ garbled }) => garbled)
      .map(({ subject, station, serial }) => ({ kind: 'garbled', where: `${station}${subject}${serial}` })),
    subjects: forecasts.length > 0 ? [] : messages.map(subjectOf),
  };
}

function inProduct(product: Product, ended: boolean): readonly Section[] {
  if (isHighSeas(product)) return highSeasSections(product);
  const blocks = blocksIn(product);
  if (blocks.length === 0) return areaSections(product, ended);
  const nearShore = NEAR_SHORE.test(product.text.slice(0, 1000));
  return blocks.map((block) =>
    sectionOf(block, nearShore, block.ended || (ended && block.zones.length === 0)),
  );
}

function sectionOf(
  { zones, name, purge, issue, headlines, periods }: Block,
  nearShore: boolean,
  ended: boolean,
): Section {
  return {
    ...{ zones, name, purge, issue, headlines, ended },
    wide: false,
    hoursTaken: false,
    periods: (at) => timedPeriods(periods, at, nearShore),
  };
}

/** The first sentence of a warning that says what it warns of. */
function warningOf({ body }: NavtexMessage): string {
  const sentences = body.replace(/\s+/g, ' ').split('.');
  return (sentences.find((sentence) => /WARNING|GALE|STORM/i.test(sentence)) ?? sentences[0] ?? '')
    .trim()
    .slice(0, 300);
}
