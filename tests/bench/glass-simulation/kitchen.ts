import type { CauseId } from '#core/glass/causes'
import type { SeededRandom } from '../../support/seeded-random'
import { chance, logNormal, pick } from './draw'

/**
 * A kitchen with one fault, as physical state. It knows nothing of the program's weights: faults shift quantities, and
 * the quantities and the kind of deposit decide what a test shows (`observe.ts`). All numbers are judgement, written
 * down before the first run and not tuned to it.
 */
export interface Kitchen {
  readonly cause: CauseId
  /** what dries on the glass, or is done to it */
  readonly deposit: Deposit
  /** mg/L as CaCO3, final rinse */
  readonly hardness: number
  /** mg/L, all dissolved solids of the final rinse */
  readonly solids: number
  /** measured dose over target */
  readonly rinseAid: number
  readonly detergent: number
  readonly rinseAidOut: boolean
  /** °C above the data-plate minimum */
  readonly rinseMargin: number
  readonly pressureBad: boolean
  readonly jetsBlocked: boolean
  readonly tankOld: boolean
  readonly towelled: boolean
  readonly softenerEmpty: boolean
}

export type Deposit =
  'carbonate' | 'salts' | 'alkali' | 'surfactant' | 'soil' | 'fat' | 'attacked-glass' | 'silica'

/** The kitchen before a fault is put in: mostly in order, with the small disorder every kitchen has. */
function ordinary(random: SeededRandom): Omit<Kitchen, 'cause' | 'deposit'> {
  const hardness = logNormal(random, 35, 0.8)
  return {
    hardness,
    solids: hardness + logNormal(random, 150, 0.6),
    rinseAid: logNormal(random, 1, 0.12),
    detergent: logNormal(random, 1, 0.2),
    rinseAidOut: false,
    rinseMargin: random.normal(5, 4),
    pressureBad: chance(random, 0.08),
    jetsBlocked: chance(random, 0.07),
    tankOld: chance(random, 0.1),
    towelled: chance(random, 0.12),
    softenerEmpty: chance(random, 0.04),
  }
}

/** Dried drops of rinse water: chalk where the water is mostly hardness, else salts. */
const driedDrops = (hardness: number, solids: number): Deposit =>
  hardness > 0.4 * solids ? 'carbonate' : 'salts'

export function kitchenWith(cause: CauseId, random: SeededRandom): Kitchen {
  const base = ordinary(random)
  const drops = driedDrops(base.hardness, base.solids)
  switch (cause) {
    case 'rinse-aid-low': {
      const rinseAid = random.between(0, 0.65)
      return { ...base, cause, deposit: drops, rinseAid, rinseAidOut: rinseAid < 0.3 }
    }
    case 'rinse-aid-high':
      return { ...base, cause, deposit: 'surfactant', rinseAid: random.between(1.6, 3) }
    case 'hard-rinse': {
      const hardness = random.between(100, 350)
      return {
        ...base,
        cause,
        deposit: 'carbonate',
        hardness,
        solids: hardness + logNormal(random, 150, 0.6),
        softenerEmpty: chance(random, 0.5),
      }
    }
    case 'high-tds':
      return {
        ...base,
        cause,
        deposit: 'salts',
        hardness: chance(random, 0.75) ? random.between(1, 15) : random.between(17, 50),
        solids: random.between(450, 1200),
      }
    case 'detergent-low':
      return { ...base, cause, deposit: 'soil', detergent: random.between(0.2, 0.65) }
    case 'carryover': {
      const tooStrong = chance(random, 0.65)
      return {
        ...base,
        cause,
        deposit: 'alkali',
        detergent: tooStrong ? random.between(1.45, 2.5) : base.detergent,
        pressureBad: tooStrong ? base.pressureBad : true,
      }
    }
    case 'rinse-temp-low':
      return { ...base, cause, deposit: drops, rinseMargin: random.between(-20, -2) }
    case 'rinse-flow-poor': {
      const jetsBlocked = chance(random, 0.6)
      return {
        ...base,
        cause,
        deposit: pick(random, ['alkali', 'alkali', 'carbonate', 'soil']),
        jetsBlocked,
        pressureBad: jetsBlocked ? chance(random, 0.5) : true,
      }
    }
    case 'tank-dirty':
      return { ...base, cause, deposit: 'soil', tankOld: true }
    case 'handling':
      return { ...base, cause, deposit: drops, towelled: true }
    case 'grease':
      return { ...base, cause, deposit: 'fat' }
    case 'etched':
      return { ...base, cause, deposit: 'attacked-glass', detergent: logNormal(random, 1.2, 0.25) }
    case 'silica':
      return { ...base, cause, deposit: 'silica' }
  }
}
