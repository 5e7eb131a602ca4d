import type { SaveState } from '../state/save-state'

/** The save state in words: short for the head of the screen, long for a reader. */
export function saveWords(save: SaveState): { readonly short: string; readonly long: string } {
  switch (save.kind) {
    case 'saved': {
      const words = save.at === null ? 'Saved' : `Saved ${clockTime(save.at)}`
      return { short: words, long: words }
    }
    case 'saving':
    case 'waiting':
      return { short: 'Saving…', long: 'Saving…' }
    case 'not-saved':
      return { short: 'Not saved', long: notSavedWords(save.reason) }
  }
}

/** The reason as a sentence that says once that nothing was saved; some reasons say it themselves. */
export const notSavedWords = (reason: string): string =>
  reason.startsWith('Not saved') ? reason : `Not saved: ${reason}`

const clockTime = (instant: string): string => {
  const time = new Date(instant)
  return `${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`
}
