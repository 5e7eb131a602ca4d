import type { Day, Instant } from '#core/records/index'

const formatters = new Map<string, Intl.DateTimeFormat>()

/** The calendar day of an instant in a time zone; a zone this system does not know counts as the computer's own. */
export function dayIn(instant: Instant, timeZone: string): Day {
  const parts = formatter(timeZone).formatToParts(new Date(instant))
  const part = (type: string): string => parts.find((item) => item.type === type)?.value ?? ''
  return `${part('year')}-${part('month')}-${part('day')}`
}

/** Making one takes longer than using it a hundred times. */
function formatter(timeZone: string): Intl.DateTimeFormat {
  const known = formatters.get(timeZone)
  if (known !== undefined) return known
  const made = make(timeZone)
  formatters.set(timeZone, made)
  return made
}

function make(timeZone: string): Intl.DateTimeFormat {
  const options = { year: 'numeric', month: '2-digit', day: '2-digit' } as const
  try {
    return new Intl.DateTimeFormat('en-CA', { ...options, timeZone })
  } catch {
    return new Intl.DateTimeFormat('en-CA', options)
  }
}
