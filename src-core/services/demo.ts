import { decode } from '../documents/decode'
import { shiftDays } from '../documents/shift-days'
import type { SiteFile } from '../documents/site-schema'
import { lastVisitAt } from '../documents/summarize-site'
import { ok } from '../outcome'
import type { Id, Instant } from '../records'
import { daysBetween } from '../units/days'
import type { Service } from './service'
import { importFile } from './transfer'

/** How long before today the youngest visit of the demo sites lies. */
const DAYS_SINCE_LAST_VISIT = 3

/**
 * Adds the demo sites that are not here, all moved by the same number of days, so that the newest visit among them was
 * three days ago. Sites that are here already, changed or not, stay as they are.
 */
export const addDemoSites: Service<'demo.add'> = (ports) => async () => {
  const files: SiteFile[] = []
  for (const text of await ports.demos()) {
    const decoded = decode('site', text)
    if (!decoded.ok) return decoded
    files.push(decoded.value.document)
  }
  const days = shift(files, ports.clock.now())
  const ids: Id[] = []
  for (const file of files) {
    const added = await importFile(ports, shiftDays(file, days), { choice: 'keep-mine' })
    if (!added.ok) return added
    ids.push(added.value.id)
  }
  return ok({ ids })
}

function shift(files: readonly SiteFile[], now: Instant): number {
  const newest = files.map(({ site }) => lastVisitAt(site)).filter((at) => at !== null)
  const last = newest.toSorted().at(-1)
  return last === undefined ? 0 : daysBetween(last, now) - DAYS_SINCE_LAST_VISIT
}
