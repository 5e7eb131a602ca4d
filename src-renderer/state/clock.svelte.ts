import type { Day, Instant } from '#core/records/index'

const MINUTE = 60_000

/** The calendar day of an instant in a time zone; an unknown zone counts as the computer's own. */
export function dayIn(instant: Date, timeZone: string | null): Day {
  const parts = formatter(timeZone).formatToParts(instant)
  const part = (type: string): string => parts.find((item) => item.type === type)?.value ?? ''
  return `${part('year')}-${part('month')}-${part('day')}`
}

const formatters = new Map<string, Intl.DateTimeFormat>()

/** Making one takes longer than using it a hundred times; that of the computer's own zone may change under way. */
function formatter(timeZone: string | null): Intl.DateTimeFormat {
  if (timeZone === null) return make(null)
  const known = formatters.get(timeZone)
  if (known !== undefined) return known
  const made = make(timeZone)
  formatters.set(timeZone, made)
  return made
}

function make(timeZone: string | null): Intl.DateTimeFormat {
  const options = { year: 'numeric', month: '2-digit', day: '2-digit' } as const
  try {
    return new Intl.DateTimeFormat('en-CA', timeZone === null ? options : { ...options, timeZone })
  } catch {
    return new Intl.DateTimeFormat('en-CA', options)
  }
}

/** The time, and a minute hand that screens may follow so that "today" turns at midnight. */
export class Clock {
  minute: Date = $state.raw(new Date())

  constructor() {
    setInterval(() => {
      this.minute = new Date()
    }, MINUTE)
  }

  now(): Instant {
    return new Date().toISOString()
  }

  today(timeZone: string | null): Day {
    return dayIn(this.minute, timeZone)
  }
}
