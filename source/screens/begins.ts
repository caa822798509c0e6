/** Whether a word of the name, and what follows it, begins so; `begun` in small letters. */
export function beginsIn(name: string, begun: string): boolean {
  return ` ${name.toLocaleLowerCase()}`.includes(` ${begun}`);
}
