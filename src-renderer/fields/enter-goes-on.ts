const STOPS =
  'input:not([type=radio], [type=checkbox], :disabled), select:not(.of-unit, :disabled), [data-next]'

/**
 * Enter in a box goes to the next box of the same flow; after the last one to the button marked `data-next`. Where there
 * is none the entry is taken and the keyboard stays; a finger's keyboard goes away instead, as it covers the page.
 */
export function goOn(from: HTMLElement): void {
  const flow = from.closest('[data-flow]') ?? from.closest('form') ?? document.querySelector('main')
  if (flow === null) return
  const stops = [...flow.querySelectorAll<HTMLElement>(STOPS)].filter((stop) => stop.checkVisibility())
  const next = stops[stops.indexOf(from) + 1]
  if (next !== undefined) return next.focus()
  from.blur()
  if (from.isConnected && !matchMedia('(pointer: coarse)').matches) from.focus()
}
