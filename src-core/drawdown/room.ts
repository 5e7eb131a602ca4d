import type { TestMethod } from '../records'

/**
 * What stays in a cylinder below its scale, as a share of its capacity: the lowest main mark stands at a tenth (10 of
 * 100 mL, 5 of 50, 50 of 500), a reading below it is a guess, and the pick-up tube must not draw air. Main marks: ASTM
 * E1272-02(2012) Table 1; that nothing below the first of them is read: common practice, no source.
 */
const BELOW_THE_SCALE = 0.1

/**
 * How much more than expected a run may bring. 10 % is the tolerance of a published feeder rule (Wyoming public pools,
 * ch. 4 s. 11) and the default window; a pump further out shows in the first run, which only ends the priming.
 */
const MORE_THAN_EXPECTED = 1.1

/**
 * Share of what an instrument holds that one expected run may take. A draw-down starts at the top mark and must end on
 * the scale: (1 - 0.1) / 1.1 = 0.818. What is caught, or weighed, starts from nothing: 1 / 1.1 = 0.909.
 */
export const usableShare = (method: TestMethod): number =>
  (method === 'draw-down' ? 1 - BELOW_THE_SCALE : 1) / MORE_THAN_EXPECTED
