import type { Page } from '@playwright/test'
import type { Camera } from './camera'

/** The kitchen's view from its start to a result, by clicks, which a laptop has too. */
export async function kitchen(
  camera: Camera,
  open: (hash: string) => Promise<void>,
  cafe: string,
): Promise<void> {
  const { page } = camera
  const tap = (name: RegExp | string): Promise<void> =>
    page.locator('.kitchen').getByRole('button', { name }).click()
  await open(`${cafe}/glass`)
  await page.getByRole('link', { name: 'Open the kitchen’s view' }).click()
  await camera.shoot('kitchen-start')
  await tap(/^Start/u)
  await tap(/^White film/u)
  await camera.shoot('kitchen-what-is-seen')
  await tap('That is all I see')
  await page.locator('.kitchen').getByRole('button', { name: 'Glasses', exact: true }).click()
  await tap('Next')
  await tap('All over the rack')
  await tap('It came on over weeks')
  await camera.shoot('kitchen-what-else')
  await tap('None of these')
  await camera.shoot('kitchen-test')
  for (let pages = 0; pages < 20 && (await inTest(page)); pages += 1) {
    const yes = page.locator('.kitchen').getByRole('button', { name: /^Yes/u })
    if ((await yes.count()) > 0) await yes.first().click()
    else await tap('I do not know')
    await page.waitForTimeout(100)
  }
  await camera.shoot('kitchen-result')
  await open(`${cafe}/glass`)
  await camera.shoot('glass-with-a-check')
}

const inTest = async (page: Page): Promise<boolean> =>
  /^Test \d/u.test((await page.locator('.kitchen .above').first().textContent()) ?? '')

/** Both tanks of a conveyor over the service, and its booster, at the last visit. */
export async function tanks(
  camera: Camera,
  open: (hash: string) => Promise<void>,
  hotel: string,
): Promise<void> {
  const { page } = camera
  await open(`${hotel}/setup`)
  await page.getByText('More about this machine').first().click()
  await camera.shoot('setup-second-tank')
  await open(hotel)
  const report = await page.locator('a[href*="/visit/"]').first().getAttribute('href')
  await open((report ?? '').replace(/\/report$/u, ''))
  const parts = page.getByRole('navigation', { name: 'Parts of the visit' })
  const whole = parts.getByRole('button', { name: 'All parts of the visit' })
  const pump = async (name: RegExp, fold: string, shot: string): Promise<void> => {
    await parts.waitFor()
    if (await whole.isVisible()) await whole.click()
    await parts.getByRole('button', { name }).click()
    await page.getByText(fold).click()
    await camera.shoot(shot)
  }
  await pump(/conveyor detergent/iu, 'The wash over the service', 'visit-two-tanks')
  await pump(/conveyor rinse aid/iu, 'How soon a change reaches the glasses', 'visit-booster')
}

/** Stock, a what-if and the reasons of the portfolio. */
export async function money(
  camera: Camera,
  open: (hash: string) => Promise<void>,
  diner: string,
): Promise<void> {
  const { page } = camera
  await open(`${diner}/spend`)
  const view = (name: string): Promise<void> =>
    page
      .getByRole('navigation')
      .or(page.getByRole('tablist'))
      .or(page.locator('main'))
      .getByText(name, { exact: true })
      .first()
      .click()
  await view('Stock and orders')
  await camera.shoot('stock')
  await view('What if')
  await camera.shoot('what-if-none')
  await page.getByRole('button', { name: 'Try something' }).click()
  await camera.shoot('what-if')
}
