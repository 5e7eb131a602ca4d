const STOPS =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary'

/**
 * Keeps the keyboard's place when what it stood on is taken away or moved: a card removed, a row moved, a button that
 * gives way to its question. The same control if it is still there, else the one that stands where it stood, as near as
 * the page has one. Nothing is done for a person who taps or clicks, nor when a screen placed the keyboard itself.
 */
export function keepFocus(root: HTMLElement): () => void {
  let last: HTMLElement | null = null
  let around: readonly Element[] = []
  let order: readonly HTMLElement[] = []
  let byKeys = false

  const remember = (event: FocusEvent): void => {
    if (!(event.target instanceof HTMLElement)) return
    last = event.target
    around = ancestors(last, root)
    order = stops(root)
  }
  const keys = (): void => void (byKeys = true)
  const pointer = (): void => {
    byKeys = false
    last = null
  }
  const watch = new MutationObserver((records) => {
    const lost = last
    if (lost === null || !byKeys || !records.some((record) => tookAway(record, lost))) return
    // a screen or a dialog that places the keyboard itself does so before the next frame
    requestAnimationFrame(() => {
      if (last !== lost || (document.activeElement ?? document.body) !== document.body) return
      const next = placeAfterLoss(lost, around, order)
      next?.focus()
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

/** Where the keyboard goes: the control itself, or in the nearest part still there the first one after where it stood. */
function placeAfterLoss(
  lost: HTMLElement,
  around: readonly Element[],
  order: readonly HTMLElement[],
): HTMLElement | null {
  if (isStop(lost)) return lost
  const before = order.slice(0, Math.max(0, order.indexOf(lost))).findLast((stop) => stop.isConnected)
  for (const part of around) {
    if (!part.isConnected) continue
    const here = stops(part)
    const next = here.find((stop) => before === undefined || follows(stop, before))
    const found = next ?? here.at(-1)
    if (found !== undefined) return found
    // a screen with nothing to stand on yet is about to be filled
    if (part.matches('main, dialog')) return null
  }
  return null
}

const isStop = (element: HTMLElement): boolean =>
  element.isConnected && element.matches(STOPS) && element.checkVisibility()

const stops = (part: Element): HTMLElement[] =>
  [...part.querySelectorAll<HTMLElement>(STOPS)].filter((stop) => stop.checkVisibility())

const follows = (a: Element, b: Element): boolean =>
  (b.compareDocumentPosition(a) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0

/** The parts an element stands in, nearest first, up to and with the root. */
function ancestors(element: Element, root: Element): readonly Element[] {
  const found: Element[] = []
  for (let part = element.parentElement; part !== null; part = part.parentElement) {
    found.push(part)
    if (part === root) break
  }
  return found
}
