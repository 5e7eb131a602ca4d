/** Edits the host has not acknowledged, kept in the tab so that a reload does not lose them. */
export interface UnsentStore {
  readonly read: <T>(name: string) => { readonly base: T; readonly mine: T } | null
  readonly write: (name: string, edits: { readonly base: unknown; readonly mine: unknown }) => void
  readonly remove: (name: string) => void
  /** the documents with such edits */
  readonly names: () => readonly string[]
}

const PREFIX = 'dosewright.unsent.'
const key = (name: string): string => PREFIX + name

export function unsentIn(
  storage: Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>,
): UnsentStore {
  return {
    read: <T>(name: string) => {
      const text = storage.getItem(key(name))
      if (text === null) return null
      try {
        const kept: unknown = JSON.parse(text)
        return typeof kept === 'object' && kept !== null && 'base' in kept && 'mine' in kept
          ? (kept as { readonly base: T; readonly mine: T })
          : null
      } catch {
        return null
      }
    },
    write: (name, edits) => {
      try {
        storage.setItem(key(name), JSON.stringify(edits))
      } catch {
        // The tab's storage is full: the edits are still in memory, and the save state says they are not saved.
      }
    },
    remove: (name) => storage.removeItem(key(name)),
    names: () =>
      Array.from({ length: storage.length }, (_, index) => storage.key(index) ?? '')
        .filter((one) => one.startsWith(PREFIX))
        .map((one) => one.slice(PREFIX.length)),
  }
}
