import type { Day, Instant } from '#core/records/index'

/** Time of day at the site, `14:05`. */
export const timeAt = (instant: Instant, timeZone: string): string =>
  formatter({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }, timeZone).format(new Date(instant))

/** A day in full, `9 March 2026`: no order of day and month to mistake. */
export const dayAt = (instant: Instant, timeZone: string): string =>
  formatter({ day: 'numeric', month: 'long', year: 'numeric' }, timeZone).format(new Date(instant))

export const dayText = (day: Day): string => dayAt(`${day}T12:00:00.000Z`, 'UTC')

const formatters = new Map<string, Intl.DateTimeFormat>()

/** Making one takes longer than using it a hundred times. */
function formatter(options: Intl.DateTimeFormatOptions, timeZone: string): Intl.DateTimeFormat {
  const key = `${timeZone} ${Object.keys(options).join(' ')}`
  const known = formatters.get(key)
  if (known !== undefined) return known
  const made = make(options, timeZone)
  formatters.set(key, made)
  return made
}

function make(options: Intl.DateTimeFormatOptions, timeZone: string): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat('en-GB', { ...options, timeZone })
  } catch {
    // a time zone this computer does not know
    return new Intl.DateTimeFormat('en-GB', options)
  }
}
