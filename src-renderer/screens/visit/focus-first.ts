/**
 * Puts the keyboard on the first thing to do in a part of the visit: what carries `data-first`, else the part itself.
 * A text box is left alone where a finger works, since touching it brings a keypad up over the page.
 */
export function focusFirst(part: HTMLElement | undefined): void {
  const finger = window.matchMedia('(pointer: coarse)').matches
  const marked = [...(part?.querySelectorAll<HTMLElement>('[data-first]') ?? [])].map((place) =>
    place.matches('button, a, input') ? place : place.querySelector<HTMLElement>('input, button'),
  )
  const first = marked.find(
    (place) =>
      place !== null && place.offsetParent !== null && !(finger && place instanceof HTMLInputElement),
  )
  const target = first ?? part
  target?.focus({ preventScroll: true })
  if (first !== undefined && first !== null) first.scrollIntoView({ block: 'nearest' })
}

/** Whether the keyboard stands nowhere, as after the button it stood on has gone. */
export const focusIsLost = (): boolean =>
  document.activeElement === null || document.activeElement === document.body
