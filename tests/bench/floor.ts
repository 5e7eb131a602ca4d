import type { SiteFile } from '#core/documents/site-schema'

/**
 * The least work that gives a site's totals: one loop over the same readings in bare doubles, no checks, no units, no
 * uncertainty. What every ratio is measured against.
 */
export function floorTotals(file: SiteFile): {
  readonly litres: number
  readonly cost: number
  readonly sum: number
} {
  const { site, products } = file
  let sum = 0
  const last = new Map<string, number>()
  for (const visit of site.visits) {
    for (const work of visit.work) {
      for (const step of work.steps) {
        if (step.kind !== 'test') continue
        let volume = 0
        let seconds = 0
        let squares = 0
        let flows = 0
        for (const run of step.runs) {
          const v = Number(run.end?.value) - (run.start === null ? 0 : Number(run.start.value))
          const t = Number(run.seconds?.value)
          volume += v
          seconds += t
          const q = (60 * v) / t
          flows += q
          squares += q * q
        }
        const n = step.runs.length
        const q = (60 * volume) / seconds
        const s = Math.sqrt(Math.max(0, (squares - (flows * flows) / n) / (n - 1)))
        sum += q + s
        last.set(work.pumpId, q)
      }
    }
  }
  const machine = site.machines[0]
  const openDays = Number(site.calendar.daysPerWeek) * (365.25 / 12 / 7)
  const racks = Number(machine?.racksPerDay) * openDays
  let litres = 0
  let cost = 0
  for (const pump of machine?.pumps ?? []) {
    const rinse = (racks * (last.get(pump.id) ?? 0) * Number(pump.doseSeconds?.value)) / 60_000
    const product = products.find((one) => one.id === pump.productId)
    const tank = machine?.wash.kind === 'tank' ? Number(machine.wash.volume?.value) : 0
    const charge =
      pump.feeds === 'wash-tank' ? (Number(pump.window?.target) * tank) / Number(product?.density?.value) : 0
    const used = rinse + (charge * openDays) / 1000
    const price = product?.prices[0]
    litres += used
    cost += (used * Number(price?.price)) / Number(price?.containerSize.value)
  }
  return { litres, cost, sum }
}
