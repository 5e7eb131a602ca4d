import { chromium } from '@playwright/test'
import { findChromium } from '../support/chromium'
import { SIZES, THEMES, type Round } from './shots/camera'
import { round } from './shots/round'
import { LAUNCH_FLAGS } from './support/flags'

/**
 * `npm run screenshots`: every screen and its states, on a laptop, a tablet and a phone, light and dark, empty, with the
 * demo sites, and with a visit in which everything goes wrong, into the git-ignored folder `screenshots`. To be looked
 * at by a person. `npm run screenshots -- phone-dark` makes only what its name begins with.
 */
const wanted = process.argv.slice(2)
const rounds: readonly Round[] = SIZES.flatMap((size) => THEMES.map((theme) => ({ size, theme })))
const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: [...LAUNCH_FLAGS] })
let pictures = 0
for (const one of rounds) {
  const name = `${one.size}-${one.theme}`
  if (wanted.length === 0 || wanted.some((start) => name.startsWith(start)))
    pictures += await round(browser, one)
}
await browser.close()
console.log(`Wrote ${pictures} pictures into screenshots/`)
