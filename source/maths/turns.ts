/** Long work that stops now and then, after some milliseconds each, so that others may have their turn. What comes out is the same however it is taken. */
export type Turns<T> = Generator<undefined, T, undefined>;

/** Takes all turns one after the other. */
export function inOneGo<T>(work: Turns<T>): T {
  for (;;) {
    const turn = work.next();
    if (turn.done) return turn.value;
  }
}
