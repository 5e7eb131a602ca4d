import { arriving, onBasis, waterFor, type DoseContext } from '../dose/on-basis'
import { productStrength } from '../dose/product-strength'
import { BASIS_UNIT } from '../dose/types'
import { productDensity } from '../drawdown/product-density'
import { all, chain, ok, type Outcome } from '../outcome'
import type { RinseWater, WindowBasis } from '../records'
import type { Estimate } from '../statistics/estimate'
import { unitSymbol } from '../units/format'
import type { DecimalSign } from '../units/parse'
import type { Working, WorkingLine } from './types'
import { line, put } from './working'

const WATER_FROM: Readonly<Record<RinseWater['kind'], string>> = {
  measured: 'The rinse water was measured.',
  'flow-and-seconds': 'The rinse water is its flow times its seconds.',
  'data-plate':
    'The rinse water is taken from the data plate; it goes with the root of the pressure, so measure it when you can.',
}

/** The working of a concentration on a named basis. Problems: those of `onBasis`. */
export function explainStrength(
  basis: Exclude<WindowBasis, 'mL-per-rack'>,
  dose: Estimate<'mL/rack'>,
  context: DoseContext,
  sign: DecimalSign = 'point',
): Outcome<Working> {
  return chain(
    all([onBasis(basis, dose, context), waterFor(basis, context), arriving(context)]),
    ([value, water, more]) => {
      const density = productDensity(context.product)
      const strength = productStrength(context.product)
      const D = put(dose.value, sign)
      const V = put(water.value, sign)
      const rho = density.ok ? density.value.value : 1
      const share = strength.ok ? (strength.value?.percent.value ?? 0) : 0
      const trade = strength.ok && strength.value?.kind === 'trade-percent'
      const doseLine = line('D', 'Dose per rack', dose.value, 'mL/rack')
      const waterLine = line('V', 'Fresh rinse water per rack', water.value, 'L')
      const densityLine = line('ρ', 'Density of the product', rho, 'g/mL')
      const strengthLine = trade
        ? line('T', 'Strength, g available chlorine per 100 mL', share, '%')
        : line('w', 'Strength, g active per 100 g', share, '%')
      const way: Readonly<Record<typeof basis, Way>> = {
        'ppm-vv': {
          title: 'Product in the rinse, by volume',
          formula: 'c = 1 000 000 × D / (1000 × V + D)',
          inputs: [doseLine, waterLine],
          right: `1 000 000 × ${D} / (1000 × ${V} + ${D})`,
          source: 'Derived: millilitres of product in a million of the mixture, exact.',
        },
        'mg-per-L-product': {
          title: 'Product in the rinse, by mass',
          formula: 'c = 1000 × ρ × D / V',
          inputs: [doseLine, densityLine, waterLine],
          right: `1000 × ${put(rho, sign)} × ${D} / ${V}`,
          source: 'Derived: per litre of water as delivered, the product’s own volume left out.',
        },
        'mg-per-L-active': trade
          ? {
              title: 'Available chlorine in the rinse',
              formula: 'c = 10 × T × D / V',
              inputs: [doseLine, strengthLine, waterLine],
              right: `10 × ${put(share, sign)} × ${D} / ${V}`,
              source: 'Trade percent as in White, Handbook of Chlorination (1972).',
            }
          : {
              title: 'Active substance in the rinse',
              formula: 'c = 10 × w × ρ × D / V',
              inputs: [doseLine, strengthLine, densityLine, waterLine],
              right: `10 × ${put(share, sign)} × ${put(rho, sign)} × ${D} / ${V}`,
              source: 'Derived from weight percent: grams of active per 100 g of product.',
            },
        'g-per-L-tank': {
          title: 'Product in the wash tank, long-run mean',
          formula: more === null ? 'c = ρ × D / V' : 'c = ρ × D / V + c₂',
          inputs: [
            doseLine,
            densityLine,
            line('V', 'Water that leaves the tank per rack', water.value, 'L'),
            ...(more === null
              ? []
              : [line('c₂', 'What comes over from the second tank', more.value, 'g/L product')]),
          ],
          right: `${put(rho, sign)} × ${D} / ${V}${more === null ? '' : ` + ${put(more.value, sign)}`}`,
          source: 'Derived from the mass balance: what a rack brings in over the water that replaces it.',
        },
      }
      const { title, formula, inputs, right, source } = way[basis]
      return ok({
        title,
        formula,
        inputs,
        substituted: `c = ${right}`,
        result: line('c', title, value.value, unitSymbol(BASIS_UNIT[basis])),
        source,
        assumptions: [
          ...(context.rinse === null ? [] : [WATER_FROM[context.rinse.kind]]),
          ...(basis === 'g-per-L-tank'
            ? ['Enough racks have gone through for the tank to settle; soil uses nothing up.']
            : []),
          ...(basis === 'g-per-L-tank' && more !== null
            ? ['The second tank stands at its own target, give or take its window.']
            : []),
        ],
      })
    },
  )
}

interface Way {
  readonly title: string
  readonly formula: string
  readonly inputs: readonly WorkingLine[]
  readonly right: string
  readonly source: string
}
