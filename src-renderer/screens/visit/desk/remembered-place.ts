import type { Keep } from '../watch/stopwatch.svelte'

/** Which part of a visit was last on the bench, so that a half-finished visit comes back where it stood. */
export const recallPlace = (keep: Keep, visitId: string): string | null =>
  keep.getItem(`dosewright.visit.${visitId}.place`)

export const rememberPlace = (keep: Keep, visitId: string, place: string): void =>
  keep.setItem(`dosewright.visit.${visitId}.place`, place)
