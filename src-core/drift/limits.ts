/** What drift is judged by. Our judgement unless a source stands beside it. */

/** A new tube changes most in its first days; common practice, no source. Look again after a week. */
export const SETTLING_DAYS = 7
/** As-found below this share of as-left, screw untouched, speaks of the tube and not of the setting. */
export const WORN_BELOW = 0.8
/** Changes from visit to visit needed before control limits mean anything. */
export const CHART_NEEDS = 5
/** Nothing is foretold beyond this. */
export const HORIZON_DAYS = 3653
/** The uncertainties of the flows themselves are worth this many degrees of freedom beside the scatter about a line. */
export const FLOW_DEGREES = 5
/** Days to the next visit where the site says nothing. */
export const USUAL_DAYS = 28
