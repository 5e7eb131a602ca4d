/** What drift is judged by. Our judgement unless a source stands beside it. */

/** A new tube changes most in its first days; common practice, no source. Look again after a week. */
export const SETTLING_DAYS = 7
/** A rise of more than this from left to found, and not by chance, is no drift: it begins a new stretch. */
export const JUMP = 0.1
/** Changes from visit to visit needed before control limits mean anything. */
export const CHART_NEEDS = 5
/** Nothing is foretold beyond this. */
export const HORIZON_DAYS = 3653
/** The uncertainties of the flows themselves are worth this many degrees of freedom beside the scatter about a line. */
export const FLOW_DEGREES = 5
/** Days to the next visit where the site says nothing. */
export const USUAL_DAYS = 28
/** A visit is not made sooner than this while the flow is inside its window. */
export const SOONEST_DAYS = 7
