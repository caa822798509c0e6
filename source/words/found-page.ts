import type { ClosedHuntDocument } from './found-document.ts';
import { closedHuntParts } from './found-parts.ts';
import { wrapped } from './lines.ts';
import { capital } from './say.ts';

/** A closed hunt as a page of words. Moments in `zone`. */
export function closedHuntPage(
  { item, closed }: { readonly item: { readonly name: string }; readonly closed: ClosedHuntDocument },
  columns: number,
  zone: string,
): string {
  const parts = closedHuntParts(closed, zone).flatMap(({ title, lines }) => [
    '',
    title,
    ...lines.flatMap((text) => wrapped(text, columns, 2, 2)),
  ]);
  return `${[`${capital(item.name)}: ${closed.table.title}, closed`, ...parts].join('\n')}\n`;
}
