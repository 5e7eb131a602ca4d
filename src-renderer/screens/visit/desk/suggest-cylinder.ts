import type { DoseContext } from '#core/dose/on-basis'
import { requiredFlow } from '#core/dose/required-flow'
import { candidate, rightSize, type RightSize } from '#core/drawdown/choose-cylinder'
import type { Id, Instrument, Pump, Test } from '#core/records/index'
import type { VisitResult } from '#core/worksheet/types'

/**
 * The flow to expect of a pump, mL/min: what it last gave in this visit, else what it was left at, else what its
 * window asks for. Null when none is known.
 */
export function expectedFlow(
  pump: Pump,
  context: DoseContext,
  visits: readonly VisitResult[],
  visitId: Id,
): number | null {
  const index = visits.findIndex((visit) => visit.visitId === visitId)
  for (const visit of visits.slice(0, index < 0 ? visits.length : index + 1).toReversed()) {
    const left = visit.pumps.find((row) => row.pumpId === pump.id)?.asLeft
    if (left?.flow.ok === true && left.flow.value.value > 0) return left.flow.value.value
  }
  const wanted = requiredFlow(pump, context)
  return wanted.ok ? wanted.value.target : null
}

/** Instruments a test of this method can be read on. */
export const fitsMethod = (instrument: Instrument, method: Test['method']): boolean =>
  method === 'weighed'
    ? instrument.kind === 'scale'
    : instrument.kind === 'cylinder' || instrument.kind === 'cup'

/**
 * The smallest instrument at hand that holds one run with room to spare. A cylinder whose bore is not known is judged as if the tube were
 * lifted out: the size to take is the same.
 */
export function rightInstrument(
  flow: number | null,
  seconds: number,
  how: Pick<Test, 'method' | 'tubeImmersed'>,
  pump: Pump,
  context: Pick<DoseContext, 'product'>,
  instruments: readonly Instrument[],
): RightSize | null {
  if (flow === null) return null
  const conditions = { product: context.product, tube: pump.tube, rollers: pump.rollers }
  const tools = instruments
    .filter((instrument) => fitsMethod(instrument, how.method))
    .flatMap((instrument) => {
      const exact = candidate(how, conditions, instrument)
      const tool = exact.ok ? exact : candidate({ ...how, tubeImmersed: false }, conditions, instrument)
      return tool.ok ? [tool.value] : []
    })
  return rightSize(flow, seconds, how.method, tools)
}
