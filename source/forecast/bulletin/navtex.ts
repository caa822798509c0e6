/** One message of a NAVTEX receiver: `ZCZC` and four characters in front, `NNNN` behind. */
export interface NavtexMessage {
  readonly station: string;
  readonly subject: string;
  readonly serial: number;
  readonly body: string;
  /** It has its NNNN. */
  readonly ended: boolean;
  /** The receiver printed a star for at least one character. */
  readonly garbled: boolean;
}

/** What the second character of a message says it is (NAVTEX receiver manuals). */
const SUBJECTS: { readonly [letter: string]: string } = {
  A: 'a navigational warning',
  B: 'a meteorological warning',
  C: 'an ice report',
  D: 'search and rescue',
  E: 'a meteorological forecast',
  F: 'a pilot service message',
  L: 'a navigational warning',
  Z: 'no message on hand',
};

/** The messages in a text; none where it has no ZCZC. Text outside of them is left out. */
export function navtexMessages(text: string): readonly NavtexMessage[] {
  return text
    .split(/^.{0,20}?ZCZC /m)
    .slice(1)
    .flatMap((part) => {
      const found = /^([A-Z*])([A-Z*])([\d*]{2})\s/.exec(part);
      if (!found) return [];
      const [header, station = '', subject = '', serial = ''] = found;
      const end = part.indexOf('NNNN');
      const body = part.slice(header.length, end < 0 ? part.length : end);
      return [
        {
          station,
          subject,
          serial: Number(serial),
          body,
          ended: end >= 0,
          garbled: /\*/.test(header + body),
        },
      ];
    });
}

export function subjectOf({ subject }: NavtexMessage): string {
  return Object.hasOwn(SUBJECTS, subject) ? SUBJECTS[subject]! : `a message of subject ${subject}`;
}
