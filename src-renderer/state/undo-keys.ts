export type UndoKey = 'undo' | 'redo'

/**
 * What a key press means for undo, or null. In a box with typing of its own (`data-typed`) the key belongs to the
 * text, as it does in any text that is not one of our fields.
 */
export function undoKey(event: {
  readonly key: string
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly typing: boolean
}): UndoKey | null {
  if (event.typing || event.altKey || !(event.ctrlKey || event.metaKey)) return null
  const key = event.key.toLowerCase()
  if (key === 'z') return event.shiftKey ? 'redo' : 'undo'
  if (key === 'y' && event.ctrlKey && !event.shiftKey) return 'redo'
  return null
}
