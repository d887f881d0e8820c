/** Who wants to be told when something of a name changes. */
export function watchers() {
  const all = new Map<string, Set<() => void>>();
  return {
    changed(id: string): void {
      for (const watcher of all.get(id) ?? []) watcher();
    },
    /** Calls back on every change, until the returned function is called. */
    watch(id: string, watcher: () => void): () => void {
      const own = all.get(id) ?? new Set();
      all.set(id, own.add(watcher));
      return () => {
        own.delete(watcher);
        if (own.size === 0) all.delete(id);
      };
    },
  };
}
