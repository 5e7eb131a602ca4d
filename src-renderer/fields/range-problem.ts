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

/** Whether "at least" stands above "at most", in words, whatever the units; null where either is empty or does not read. */
export function crossedProblem<D extends Dimension>(
  least: EntryOf<D> | null,
  most: EntryOf<D> | null,
): string | null {
  if (least === null || most === null) return null
  const low = read<D>(least, 'least')
  const high = read<D>(most, 'most')
  return low.ok && high.ok && low.value > high.value
    ? '“At least” is more than “at most”. Check both numbers and their units against the plate.'
    : null
}
