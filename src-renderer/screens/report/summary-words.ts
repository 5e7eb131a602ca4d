import type { CompareRow } from '../visit/close/compare-rows'

const isIn = (state: CompareRow['left']['state']): boolean =>
  state === 'proved-in' || state === 'in-not-proved'

/** The visit in one sentence, for somebody who reads nothing else. */
export function headline(rows: readonly CompareRow[]): string {
  const tested = rows.filter((row) => row.left.state !== 'not-tested')
  const good = tested.filter((row) => isIn(row.left.state))
  const mended = good.filter((row) => !isIn(row.found.state) && row.found.state !== 'not-tested')
  if (tested.length === 0) return 'No pump was timed at this visit.'
  const all = good.length === tested.length
  const left = all
    ? tested.length === 1
      ? 'The pump was left inside its window'
      : `All ${tested.length} pumps were left inside their windows`
    : `${good.length} of ${tested.length} pumps ${good.length === 1 ? 'was' : 'were'} left inside ${good.length === 1 ? 'its' : 'their'} window`
  const how =
    mended.length === 0
      ? ''
      : `; ${list(mended.map((row) => row.name))} ${mended.length === 1 ? 'was' : 'were'} put right`
  return `${left}${how}.`
}

const list = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`
