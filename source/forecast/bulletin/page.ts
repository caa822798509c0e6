/** A piece of prose under reading, in capitals and single blanks. What has been read is blanked out; what is left at the end was not read. */
export interface Page {
  text: string;
  /** Phrases recognised as something a forecast of wind and seas has no place for, such as visibility. */
  readonly setAside: string[];
}

/** Stands where something was read, so that what stood on either side of it never reads as one. */
const READ = '~';

/** Stands for a word in which a radio receiver lost a character and printed a star: never filled in. */
const LOST = '#';

/** Prose as the patterns expect it: capitals, single blanks, plain dashes, and dots that only part clauses made commas. */
function plainProse(prose: string): string {
  return prose
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/\.{2,}|\u2026/g, ' , ')
    .replace(/~/g, ' ')
    .replace(/^ *\* /gm, ' ')
    .replace(/\S*\*\S*/g, LOST)
    .replace(/\s+/g, ' ')
    .trim()
    .toUpperCase();
}

/** The sentences of a prose, each a page of its own. A point between digits ends none. */
export function pagesOf(prose: string): readonly Page[] {
  return plainProse(prose)
    .split(/(?<!\d)[.;]|[.;](?!\d)/)
    .map((text) => ({ text: text.trim(), setAside: [] }))
    .filter(({ text }) => text !== '');
}

/** Blanks out every match of a pattern that `read` does not turn down with false, in order. The pattern has the flag g. */
export function take(page: Page, pattern: RegExp, read: (match: RegExpExecArray) => boolean): void {
  const kept: string[] = [];
  let from = 0;
  for (const match of page.text.matchAll(pattern)) {
    if (match[0] === '' || !read(match)) continue;
    kept.push(page.text.slice(from, match.index), READ);
    from = match.index + match[0].length;
  }
  page.text = kept.join('') + page.text.slice(from);
}

/** Blanks out what is no figure of wind or sea; where it holds a digit it is shown as not read. */
export function setAside(page: Page, pattern: RegExp): void {
  take(page, pattern, ([phrase]) => {
    page.setAside.push(phrase.trim());
    return true;
  });
}

/** The phrases that still hold a digit or a lost word, and those set aside that do. */
export function leftOver({ text, setAside: aside }: Page): readonly string[] {
  return [...aside, ...text.split(/~|,(?!\d)/)]
    .map((phrase) => phrase.trim())
    .filter((phrase) => /\d|#/.test(phrase));
}
