import type { Id, Instrument, Machine, Product, Site, Visit } from '#core/records/index'
import type { DecimalSign } from '#core/units/parse'
import { turnForecasts, type TurnForecast } from '#core/worksheet/turn-forecasts'
import type { VisitResult, Worksheet } from '#core/worksheet/types'
import type { SiteSession } from '../../state/site-session.svelte'

/** Everything a service report shows: the visit, what was worked out from it, and the set-up it counts with. */
export interface Report {
  readonly site: Site
  readonly visit: Visit
  readonly result: VisitResult
  readonly machines: readonly Machine[]
  readonly products: readonly Product[]
  readonly instruments: readonly Instrument[]
  readonly firm: string
  readonly sign: DecimalSign
  readonly version: string
  /** the month's cost at today's settings; null for any visit but the last, whose settings are the ones that count */
  readonly month: Worksheet['totals'] | null
  /** what time does to each pump; empty for any visit but the last, after which the record went on */
  readonly drift: Worksheet['drift']
  /** what each turn was expected to do, beside what came */
  readonly forecasts: (pumpId: Id) => readonly TurnForecast[]
}

/** The report of one visit; null when the visit is not there. */
export function reportOf(session: SiteSession, visitId: Id): Report | null {
  const { site, worksheet, settings } = session
  const visit = site.visits.find((one) => one.id === visitId)
  const result = worksheet.visits.find((one) => one.visitId === visitId)
  if (visit === undefined || result === undefined) return null
  const last = worksheet.visits.at(-1)?.visitId === visitId
  const kept = site.snapshots.find((snapshot) => snapshot.id === visit.setupId)
  const machines = kept?.machines ?? site.machines
  return {
    site,
    visit,
    result,
    machines,
    products: kept?.products ?? session.products,
    instruments: kept?.instruments ?? session.instruments,
    firm: settings.firmName,
    sign: settings.decimalSign,
    version: session.workspace.host.version,
    month: last ? worksheet.totals : null,
    drift: last ? worksheet.drift : [],
    forecasts: (pumpId) => turnForecasts(site, worksheet, machines, { visitId, pumpId }),
  }
}

/** The name of a machine as it stood at the visit; empty when the set-up has it no more. */
export const machineName = (report: Pick<Report, 'machines'>, id: Id): string =>
  report.machines.find((machine) => machine.id === id)?.name ?? ''
