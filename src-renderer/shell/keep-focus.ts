import { placeOf, type Place } from '../parts/focus-place'

/**
 * Keeps the keyboard's place when what it stood on is taken away or moved: a card removed, a row moved, a button that
 * gives way to its question. The same control if it is still there, else the one that stands where it stood, as near as
 * the page has one. Nothing is done for a person who taps or clicks, nor when a screen placed the keyboard itself.
 */
export function keepFocus(root: HTMLElement): () => void {
  let last: HTMLElement | null = null
  let place: Place | null = null
  let byKeys = false

  const remember = (event: FocusEvent): void => {
    if (!(event.target instanceof HTMLElement)) return
    last = event.target
    place = placeOf(last, root)
  }
  const keys = (): void => void (byKeys = true)
  const pointer = (): void => {
    byKeys = false
    last = place = null
  }
  const watch = new MutationObserver((records) => {
    const lost = last
    if (lost === null || !byKeys || !records.some((record) => tookAway(record, lost))) return
    // a screen or a dialog that places the keyboard itself does so before the next frame
    requestAnimationFrame(() => {
      if (last !== lost || (document.activeElement ?? document.body) !== document.body) return
      place?.()?.focus()
    })
  })

  root.addEventListener('focusin', remember)
  window.addEventListener('keydown', keys, true)
  window.addEventListener('pointerdown', pointer, true)
  watch.observe(root, { childList: true, subtree: true, attributes: true, attributeFilter: ['disabled'] })
  return () => {
    watch.disconnect()
    root.removeEventListener('focusin', remember)
    window.removeEventListener('keydown', keys, true)
    window.removeEventListener('pointerdown', pointer, true)
  }
}

const tookAway = (record: MutationRecord, lost: HTMLElement): boolean =>
  record.type === 'attributes'
    ? record.target === lost
    : !lost.isConnected || [...record.removedNodes].some((node) => node.contains(lost))
