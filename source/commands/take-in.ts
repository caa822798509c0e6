import type { Content } from '../forecast/content.ts';
import { finished } from '../forecast/recognise.ts';
import type { BoatFolder, Outside } from '../outside.ts';
import { bad, type Result } from '../trouble.ts';

/** Keeps a forecast typed on the board, in the shape of one typed in the shell; ok when it is on the disk. */
export async function takeIn(
  content: Content,
  { text, now }: { readonly text: string; readonly now: number },
  { folder, outside }: { readonly folder: BoatFolder; readonly outside: Pick<Outside, 'sha256'> },
): Promise<Result<string>> {
  const sha256 = outside.sha256(new TextEncoder().encode(text));
  const read = finished(content, [], { now, sha256 });
  if (!read.ok) return read;
  return read.value.kind === 'forecast'
    ? folder.keepForecast(read.value.forecast)
    : bad({ kind: 'no figures' });
}
