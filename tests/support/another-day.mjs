/**
 * Lets everything of a test run live so many days ahead, to see that no test and no page depends on the day it runs:
 * `DOSEWRIGHT_DAYS_AHEAD=40 NODE_OPTIONS="--import ./tests/support/another-day.mjs" npm test`. Times of files stay the
 * machine's own.
 */
const ahead = Number(process.env['DOSEWRIGHT_DAYS_AHEAD'] ?? 0) * 86_400_000

/** Replaces the clock of a realm. Self-contained: browser tests hand its text to the page. */
export function moveClock(by) {
  const machine = globalThis.Date.now
  // a test may put a clock of its own on top
  let now = () => machine() + by
  globalThis.Date = new Proxy(globalThis.Date, {
    construct: (target, given, made) => Reflect.construct(target, given.length === 0 ? [now()] : given, made),
    apply: (target) => new target(now()).toString(),
    get: (target, name) => (name === 'now' ? now : Reflect.get(target, name)),
    set: (target, name, value) => {
      if (name === 'now') now = value
      else Reflect.set(target, name, value)
      return true
    },
  })
}

if (Number.isFinite(ahead) && ahead !== 0) moveClock(ahead)
