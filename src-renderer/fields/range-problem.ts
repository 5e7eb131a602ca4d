import { sentence } from '#core/messages/sentence'
import type { Dimension } from '#core/units/dimensions'
import type { EntryOf, NumberText } from '#core/units/entry'
import { read, readNumber } from '#core/units/read'

interface Range {
  readonly low?: number
  readonly high?: number
  readonly above?: number
}

/** What is wrong with an entry that is there, in words; null when nothing is, or when it is empty. Canonical units. */
export function entryProblem<D extends Dimension>(
  entry: EntryOf<D> | null,
  field: string,
  range: Range,
): string | null {
  if (entry === null) return null
  const outcome = read<D>(entry, field, range)
  return outcome.ok ? null : sentence(outcome.problem)
}

/** The same for a plain number. */
export function numberProblem(text: NumberText | null, field: string, range: Range): string | null {
  if (text === null) return null
  const outcome = readNumber(text, field, range)
  return outcome.ok ? null : sentence(outcome.problem)
}
