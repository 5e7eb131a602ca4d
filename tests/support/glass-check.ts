import type { GlassCheck } from '#core/records/index'

/** A glass check of one answer, as the kitchen's view makes it. */
export const check: GlassCheck = {
  id: '3b241101-e2bb-4255-8caf-4136c566a962',
  at: '2026-03-10T09:00:00.000Z',
  machineId: null,
  seen: ['white-film'],
  ware: ['glass'],
  spread: 'all',
  since: 'weeks',
  answers: [{ evidence: 'acid-clears', answer: 'yes' }],
  confirmedCause: null,
  confirmedAt: null,
}
