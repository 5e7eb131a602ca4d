import type { Entry, Settings } from '#core/records/index'
import type { CodeLimit } from '#core/sanitize/types'
import { UNITS, type UnitName } from '#core/units/dimensions'
import { setCodeLimit } from '../../commands/library'

/** A figure of local code in place of a shipped one, and where it stands. */
export interface LocalFigure {
  readonly figure: Entry
  readonly source: string
}

/** The units a limit can be written in: those it is printed in, the governing one first. */
export function unitsOfLimit(limit: CodeLimit): readonly [UnitName, ...UnitName[]] {
  const [first, ...others] = limit.figures
  return [first.unit, ...others.map((figure) => figure.unit)]
}

/** Every key the settings may hold for a limit: itself, or itself with a unit. */
const isFor = (limit: CodeLimit, key: string): boolean => key === limit.id || key.startsWith(`${limit.id}:`)

/** `limit` is the shipped one. */
export function localFigure(settings: Settings, limit: CodeLimit): LocalFigure | null {
  const row = settings.codeLimits.findLast((one) => isFor(limit, one.limit))
  if (row === undefined) return null
  const named = row.limit.split(':')[1]
  const unit =
    named !== undefined && Object.hasOwn(UNITS, named) ? (named as UnitName) : limit.figures[0].unit
  return { figure: { value: row.value, unit }, source: row.source }
}

/** Puts a local figure in place of every earlier one; null brings the shipped figure back. */
export function putLocalFigure(settings: Settings, limit: CodeLimit, local: LocalFigure | null): Settings {
  const cleared = settings.codeLimits
    .filter((row) => isFor(limit, row.limit))
    .reduce((current, row) => setCodeLimit(current, row.limit, null), settings)
  if (local === null) return cleared
  const { value, unit } = local.figure
  const key = unit === limit.figures[0].unit ? limit.id : `${limit.id}:${unit}`
  return setCodeLimit(cleared, key, { value, source: local.source })
}
