import type { Pump } from '../records'

/** Whether a pump feeds wash water, in whichever tank of its machine; the rest feed the final rinse. */
export const feedsATank = (pump: Pick<Pump, 'feeds'>): boolean => pump.feeds !== 'final-rinse'
