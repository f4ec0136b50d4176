import type { Chats, Step } from './chats.ts';

/** The one place where the chats change; whoever listens is told after each change. */
export type Room = Readonly<{
  read(): Chats;
  change<R>(step: (chats: Chats) => Step<R>): R;
  /** Tells the listeners that something outside the chats has changed, such as the time. */
  announce(): void;
  onChange(listener: () => void): () => void;
}>;

export function openRoom(first: Chats): Room {
  let chats = first;
  const listeners = new Set<() => void>();
  const announce = (): void => {
    for (const listener of listeners) listener();
  };
  return {
    read: () => chats,
    change(step) {
      const next = step(chats);
      const changed = next.chats !== chats;
      chats = next.chats;
      if (changed) announce();
      return next.result;
    },
    announce,
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
