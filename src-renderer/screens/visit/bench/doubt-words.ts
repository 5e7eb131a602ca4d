import { inputAlternatives, instrumentAlternatives, runAlternatives } from '#core/explain/alternatives'
import { budgetSummary } from '#core/explain/budget'
import { candidate } from '#core/drawdown/choose-cylinder'
import { testFlow } from '#core/drawdown/test-flow'
import type { Decision } from '#core/dose/types'
import type { DecimalSign } from '#core/units/parse'
import { fitsMethod } from '../desk/suggest-cylinder'
import { conditionsOf, contextOf, type Surroundings } from './figures'

/** What a decision's doubt is made of, and what would narrow it most while the decision is open. */
export function doubtWords(around: Surroundings, decision: Decision, sign: DecimalSign): string {
  if (decision.verdict === 'proved-in' || decision.verdict === 'proved-out')
    return budgetSummary(decision.value, [], sign).text
  const conditions = conditionsOf(around)
  const { state } = testFlow(around.test, conditions)
  const tools = around.instruments
    .filter((one) => fitsMethod(one, around.test.method))
    .flatMap((one) => {
      const found = candidate(around.test, conditions, one)
      return found.ok ? [found.value] : []
    })
  const ofTest =
    state === null
      ? []
      : [
          ...instrumentAlternatives(state, tools, around.instruments, around.test.method),
          ...runAlternatives(state),
        ]
  return budgetSummary(decision.value, [...ofTest, ...inputAlternatives(contextOf(around))], sign).text
}
