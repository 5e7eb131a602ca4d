import type { CheckAnswer, Entry } from '../records'
import { compareWithLimit } from '../sanitize/compare'
import type { LimitFigure } from '../sanitize/types'
import type { SiteCheckReference, SiteCheckRow } from './site-checks'

/**
 * What a reading answers by itself: in order if it keeps to every figure the condition is held against, not in order if
 * it misses one; null where there is no figure, or the reading or a figure does not read. Each comparison is made in
 * the unit of the reading where the figure is printed in it. The rep may still answer otherwise.
 */
export function answerOfReading(
  row: Pick<SiteCheckRow, 'check' | 'question' | 'references'>,
  value: Entry | null,
): Exclude<CheckAnswer['answer'], 'not-checked'> | null {
  if (value === null || row.references.length === 0) return null
  let missed = false
  for (const reference of row.references) {
    const [first, ...others] = reference.figures.map(asFigure)
    if (first === undefined) return null
    const { bound, source } = reference
    const limit = { id: 'data-plate', what: row.question, bound, source, how: 'record' } as const
    const advice = compareWithLimit(value, { ...limit, figures: [first, ...others] }, row.check)
    if (!advice.ok || !Number.isFinite(advice.value.figure.value)) return null
    missed ||= advice.value.standing === 'misses'
  }
  return missed ? 'not-ok' : 'ok'
}

const asFigure = (figure: SiteCheckReference['figures'][number]): LimitFigure => ({
  value: typeof figure.value === 'number' || figure.value !== '' ? Number(figure.value) : NaN,
  unit: figure.unit,
})
