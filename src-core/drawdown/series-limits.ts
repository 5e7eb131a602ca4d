/** What a series of runs is held to. Judgement unless a source stands beside it. */

/** Good runs differ by no more than this, as a fraction of their mean; smaller patterns do not matter. */
export const AGREEMENT = 0.02
/** Scatter (standard deviation over mean) that asks for more runs, and that stops a turn. */
export const CV_WARNS = 0.03
export const CV_STOPS = 0.05
/** Runs without which nothing is known of the scatter, and those of the usual protocol. */
export const RUNS_NEEDED = 2
export const RUNS_USUAL = 3
/** Runs that rise (or fall) every time: odds 1/4! = 4 % deserve a warning, 1/5! = 0.8 % a stop. */
export const MONOTONE_WARNS = 4
export const MONOTONE_STOPS = 5
/** Slope test of a mixed series. */
export const TREND_WARNS = 0.05
export const TREND_STOPS = 0.01
/** Marks that must pass in a run. */
export const GRADUATIONS_NEEDED = 20
/**
 * Roller passages in a run: start and stop each fall anywhere in a pulse, so the error is 1/sqrt(6) of a pulse, and
 * 40 pulses bring it to 1 % (derived).
 */
export const PULSES_NEEDED = 40
