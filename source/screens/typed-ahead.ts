import type { Message } from './model.ts';

/** What a person does: it has its turn in the order it was typed. */
type Typed = Extract<Message, { is: 'key' | 'pasted' }>;

/**
 * Takes messages, and holds back what is typed while `waits` says so: it has its turn once that is over, so that it means the same however quickly
 * an answer comes. Ctrl+C waits for what was typed before it, not for the answer; a second one for nothing.
 */
export function typedAhead(
  take: (message: Message) => void,
  waits: (typed: Typed) => boolean,
): (message: Message) => void {
  const held: Typed[] = [];
  const insists = (typed: Typed) => isLeaving(typed) && (held.length === 0 || held.some(isLeaving));
  return (message) => {
    if (isTyped(message) && (held.length > 0 || waits(message)) && !insists(message)) {
      held.push(message);
      return;
    }
    take(message);
    while (held.length > 0 && !waits(held[0]!)) take(held.shift()!);
  };
}

function isTyped(message: Message): message is Typed {
  return message.is === 'key' || message.is === 'pasted';
}

function isLeaving(typed: Typed): boolean {
  return typed.is === 'key' && typed.key === 'ctrl c';
}
