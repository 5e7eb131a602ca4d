import { all, fail, ok, type Outcome } from '../outcome'
import type { Instrument, Verification } from '../records'
import type { Estimate } from '../statistics/estimate'
import { estimate } from '../statistics/make-estimate'
import { rectangular } from '../statistics/rectangular'
import { readNumber } from '../units/read'
import { METHOD_RULES, type MethodRule } from './method-rules'
import type { VerifiedUnit } from './types'

const MOST = 1e6

/**
 * What a chemical check measured, with its doubt.
 * Strip: the pad, half a step either way. Titration and drop count: (reading - blank) x factor, factor in mg/L active,
 * g/L of product or mg/L as CaCO3 per mL or drop. Conductivity: (reading - plain water) / factor, factor in µS/cm at
 * 25 °C per g/L. The kit's own doubt is the instrument's tolerance in percent, else a judgement.
 *
 * Problems: reading, factor, blank or step missing or unreadable; a blank above the reading; `outside-valid-range`.
 */
export function measuredStrength(
  check: Verification,
  instrument: Instrument | null,
): Outcome<Estimate<VerifiedUnit>> {
  const rule = METHOD_RULES[check.method]
  const read = all([
    readNumber(check.reading, 'verification.reading', { low: 0, high: MOST }),
    check.blank === null ? ok(0) : readNumber(check.blank, 'verification.blank', { low: -MOST, high: MOST }),
    stepOf(check, rule, instrument),
    rule.by === 'itself' ? ok(1) : readNumber(check.factor, 'verification.factor', { above: 0, high: MOST }),
  ])
  if (!read.ok) return read
  const [reading, blank, step, factor] = read.value
  const net = reading - (rule.by === 'itself' ? 0 : blank)
  if (net < 0)
    return fail({
      code: 'number-out-of-range',
      field: 'verification.blank',
      low: null,
      high: reading,
      unit: '',
    })
  const perUnit = rule.by === 'slope' ? 1 / factor : factor
  const value = net * perUnit
  // a blank is read with the same doubt as the reading
  const readings = rule.by !== 'itself' && check.blank !== null ? 2 : 1
  return estimate(value, rule.result, [
    {
      source: sourceOf(rule),
      standard: perUnit * rectangular(rule.steps * step) * Math.sqrt(readings),
    },
    { source: 'kit-factor', standard: value * rectangular(kitShare(rule, instrument)) },
  ])
}

const sourceOf = (rule: MethodRule): 'step-width' | 'count' | 'reading' =>
  rule.by === 'itself' ? 'step-width' : rule.reads === 'drops' ? 'count' : 'reading'

/** The stated step, else the instrument's graduation in the unit of the reading, else the usual one. */
function stepOf(check: Verification, rule: MethodRule, instrument: Instrument | null): Outcome<number> {
  if (check.step !== null) return readNumber(check.step, 'verification.step', { low: 0, high: MOST })
  const graduation = instrument?.graduation ?? null
  if (graduation !== null && graduation.unit === rule.reads)
    return readNumber(graduation.value, 'instrument.graduation', { low: 0, high: MOST })
  return rule.usualStep === null
    ? fail({ code: 'missing', field: 'verification.step', needed: 'graduation' })
    : ok(rule.usualStep)
}

function kitShare(rule: MethodRule, instrument: Instrument | null): number {
  const tolerance = instrument?.tolerance ?? null
  if (tolerance === null || tolerance.unit !== 'percent') return rule.kitShare
  const percent = readNumber(tolerance.value, 'instrument.tolerance', { low: 0, high: 100 })
  return percent.ok ? percent.value / 100 : rule.kitShare
}
