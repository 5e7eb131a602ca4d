import type { Page } from '@playwright/test'
import { benchOf, goToPart, countedRun, Hands, pass, setWallClock, watch } from '../visit-hands'
import type { Camera } from './camera'

/** One series on the bench: where the cylinder starts, and each level after a run of a minute. */
async function series(page: Page, from: string, levels: readonly string[]): Promise<void> {
  const start = page.getByRole('textbox', { name: /^(?:Level|Weight) before/u })
  if ((await start.inputValue()) === '') {
    await start.fill(from)
    await page.keyboard.press('Enter')
  }
  const hands = new Hands(page, 'keys')
  for (const level of levels) {
    await watch(page).focus()
    await countedRun(hands, level)
  }
}

/** A visit in which everything goes wrong: chlorine and acid on one site, a sanitizer too weak, a screw that does nothing. */
export async function visitGoneWrong(camera: Camera): Promise<void> {
  const { page } = camera
  await page.getByRole('button', { name: 'Start a visit' }).click()
  await page.getByRole('radio', { name: 'Not in order' }).first().check()
  await page.getByRole('textbox', { name: 'What is wrong' }).first().fill('Hose kinked behind the machine')
  await page.keyboard.press('Tab')
  await camera.shoot('wrong-condition')
  await goToPart(page, /Sanitizer pump/u)
  await camera.shoot('wrong-never-mix')
  await benchOf(page, /Sanitizer pump/u)
  await page.getByRole('button', { name: 'Line is primed' }).click()
  await page.getByRole('button', { name: 'Change', exact: true }).click()
  const cylinder = page.getByRole('combobox', { name: 'Cylinder or cup' })
  const fifty = (await cylinder.locator('option').allTextContents()).find((name) => name.startsWith('50 mL'))
  await cylinder.selectOption({ label: fifty ?? '' })
  await page.getByRole('button', { name: 'Done', exact: true }).click()
  await series(page, '50', ['33', '33.5', '33'])
  await camera.shoot('wrong-sanitizer-outside-condition-open')
  await goToPart(page, /Before you adjust/u)
  await page.getByRole('radio', { name: 'In order' }).first().check()
  for (let group = 0; group < 6; group += 1) {
    const all = page.getByRole('button', { name: /^(?:All|The other) \d+ in order$/u })
    if ((await all.count()) === 0) break
    await all.first().click()
  }
  await goToPart(page, /Sanitizer pump/u)
  await camera.shoot('wrong-sanitizer-turn')
  const turned = page.getByRole('button', { name: 'Turned it', exact: true })
  await turned.click()
  await series(page, '50', ['33', '33.5', '33'])
  await camera.shoot('wrong-screw-does-nothing')
  if (await turned.isVisible()) {
    await turned.click()
    await series(page, '50', ['33', '33.5', '33'])
    await camera.shoot('wrong-screw-does-nothing-again')
  }
  await page.getByRole('button', { name: 'Fit a new tube' }).click()
  await camera.shoot('wrong-new-tube')
  await page.getByRole('button', { name: /^Isolated, locked, tagged and tried/u }).click()
  await page.getByRole('button', { name: 'New tube fitted' }).click()
  await page.getByRole('button', { name: 'Put on a new container' }).click()
  await camera.shoot('wrong-new-container')
  await page.getByRole('button', { name: 'Flushed, wiped, and the label read' }).click()
  await page.getByRole('button', { name: 'New container put on' }).click()

  await benchOf(page, /Rinse aid pump/u)
  await page.getByRole('button', { name: 'Line is primed' }).click()
  await series(page, '10', ['4', '3.7', '3.5', '3.2', '3'])
  await camera.shoot('wrong-air-in-the-line')
  await page.getByRole('button', { name: 'Change run 2' }).click()
  await page
    .locator('.editor')
    .getByRole('textbox', { name: /^Level after/u })
    .fill('3.x')
  await page.keyboard.press('Tab')
  await page.getByRole('button', { name: 'Change run 2' }).click()
  await page.getByRole('button', { name: 'Change run 3' }).click()
  await page.getByRole('button', { name: 'Level misread' }).click()
  await camera.shoot('wrong-run-unreadable-and-left-out')
  await watch(page).click()
  await pass(page, 20)
  await setWallClock(page, 900)
  await page.reload()
  await camera.shoot('wrong-clock-moved')

  await benchOf(page, /Detergent pump/u)
  await camera.shoot('wrong-other-pump-while-timing')
  await goToPart(page, /Close the visit/u)
  await camera.shoot('wrong-close-with-much-open')
  await page.getByRole('button', { name: 'Close visit and show the report' }).click()
  await page.getByRole('article', { name: 'For the file' }).waitFor()
  await camera.shoot('wrong-report')
}
