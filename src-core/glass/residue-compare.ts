import { all, chain, ok, type Outcome } from '../outcome'
import { HELD_WATER, residueOnGlass } from '../water/residue'
import type { CauseId } from './causes'

/** Solids of water from a demineralising unit, mg/L. JUDGEMENT. */
export const TREATED_SOLIDS = 30

export interface ResidueComparison {
  /** mg left on a glass as it is, and with the cure */
  readonly before: number
  readonly after: number
  /** what changes: the water held on the glass, or the solids in it */
  readonly by: 'less-water' | 'purer-water'
}

const BY_LESS_WATER: readonly CauseId[] = ['rinse-aid-low', 'rinse-temp-low', 'rinse-flow-poor', 'handling']
const BY_PURER_WATER: readonly CauseId[] = ['high-tds', 'hard-rinse']

/**
 * Milligrams left on a glass now and with the cure, for causes where the water or its solids decide; null for others.
 * `solids` mg/L. An estimate for comparing: held volumes are assumed (`water/residue.ts`). Softening does not lower
 * solids, so for hard water the comparison is with demineralised water. Problems: solids out of range.
 */
export function compareResidue(cause: CauseId, solids: number): Outcome<ResidueComparison> | null {
  const lessWater = BY_LESS_WATER.includes(cause)
  if (!lessWater && !BY_PURER_WATER.includes(cause)) return null
  return chain(
    all([
      residueOnGlass(HELD_WATER.beaded, solids),
      lessWater
        ? residueOnGlass(HELD_WATER.sheeted, solids)
        : residueOnGlass(HELD_WATER.beaded, Math.min(solids, TREATED_SOLIDS)),
    ]),
    ([before, after]) => ok({ before, after, by: lessWater ? 'less-water' : 'purer-water' }),
  )
}
