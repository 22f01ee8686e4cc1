/** One value, the ways to change it, and who wants to know. */
export interface Store<T> {
  get(): T;
  update(change: (value: T) => T): void;
  /** calls back after every change; returns how to stop */
  subscribe(listener: () => void): () => void;
}

export function makeStore<T>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  return {
    get: () => value,
    update(change) {
      const next = change(value);
      if (Object.is(next, value)) return;
      value = next;
      for (const listener of [...listeners]) listener();
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
