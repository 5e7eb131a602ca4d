import type { Problem } from '#core/problem'
import type { Instant } from '#core/records/index'
import type { DocumentSave } from './saved-document.svelte'

export type SaveState =
  | { readonly kind: 'saved'; readonly at: Instant | null }
  | { readonly kind: 'saving' }
  | { readonly kind: 'waiting' }
  | { readonly kind: 'not-saved'; readonly reason: string }

/** The state of several documents as one: the worst of them, and the latest time when all are saved. */
export function mergeSaves(
  saves: readonly DocumentSave[],
  sentence: (problem: Problem) => string,
): SaveState {
  const failed = saves.find((save) => save.kind === 'not-saved')
  if (failed?.kind === 'not-saved') return { kind: 'not-saved', reason: sentence(failed.problem) }
  if (saves.some((save) => save.kind === 'saving')) return { kind: 'saving' }
  if (saves.some((save) => save.kind === 'waiting')) return { kind: 'waiting' }
  const times = saves.flatMap((save) => (save.kind === 'saved' && save.at !== null ? [save.at] : []))
  return { kind: 'saved', at: times.toSorted().at(-1) ?? null }
}
