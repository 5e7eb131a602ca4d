import type { Problem } from '../problem'
import { CANNOT_COMPUTE } from './cannot-compute'
import { MISSING } from './missing-input'
import { fieldName, placeName } from './place'

/**
 * The problem as plain sentences: what is wrong, then what to do. Does not compile while a code has no sentence. Text
 * out of a file or a call is quoted, cut and stripped of control and direction signs, so that it cannot pose as ours.
 */
export function sentence(problem: Problem): string {
  switch (problem.code) {
    case 'number-missing':
      return `${start(fieldName(problem.field))} is empty. Enter a number.`
    case 'number-unreadable':
      return GROUPED.test(problem.text)
        ? `${quoted(problem.text)} has a sign between its thousands. Write ${fieldName(problem.field)} without it, such as 1234.5 or 1234,5.`
        : `${quoted(problem.text)} is not a number. Write ${fieldName(problem.field)} with digits, such as 1.5 or 1,5.`
    case 'number-ambiguous': {
      const [first, second] = problem.readings
      return `${quoted(problem.text)} can mean ${quoted(first)} or ${quoted(second)}. Say which one you mean for ${fieldName(problem.field)}.`
    }
    case 'number-out-of-range':
      return `${start(fieldName(problem.field))} must be ${range(problem.low, problem.high, problem.unit)}. Check the number and its unit.`
    case 'unit-unknown':
      return `${quoted(problem.text)} is not a unit for ${fieldName(problem.field)}. Use one of: ${problem.expected.map(shown).join(', ')}.`
    case 'missing': {
      const [name, action] = MISSING[problem.needed]
      return `${name} is missing: ${action}.`
    }
    case 'no-runs':
      return 'No run has been timed. Time a run.'
    case 'end-above-start':
      return `${start(fieldName(problem.field))}: the level after the run is above the level before it. Check both readings.`
    case 'tube-wider-than-cylinder':
      return `${start(fieldName(problem.field))}: the tube is as wide as the cylinder. Check the outside diameter of the tube and the bore.`
    case 'over-capacity':
      return `${start(fieldName(problem.field))} is more than the instrument holds (${shown(problem.capacity)}). Check the reading, or choose the instrument that was used.`
    case 'too-few-runs':
      return `${counted(problem.have, 'run counts', 'runs count')}, ${problem.need} are needed. Time ${counted(problem.need - problem.have, 'more run', 'more runs')}.`
    case 'currencies-differ':
      return `One price is in ${shown(problem.first)}, another in ${shown(problem.second)}. Enter a price in the currency of the site.`
    case 'no-price':
      return `${quoted(problem.product)} has no price on the day that counts here: it has no price row, or its first begins later. Add a price row to the product that begins on that day or before.`
    case 'document-not-json':
      return `The file stops making sense at ${placeName(problem.place)}. Use a file saved by this program, unchanged.`
    case 'document-foreign':
      return 'This is not a file of the kind wanted here. Choose a file saved by this program.'
    case 'document-newer':
      return `The file was written by a newer version of this program (format ${problem.version}; this one knows ${problem.known}). Update the program; the file was left as it is.`
    case 'document-malformed':
      return `The file does not hold together at ${quotedPlace(problem.place)}: it ${shown(problem.reason)}. Mend that place, or use an unchanged file.`
    case 'document-too-large':
      return `The file is too large (${problem.megabytes} MB). Choose a file saved by this program; even a site with ten years of visits is smaller.`
    case 'document-damaged':
      return problem.setAside === null
        ? `The file of ${quoted(problem.document)} cannot be read. Bring back its last good version or a daily copy.`
        : `The file of ${quoted(problem.document)} was damaged and has been kept as ${quoted(problem.setAside)}. Bring back its last good version or a daily copy.`
    case 'document-changed-elsewhere':
      return `${quoted(problem.document)} was changed in another window. Open it again here, then repeat the last change.`
    case 'not-found':
      return `${quoted(problem.what)} is not there any more. Go back to the list.`
    case 'already-there':
      return `${quoted(problem.what)} is already here. Open it, or choose how to bring the two together.`
    case 'not-saved':
      return `Not saved: ${shown(problem.reason)}. What you entered is still here; put that right and save again.`
    case 'data-folder-in-use':
      return `The data folder is in use by this program already (process ${problem.processId}, since ${when(problem.since)}). Use that window, or close it first.`
    case 'visit-closed':
      return 'This visit is closed and stays as it was signed. Add a correction with its reason instead.'
    case 'no-session':
      return 'This page is not connected to the program. Open it again from the program.'
    case 'unknown-method':
      return `This program has no call named ${quoted(problem.method)}. Update the program and open its window again.`
    case 'bad-request':
      return `The program was asked for something it does not take (${quotedPlace(problem.place)} ${shown(problem.reason)}). Open its window again; if it happens once more, report it.`
    case 'internal':
      return `Something went wrong inside the program (reference ${shown(problem.reference)}). Your data is unchanged; try again, and report the reference if it stays.`
    case 'unavailable':
      return `This cannot be done here: ${shown(problem.what)}.`
    case 'stopped':
      return 'Stopped. Nothing was changed; choose the file again to bring it in.'
    case 'host-gone':
      return 'The program behind this window has stopped. Start it again; everything shown as saved is saved.'
    case 'cannot-compute':
      return CANNOT_COMPUTE[problem.reason]
    default:
      return unhandled(problem)
  }
}

function unhandled(problem: never): never {
  throw new Error(`no sentence for ${JSON.stringify(problem)}`)
}

// C0 and C1 controls, and the signs that turn the direction of writing (Unicode UAX 9, section 2)
// eslint-disable-next-line no-control-regex -- control signs are what is looked for
const UNSHOWN = /[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g

/** `1.234,5`, `1,234.5`, `1 234`, `1'234`: a number written with its thousands set apart. */
const GROUPED = /^\s*[+\-−]?\d{1,3}(?:[.,'’ \u00a0\u202f]\d{3})+(?:[.,]\d*)?\D*$/u

const shown = (text: string): string => {
  const clean = text.replaceAll(UNSHOWN, ' ')
  return clean.length > 120 ? `${clean.slice(0, 117)}...` : clean
}
const quoted = (text: string): string => `"${shown(text)}"`
const quotedPlace = (place: string): string => (place === '' ? 'its start' : shown(placeName(place)))
/** An instant as a person writes it, in UTC because the core knows no other clock. */
const when = (instant: string): string => shown(instant.replace(/^(.{10})T(.{5}).*$/, '$1 $2 UTC'))
const start = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)
const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`

function range(low: number | null, high: number | null, unit: string): string {
  const withUnit = unit === '' ? '' : ` ${unit}`
  if (low !== null && high !== null) return `between ${low} and ${high}${withUnit}`
  if (low !== null) return low === 0 ? 'above zero' : `at least ${low}${withUnit}`
  if (high !== null) return `at most ${high}${withUnit}`
  return 'a number that makes sense here'
}
