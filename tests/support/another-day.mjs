/**
 * Lets everything of a test run live so many days ahead, to see that no test and no page depends on the day it runs:
 * `DOSEWRIGHT_DAYS_AHEAD=40 NODE_OPTIONS="--import ./tests/support/another-day.mjs" npm test`. Times of files stay the
 * machine's own.
 */
const ahead = Number(process.env['DOSEWRIGHT_DAYS_AHEAD'] ?? 0) * 86_400_000

/** Replaces the clock of a realm. Self-contained: browser tests hand its text to the page. */
export function moveClock(by) {
  const Machine = globalThis.Date
  globalThis.Date = new Proxy(Machine, {
    construct: (target, given, made) =>
      Reflect.construct(target, given.length === 0 ? [target.now() + by] : given, made),
    apply: (target) => new target(target.now() + by).toString(),
    get: (target, name) => (name === 'now' ? () => target.now() + by : Reflect.get(target, name)),
  })
}

if (Number.isFinite(ahead) && ahead !== 0) moveClock(ahead)
