import { all, chain, ok, type Outcome } from '../outcome'
import type { Water } from '../records'
import type { DecimalSign } from '../units/parse'
import { readNumber } from '../units/read'
import type { SiteWater } from '../water/site-water'
import type { Working } from './types'
import { line, put } from './working'

const stands = (found: SiteWater): readonly string[] => [
  ...(found.calciumFromHardness
    ? ['The whole hardness stands in for calcium, so the index is a little high.']
    : []),
  'The index says which way a water leans, not how fast.',
]

/** Problems: those of `siteWater`. */
export function explainLangelier(water: Water, found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(all([found.index, readNumber(water.pH, 'water.pH')]), ([s, pH]) => {
    return ok({
      title: 'Langelier index at rinse temperature',
      formula: 'pHs = 9.3 + A + B − C − D; index = pH − pHs',
      inputs: [
        line('A', 'Dissolved solids, (log S − 1)/10', s.a),
        line('B', 'Temperature, −13.12 log (t + 273) + 34.55', s.b),
        line('C', 'Calcium, log Ca − 0.4', s.c),
        line('D', 'Alkalinity, log Alk', s.d),
        line('pH', 'pH as measured', pH),
      ],
      substituted: `index = ${put(pH, sign)} − (9.3 + ${put(s.a, sign)} + ${put(s.b, sign)} − ${put(s.c, sign)} − ${put(s.d, sign)})`,
      result: line('LSI', 'Langelier index', s.langelier),
      source: 'Langelier (1936) in the form handbooks print, with 273 rather than 273.15.',
      assumptions: stands(found),
    })
  })
}

/** Problems: those of `siteWater`. */
export function explainRyznar(water: Water, found: SiteWater, sign: DecimalSign): Outcome<Working> {
  return chain(all([found.index, readNumber(water.pH, 'water.pH')]), ([s, pH]) =>
    ok({
      title: 'Ryznar index at rinse temperature',
      formula: 'RSI = 2 × pHs − pH',
      inputs: [
        line('pHs', 'pH at which the water is in balance', s.saturationPH),
        line('pH', 'pH as measured', pH),
      ],
      substituted: `RSI = 2 × ${put(s.saturationPH, sign)} − ${put(pH, sign)}`,
      result: line('RSI', 'Ryznar index', s.ryznar),
      source: 'Ryznar’s index from the same pHs, in the form handbooks print.',
      assumptions: stands(found),
    }),
  )
}
