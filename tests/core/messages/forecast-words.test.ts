import { describe, expect, it } from 'vitest'
import { forecastWords } from '#core/messages/forecast-words'
import { estimate } from '#core/statistics/make-estimate'
import type { TurnForecast } from '#core/worksheet/turn-forecasts'

function flow(value: number) {
  const made = estimate(value, 'mL/min', [{ source: 'flow', standard: 0.1 }])
  if (!made.ok) throw new Error('no estimate')
  return made.value
}

const forecast = (over: Partial<TurnForecast>): TurnForecast => ({
  testId: 't',
  eighths: 3,
  expected: flow(22),
  found: flow(22.1),
  within: true,
  ...over,
})

describe('what was foretold and what came', () => {
  it('stand side by side with their intervals', () => {
    expect(forecastWords(forecast({}), 'comma')).toEqual({
      turned: '⅜ turn up',
      expected: 'expected 22,00 ± 0,20 mL/min',
      found: 'found 22,10 ± 0,20 mL/min',
      verdict: 'It came as foretold.',
    })
  })

  it('say whether the screw did more or less, whichever way it was turned', () => {
    const less = /did less/u
    const more = /did more/u
    expect(forecastWords(forecast({ found: flow(20), within: false }), 'point').verdict).toMatch(less)
    expect(forecastWords(forecast({ found: flow(24), within: false }), 'point').verdict).toMatch(more)
    expect(forecastWords(forecast({ eighths: -3, found: flow(24), within: false }), 'point').verdict).toMatch(
      less,
    )
    expect(forecastWords(forecast({ eighths: -3, found: flow(20), within: false }), 'point').verdict).toMatch(
      more,
    )
  })

  it('claim nothing of a test move', () => {
    const words = forecastWords(forecast({ expected: null, within: null }), 'point')
    expect(words.expected).toBe('nothing was known of this screw')
    expect(words.verdict).toMatch(/^A test move/u)
  })
})
