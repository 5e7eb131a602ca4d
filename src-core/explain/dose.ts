import { dosePerRack } from '../dose/concentration'
import { doseSeconds } from '../dose/dose-seconds'
import type { DoseContext } from '../dose/on-basis'
import { requiredFlow } from '../dose/required-flow'
import { all, chain, ok, type Outcome } from '../outcome'
import type { Pump } from '../records'
import type { Estimate } from '../statistics/estimate'
import type { DecimalSign } from '../units/parse'
import type { Working } from './types'
import { line, put } from './working'

/** The working of the dose per rack. Problems: those of `doseSeconds`. */
export function explainDose(
  flow: Estimate<'mL/min'>,
  pump: Pick<Pump, 'doseSeconds' | 'doseSecondsSpread'>,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  return chain(doseSeconds(pump), (seconds) =>
    chain(dosePerRack(flow, seconds), (dose) =>
      ok({
        title: 'Dose per rack',
        formula: 'D = q × t / 60',
        inputs: [
          line('q', 'Flow of the pump', flow.value, 'mL/min'),
          line('t', 'Seconds the pump runs per rack', seconds.value, 's'),
        ],
        substituted: `D = ${put(flow.value, sign)} × ${put(seconds.value, sign)} / 60`,
        result: line('D', 'Dose per rack', dose.value, 'mL/rack'),
        source: 'By definition.',
        assumptions: ['The pump delivers the same flow in a rack as in the test.'],
      }),
    ),
  )
}

/** The working of the flow a pump needs for the target of its window. Problems: those of `requiredFlow`. */
export function explainRequiredFlow(
  pump: Pick<Pump, 'doseSeconds' | 'doseSecondsSpread' | 'window'>,
  context: DoseContext,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  return chain(all([requiredFlow(pump, context), doseSeconds(pump)]), ([flow, seconds]) => {
    const dose = (flow.target * seconds.value) / 60
    return ok({
      title: 'Flow the target needs',
      formula: 'q = 60 × D / t',
      inputs: [
        line('D', 'Dose that puts the strength on target', dose, 'mL/rack'),
        line('t', 'Seconds the pump runs per rack', seconds.value, 's'),
      ],
      substituted: `q = 60 × ${put(dose, sign)} / ${put(seconds.value, sign)}`,
      result: line('q', 'Flow needed', flow.target, 'mL/min'),
      source: 'The dose formula turned round.',
      assumptions: [
        `The window runs from ${put(flow.low, sign)} to ${put(flow.high, sign)} mL/min with today’s seconds, water and strength.`,
      ],
    })
  })
}
