import { formatEstimate } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { TurnForecast } from '../worksheet/turn-forecasts'
import { turnsText } from './turn-words'

/** What was foretold of a turn and what came, ready to stand side by side. */
export interface ForecastWords {
  readonly turned: string
  readonly expected: string
  readonly found: string
  readonly verdict: string
}

export function forecastWords(forecast: TurnForecast, sign: DecimalSign): ForecastWords {
  const { expected, found, eighths } = forecast
  return {
    turned: `${turnsText(eighths)} ${eighths > 0 ? 'up' : 'down'}`,
    expected:
      expected === null
        ? 'nothing was known of this screw'
        : `expected ${formatEstimate(expected, sign).whole}`,
    found: `found ${formatEstimate(found, sign).whole}`,
    verdict: verdict(forecast),
  }
}

function verdict({ within, expected, found, eighths }: TurnForecast): string {
  if (within === null || expected === null) return 'A test move: the next one is foretold from it.'
  if (within) return 'It came as foretold.'
  const more = found.value > expected.high
  const farther = more === eighths > 0
  return farther
    ? 'Not as foretold: the screw did more than it was known to do. Look at the witness mark, then trust the test.'
    : 'Not as foretold: the screw did less than it was known to do. Is it this pump’s screw, and was it really turned?'
}
