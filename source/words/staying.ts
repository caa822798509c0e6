import type { VerdictDocument } from './document.ts';

const MS_A_MINUTE = 60_000;

/** Whether staying is the danger: where she lies becomes untenable before she could leave, or before the work that makes her ready is done (model 8). */
export function stayingPresses({
  at,
  staying,
  verdict,
  windows,
  weatherAlone,
  toGetReady,
  toGetReadySuffices,
}: VerdictDocument): boolean {
  if (staying === null) return false;
  const now = Date.parse(at);
  const workMinutes = toGetReady.reduce((sum, { minutes }) => sum + minutes, 0);
  const done = now + workMinutes * MS_A_MINUTE;
  const later = windows.map((window) => Date.parse(window.at)).filter((opens) => opens > now);
  const alone = toGetReadySuffices && weatherAlone ? [Date.parse(weatherAlone.at)] : [];
  const opens = { go: [now], hold: later, 'not ready': alone }[verdict];
  return Date.parse(staying.until) <= Math.max(done, opens[0] ?? Number.POSITIVE_INFINITY);
}
