import type { Day, Id, Product, Settings, Site, Visit } from '../records'
import type { SpendInput } from '../spend/ground'
import { siteGlance, type SiteGlance } from '../spend/site-glance'
import { siteSpend, type SiteSpend } from '../spend/site-spend'
import type { PumpDose } from '../spend/types'
import { doneOn } from '../units/days'
import { pumpSettings } from './pump-settings'
import type { PumpVisit, TestResult, Worksheet } from './types'

interface Records {
  readonly site: Site
  readonly products: readonly Product[]
  readonly settings: Pick<Settings, 'serviceLevel'>
}

/**
 * What a site uses and costs, month by month, with stock, orders and what-ifs: all of the spend, from a worksheet. Kept
 * apart from the worksheet itself, because a calibration at the bench does not need it at every key stroke.
 */
export const spendOf = (worksheet: Pick<Worksheet, 'visits' | 'asOf'>, records: Records): SiteSpend =>
  siteSpend(inputOf(worksheet, records))

/** The part of it that a list of many sites shows. */
export const glanceOf = (worksheet: Pick<Worksheet, 'visits' | 'asOf'>, records: Records): SiteGlance =>
  siteGlance(inputOf(worksheet, records))

const inputOf = (
  worksheet: Pick<Worksheet, 'visits' | 'asOf'>,
  { site, products, settings }: Records,
): SpendInput => ({
  site,
  products,
  asOf: worksheet.asOf,
  serviceLevel: settings.serviceLevel,
  doses: dosesOf(worksheet, site),
})

/** What every visit found and left, pump by pump. The last test counts at today's seconds per rack. */
function dosesOf(worksheet: Pick<Worksheet, 'visits' | 'asOf'>, site: Site): readonly PumpDose[] {
  const doses = worksheet.visits.flatMap((result) => {
    const visit = site.visits.find((item) => item.id === result.visitId)
    return visit === undefined ? [] : result.pumps.map((pump) => doseOf(visit, pump, worksheet.asOf))
  })
  const today = new Map(
    pumpSettings(
      site.machines.flatMap((machine) => machine.pumps),
      worksheet.visits,
    ).map((setting) => [setting.pumpId, setting]),
  )
  const last = new Map<Id, PumpDose>()
  for (const dose of doses) if (dose.left !== null) last.set(dose.pumpId, dose)
  return doses.map((dose) => {
    const setting = last.get(dose.pumpId) === dose ? today.get(dose.pumpId) : undefined
    return setting === undefined || setting.dose === null
      ? dose
      : { ...dose, left: setting.dose, flowLeft: setting.flow }
  })
}

function doseOf(visit: Visit, pump: PumpVisit, today: Day): PumpDose {
  const steps = visit.work.find((work) => work.pumpId === pump.pumpId)?.steps ?? []
  const left = pump.tests.findLast((test) => test.flow.ok) ?? null
  const found = pump.asFound
  return {
    visitId: visit.id,
    pumpId: pump.pumpId,
    on: doneOn(visit.startedAt, today),
    found: found?.dose ?? null,
    left: left?.dose ?? null,
    flowLeft: left?.flow ?? null,
    changed:
      found !== null &&
      left !== null &&
      found.testId !== left.testId &&
      steps.some((step) => (step.kind === 'turn' && step.eighths !== 0) || step.kind === 'tube-fitted'),
    sameInstrument: instrumentOf(visit, found) === instrumentOf(visit, left),
  }
}

function instrumentOf(visit: Visit, test: TestResult | null): Id | null {
  for (const work of visit.work)
    for (const step of work.steps)
      if (step.kind === 'test' && step.id === test?.testId) return step.instrumentId
  return null
}
