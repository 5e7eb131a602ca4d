import { benchOf, goToPart } from '../visit-hands'
import type { Camera } from './camera'

/** Visits to sites with nothing set up, and with one pump of which hardly anything is known. */
export async function bareVisits(camera: Camera, open: (hash: string) => Promise<void>): Promise<void> {
  const { page } = camera
  await open('#/')
  await page.getByRole('button', { name: 'New site' }).click()
  await page.keyboard.type('Old Mill Brewpub')
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { level: 1, name: 'Set-up of Old Mill Brewpub' }).waitFor()
  const site = new URL(page.url()).hash.replace('/setup', '')
  await camera.shoot('bare-setup')
  await open(site)
  await camera.shoot('bare-site')
  const start = page.getByRole('button', { name: 'Start a visit' })
  if (await start.isVisible()) {
    await start.click()
    await camera.shoot('bare-visit-nothing-set-up')
    await goToPart(page, /Close the visit/u)
    await camera.shoot('bare-visit-close')
    await page.getByRole('button', { name: 'Discard this visit' }).click()
  }
  await open(`${site}/trend`)
  await camera.shoot('bare-trend')
  await open(`${site}/setup`)
  await page.getByRole('button', { name: 'Undercounter machine' }).click()
  await open(site)
  await start.click()
  await camera.shoot('bare-visit-one-machine')
  await benchOf(page, /Rinse aid/u)
  await camera.shoot('bare-bench-no-product')
}
