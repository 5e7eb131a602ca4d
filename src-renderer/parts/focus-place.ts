const STOPS =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), summary'

/** Asked later: where the keyboard belongs that stood here. Null where nothing to stand on is left. */
export type Place = () => HTMLElement | null

/** Remembers where a control stands on the page, for when it may be gone. */
export function placeOf(control: HTMLElement, root: Element): Place {
  const around = ancestors(control, root)
  const order = stops(root)
  return () => placeAfterLoss(control, around, order)
}

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
