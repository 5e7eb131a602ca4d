import { all, chain, ok, type Outcome } from '../outcome'
import type { Instrument, Verification } from '../records'
import type { Estimate } from '../statistics/estimate'
import { unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'
import { readNumber } from '../units/read'
import { AGREES_BELOW, compareStrengths } from '../verify/agreement'
import { measuredStrength } from '../verify/measured-strength'
import { METHOD_RULES } from '../verify/method-rules'
import type { VerifiedUnit } from '../verify/types'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

/** The working of what a chemical check measured. Problems: those of `measuredStrength`. */
export function explainMeasured(
  check: Verification,
  instrument: Instrument | null,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  const rule = METHOD_RULES[check.method]
  return chain(
    all([measuredStrength(check, instrument), readNumber(check.reading, 'verification.reading')]),
    ([measured, reading]) => {
      const factor = Number(check.factor ?? 1)
      const blank = Number(check.blank ?? 0)
      const reads = unitSymbol(rule.reads)
      const unit = unitSymbol(rule.result)
      const inputs: readonly WorkingLine[] =
        rule.by === 'itself'
          ? [line('a', 'Pad of the strip', reading, reads)]
          : [
              line('a', 'Reading', reading, reads),
              line('b', rule.by === 'slope' ? 'Plain water' : 'Blank', blank, reads),
              line(
                'f',
                rule.by === 'slope' ? `${reads} for one g/L` : `${unit} for one ${one(reads)}`,
                factor,
              ),
            ]
      const [formula, substituted] = FORMS[rule.by](put(reading, sign), put(blank, sign), put(factor, sign))
      return ok({
        title: 'Strength as measured',
        formula,
        inputs,
        substituted,
        result: line('c', 'Measured', measured.value, unit),
        source:
          rule.by === 'itself'
            ? 'The strip’s own scale; half a pad either way, as a rectangle (GUM 4.3.7).'
            : 'The kit’s leaflet for its factor; titrations as in Standard Methods 2320 B, 2340 C and 4500-Cl.',
        assumptions: assumptions(check, rule.reads === 'drops'),
      })
    },
  )
}

const FORMS: Readonly<
  Record<'itself' | 'factor' | 'slope', (a: string, b: string, f: string) => readonly [string, string]>
> = {
  itself: (a) => ['c = a', `c = ${a}`],
  factor: (a, b, f) => ['c = (a − b) × f', `c = (${a} − ${b}) × ${f}`],
  slope: (a, b, f) => ['c = (a − b) / f', `c = (${a} − ${b}) / ${f}`],
}

const one = (unit: string): string => (unit === 'drops' ? 'drop' : unit)

const assumptions = (check: Verification, drops: boolean): readonly string[] => [
  ...(drops
    ? ['The colour turns somewhere in the last drop, so a whole drop either way is allowed for.']
    : []),
  ...(check.where === 'ware' ? ['Ware reads lower than the rinse it came from.'] : []),
  ...(check.blank === null && check.method.startsWith('alkalinity')
    ? ['No blank was titrated: the water’s own alkalinity counts as detergent.']
    : []),
]

/** The working of a comparison between reading and prediction. Problems: those of `compareStrengths`. */
export const explainAgreement = (
  measured: Estimate<VerifiedUnit>,
  predicted: Estimate<VerifiedUnit>,
  sign: DecimalSign = 'point',
): Outcome<Working> =>
  chain(compareStrengths(measured, predicted), ({ z, agrees }) => {
    const unit = unitSymbol(measured.unit)
    return ok({
      title: agrees ? 'Reading and prediction agree' : 'Reading and prediction differ',
      formula: 'z = |m − p| / √(u_m² + u_p²)',
      inputs: [
        line('m', 'Measured', measured.value, unit),
        line('p', 'Predicted from the flow', predicted.value, unit),
        line('u_m', 'Standard uncertainty of the reading', measured.standard, unit),
        line('u_p', 'Standard uncertainty of the prediction', predicted.standard, unit),
      ],
      substituted: `z = |${put(measured.value, sign)} − ${put(predicted.value, sign)}| / √(${put(measured.standard, sign)}² + ${put(predicted.standard, sign)}²)`,
      result: line('z', 'Difference in standard uncertainties', z),
      source: 'JCGM 100:2008 (GUM) 5.1.2 for the uncertainty of a difference.',
      assumptions: [
        `Below ${AGREES_BELOW} is what both uncertainties allow, about nineteen times in twenty.`,
      ],
    })
  })
