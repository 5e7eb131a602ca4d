/**
 * What the advice weighs by. Each is a judgement or follows from one; none was found published. `npm run bench` plays
 * the advice on virtual pumps and shows what it costs to change the first three.
 */

/** Eighths to back off past the mark, so that every move ends clockwise; the play is taken to be at most this. */
export const BACK_OFF = 2

/**
 * Chance, at most, of passing the far edge of the window in one move. This is the cap on a step: it grows by itself as
 * the gain becomes known, where a cap in turns holds back a weak screw and not a sharp one. Passing costs one more move,
 * just as falling short does, so the common limit is loose; a sanitizer out of its label range is another matter.
 */
export const PASSING_RISK = 1 / 3
export const PASSING_RISK_CAREFUL = 1 / 20

/** Share of screws that do not act, before anything is seen. */
export const DEAD_SHARE = 0.05
/** Chance that a move upward meets the end of what the screw can do. */
export const STALLS = 0.02
/** Sound screws that may be called dead: one in a thousand. */
const FALSE_ALARM = 0.001
/**
 * Belief at which a screw is called dead. Whatever the number of looks, a sound screw reaches posterior odds c with a
 * chance of at most (prior odds)/c (Ville's inequality), so this level keeps the false alarms.
 */
export const CALLED_DEAD = DEAD_SHARE / (DEAD_SHARE + FALSE_ALARM * (1 - DEAD_SHARE))
/** Belief from which the next move is made to tell as well. */
export const SUSPECTED_DEAD = 0.5
/** Smallest move that tells, eighths. */
export const TELLING_MOVE = 4

/**
 * What one turn of a screw nobody knows may do, as a share of the target flow; every factor between is taken to be as
 * likely. The weakest also bounds what is called acting at all.
 */
export const UNKNOWN_GAIN = { low: 0.12, high: 0.95 } as const
/** What one turn of a screw that does not act does, same share, standard deviation. */
export const DEAD_GAIN = 0.02
/** Belief that what is on record about the gain does not hold today: another pump head, another tube. */
export const RECORD_IS_OLD = 0.02
/** Relative change of the gain over one turn, standard deviation. */
export const BEND = 0.045

/** Scatter of one run as a fraction of the flow, and the number of runs' worth of belief in it. */
export const USUAL_SCATTER = { fraction: 0.012, weight: 2 } as const

/** A move costs the turn, half a minute of running in and three runs: four more runs are cheaper, and nine are enough. */
export const RUNS_INSTEAD = 4
export const MOST_RUNS = 9
export const RUNS_AFTER_A_MOVE = 3

/** Moves after which the screw is left alone. */
export const MOST_MOVES = 4
/** Farthest single move considered, eighths. */
export const FARTHEST = 48
/** Flow below this share of the target is no flow. */
export const NO_FLOW = 0.02
/** As-found below this share of what was left says the tube or the line has gone, not the setting. */
export const WORN_BELOW = 0.8
