import type { Site } from '../../records'
import type { CauseId } from '../causes'
import { CAUSE_WORDS, type CauseWords } from './causes'

/** Hard water where no softener stands: there is no salt to fill, so the kitchen's part is to call. */
const NO_SOFTENER = {
  operator: ['Call your rep. Say what you saw, and that there is no softener here.'],
  technician: ['Fit a water softener, if the owner wants one.'],
  next: { who: 'rep', text: 'Call your rep to test the water. There is no softener here.' },
} as const satisfies Partial<CauseWords>

/** The texts about a cause at a site with, or without, a water softener. */
export const causeWords = (cause: CauseId, softener: Site['water']['softener']): CauseWords =>
  cause === 'hard-rinse' && softener === 'none'
    ? { ...CAUSE_WORDS[cause], ...NO_SOFTENER }
    : CAUSE_WORDS[cause]
