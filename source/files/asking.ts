import type { Interface } from 'node:readline';

/**
 * Asks a person line by line on a terminal; null once the input has ended (Ctrl+D) or been broken off (Ctrl+C). Lines pasted all at once answer
 * one question after the other.
 */
export function askingOn(
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
): (question: string) => Promise<string | null> {
  const early: string[] = [];
  let lines: Interface | null = null;
  let waiting: ((line: string | null) => void) | null = null;
  let ended = false;
  const tell = (line: string | null) => {
    const ask = waiting;
    waiting = null;
    if (ask) ask(line);
    else if (line !== null) early.push(line);
  };
  const begin = async () => {
    const { createInterface } = await import('node:readline');
    const begun = createInterface({ input, output });
    begun.on('line', tell);
    begun.on('close', () => {
      ended = true;
      tell(null);
    });
    return begun;
  };
  return async (question) => {
    const next = early.shift();
    if (next !== undefined || ended) {
      output.write(`${question}${next ?? ''}\n`);
      return next ?? null;
    }
    lines ??= await begin();
    const begun = lines;
    return await new Promise((settle) => {
      waiting = (line) => {
        if (!ended) begun.pause();
        settle(line);
      };
      begun.setPrompt(question);
      begun.prompt();
    });
  };
}
