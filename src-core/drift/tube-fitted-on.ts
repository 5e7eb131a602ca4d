import type { Day, Id, Pump, PumpWork, Site, Step } from '../records'

/**
 * The day the tube that is in a pump was fitted, as far as the record tells: the later of the day in the set-up and the
 * last day a visit says a new one was fitted. Null when neither says.
 */
export function tubeFittedOn(pump: Pick<Pump, 'id' | 'tube'>, visits: Site['visits']): Day | null {
  let day = pump.tube.fittedOn
  for (const { work } of visits) day = later(day, fittedIn(work, pump.id))
  return day
}

/** The last day a new tube was fitted in these steps; null when none was. */
export const dayFitted = (steps: readonly Step[]): Day | null =>
  steps.reduce<Day | null>(
    (day, step) => (step.kind === 'tube-fitted' ? later(day, step.at.slice(0, 10)) : day),
    null,
  )

const fittedIn = (work: readonly PumpWork[], pumpId: Id): Day | null =>
  dayFitted(work.find((one) => one.pumpId === pumpId)?.steps ?? [])

const later = (a: Day | null, b: Day | null): Day | null => (a === null || (b !== null && b > a) ? b : a)
