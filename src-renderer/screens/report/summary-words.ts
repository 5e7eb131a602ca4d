import type { PumpState } from '#core/worksheet/types'
import type { CompareRow } from '../visit/close/compare-rows'

const isIn = (state: CompareRow['left']['state']): boolean =>
  state === 'proved-in' || state === 'in-not-proved'

/** The visit in one sentence, for somebody who reads nothing else. */
export function headline(rows: readonly CompareRow[]): string {
  const tested = rows.filter((row) => row.left.state !== 'not-tested')
  const good = tested.filter((row) => isIn(row.left.state))
  const mended = good.filter((row) => !isIn(row.found.state) && row.found.state !== 'not-tested')
  if (tested.length === 0) return 'No pump was timed at this visit.'
  if (tested.every((row) => row.left.state === 'cannot-tell'))
    return `The runs do not tell where the ${tested.length === 1 ? 'pump was' : 'pumps were'} left.`
  const left = leftWords(good.length, tested.length, rows.length)
  const how =
    mended.length === 0
      ? ''
      : `; ${list(mended.map((row) => row.name))} ${mended.length === 1 ? 'was' : 'were'} put right`
  return `${left}${how}.`
}

const inside = (count: number): string =>
  count === 1 ? 'was left inside its window' : 'were left inside their windows'

/** How many of the pumps timed were left in; where others were not timed, no word may seem to speak of them. */
function leftWords(good: number, timed: number, all: number): string {
  if (timed === 1) {
    const pump = all === 1 ? 'The pump' : 'The one pump that was timed'
    return `${pump} ${good === 1 ? inside(1) : 'was not left inside its window'}`
  }
  const pumps = timed < all ? 'pumps that were timed' : 'pumps'
  if (good === 0) return `None of the ${timed} ${pumps} ${inside(1)}`
  if (good < timed) return `${good} of the ${timed} ${pumps} ${inside(good)}`
  return `${timed === 2 ? 'Both' : `All ${timed}`} ${pumps} ${inside(timed)}`
}

/**
 * What a visit leaves open, by name, where nobody wrote advice: pumps left outside their windows, pumps whose runs do not
 * tell, pumps changed after their last test, conditions not in order. Null: nothing.
 */
export function openWords(
  rows: readonly CompareRow[],
  wrongConditions: number,
  changed: readonly string[],
): string | null {
  const left = (...states: readonly PumpState[]): readonly string[] =>
    rows
      .filter((row) => states.includes(row.left.state) && !changed.includes(row.name))
      .map((row) => row.name)
  const outside = left('proved-out', 'out-not-proved')
  const unknown = left('cannot-tell')
  const said = [
    outside.length === 0
      ? ''
      : `${list(outside)}: outside ${outside.length === 1 ? 'its window' : 'their windows'}.`,
    unknown.length === 0 ? '' : `${list(unknown)}: the runs do not tell yet.`,
    changed.length === 0 ? '' : `${list(changed)}: changed after the last test, to be timed again.`,
    wrongConditions === 0
      ? ''
      : wrongConditions === 1
        ? 'The site condition not in order above.'
        : `The ${wrongConditions} site conditions not in order above.`,
  ].filter((part) => part !== '')
  return said.length === 0 ? null : `Still to be put right: ${said.join(' ')}`
}

const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`
