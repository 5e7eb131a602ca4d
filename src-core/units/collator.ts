/**
 * Orders names as readers of `locale` (a BCP 47 tag, as browsers tell it) expect, numbers by value. A tag that is none,
 * as some systems are set up with, orders as English does.
 */
export function collatorOf(locale: string, options: Intl.CollatorOptions = {}): Intl.Collator {
  const how = { numeric: true, ...options }
  try {
    return new Intl.Collator(locale, how)
  } catch {
    return new Intl.Collator('en', how)
  }
}
