const STOPS =
  'input:not([type=radio], [type=checkbox], :disabled), select:not(.of-unit, :disabled), [data-next]'

/** Enter in a box goes to the next box of the same flow; after the last one to the button marked `data-next`. */
export function goOn(from: HTMLElement): void {
  const flow = from.closest('[data-flow]') ?? from.closest('form') ?? document.querySelector('main')
  if (flow === null) return
  const stops = [...flow.querySelectorAll<HTMLElement>(STOPS)].filter((stop) => stop.offsetParent !== null)
  const next = stops[stops.indexOf(from) + 1]
  if (next === undefined) from.blur()
  else next.focus()
}
