import type { Settings } from '../records'
import { UNITS, type UnitName } from '../units/dimensions'
import { readNumber } from '../units/read'
import { CODE_LIMIT_IDS, SHIPPED_LIMITS } from './code-limit-table'
import type { CodeLimit, CodeLimitId, CodeLimits, LimitFigure } from './types'

/**
 * The limits in force: the shipped table with the replacements of `Settings.codeLimits`. A replacement names a limit,
 * `rinse-pressure-min`, and is then in the limit's first printed unit; or a limit and a unit of the same kind,
 * `rinse-pressure-min:bar`. It replaces every printed figure, so that no reading is compared with the old one.
 * A replacement that names no limit, or whose number does not read, is passed over.
 */
export function codeLimits(settings: Pick<Settings, 'codeLimits'> | null): CodeLimits {
  const limits: Record<CodeLimitId, CodeLimit> = { ...SHIPPED_LIMITS }
  for (const edit of settings?.codeLimits ?? []) {
    const [name = '', unitName] = edit.limit.split(':')
    if (!isLimitId(name)) continue
    const shipped = SHIPPED_LIMITS[name]
    const unit = unitIn(shipped, unitName)
    const value = readNumber(edit.value, edit.limit)
    if (unit === null || !value.ok) continue
    const figure: LimitFigure = { value: value.value, unit }
    const source = edit.source.trim() === '' ? 'entered in the settings' : edit.source.trim()
    limits[name] = { ...shipped, figures: [figure], source, how: 'settings' }
  }
  return limits
}

const isLimitId = (name: string): name is CodeLimitId => (CODE_LIMIT_IDS as readonly string[]).includes(name)

function unitIn(limit: CodeLimit, name: string | undefined): UnitName | null {
  const first = limit.figures[0].unit
  if (name === undefined) return first
  if (!Object.hasOwn(UNITS, name)) return null
  const unit = name as UnitName
  return UNITS[unit].dimension === UNITS[first].dimension ? unit : null
}
