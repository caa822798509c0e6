/** What a terminal might obey, or what might turn, hide, pile up or tear what is drawn. Letters on both sides, so that each can be found again in what was written. */
export const HOSTILE: readonly string[] = [
  'nul\u0000nul',
  'bell\u0007bell',
  'back\b\b\b\bback',
  'feed\u000b\u000cfeed',
  'return\rreturn',
  'shift\u000e\u000fshift',
  'delete\u007fdelete',
  'cancel\u0018\u001acancel',
  'clear\u001b[2J\u001b[Hclear',
  'colour\u001b[31;1mcolour',
  'screen\u001b[?1049lscreen',
  'title\u001b]0;owned\u0007title',
  'link\u001b]8;;http://invented.example\u001b\\link',
  'clip\u001b]52;c;b3duZWQ=\u0007clip',
  'string\u001bPq#0;2;0;0;0\u001b\\string',
  'private\u001b_Gf=100;AAAA\u001b\\private',
  'reset\u001bcreset',
  'open\u001b[',
  'csi\u009b2Jcsi',
  'osc\u009d0;owned\u009cosc',
  'dcs\u0090q\u009cdcs',
  'next\u0085next',
  'turned\u202eturned\u202c',
  'embedded\u202a\u202bembedded',
  'isolated\u2066\u2067\u2068isolated',
  'marked\u200e\u200f\u061cmarked',
  'hidden\u200b\u2060\ufeff\u00adhidden',
  'tagged\u{e0041}\u{e007f}tagged',
  'owned\ue000\u{10ffff}owned',
  'half\ud83dhalf\udc00',
  'lines\u2028\u2029lines',
  `piled${'\u0301'.repeat(300)}piled`,
  `wide 燈台守\u1100\u1161\u11a8 مرحبا שלום 👩\u200d🔧🏽 ${'long '.repeat(300)}`,
  'fields\n\n\tfields\r\n',
];

/** The first character that may never reach a screen: controls but line feed and tab, bidi, hidden, private and unassigned ones, halves, separators; null when there is none. */
export function forbiddenIn(text: string): string | null {
  const found =
    /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\p{Bidi_Control}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]|(?!\u200d)\p{Cf}/u.exec(
      text,
    );
  return found && JSON.stringify(text.slice(Math.max(0, found.index - 40), found.index + 20));
}

/** A name may have 200 letters. */
const MOST_NAME = 150;

/** The same boat file with every text a person writes freely made hostile, by one text or by all of them in turn. */
export function hostileBoat(boat: object, texts: readonly string[]): object {
  const free = new Set(['name', 'note', 'place', 'locker']);
  let next = 0;
  const hostile = () => {
    next += 1;
    return texts[(next - 1) % texts.length]!.slice(0, MOST_NAME);
  };
  const turned = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((one) => turned(one, key));
    if (typeof value === 'object' && value !== null)
      return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, turned(one, name)]));
    return free.has(key) && typeof value === 'string' ? `${hostile()}${value.slice(0, 40)}` : value;
  };
  return turned(boat, '') as object;
}
