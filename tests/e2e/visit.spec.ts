import { expect, openDemoSite, test } from './support/program'
import { startHost } from './support/host'
import { benchOf, countedRun, Hands, quickTime } from './visit-hands'

/**
 * The main job: conditions, three draw-downs, a turn, three more, the second pump, close, report. Level readings are
 * made up so that the first series of the rinse aid pump is over its window and the second inside it.
 */
async function twoPumps(hands: Hands): Promise<void> {
  const { page } = hands
  await hands.use(page.getByRole('button', { name: 'Start a visit' }))

  for (let group = 0; group < 4; group += 1)
    await hands.use(page.getByRole('button', { name: /^All \d+ in order$/u }))
  await hands.use(page.locator('section[aria-label="Bench"] button.primary.large'))

  await hands.use(page.getByRole('button', { name: 'I have read the label and the safety data sheet' }))
  await hands.use(page.getByRole('button', { name: /^Gloves and goggles are on/u }))
  await hands.use(page.getByRole('button', { name: 'Line is primed' }))

  const before = page.getByRole('textbox', { name: /^Level before/u })
  await hands.enter(before, '10')
  if (hands.way === 'keys') await hands.press('Enter')
  for (const after of ['3.4', '3.3', '3.4']) await countedRun(hands, after)

  const turned = page.getByRole('button', { name: 'Turned it', exact: true })
  await expect(page.getByRole('heading', { name: /^Turn the screw anticlockwise/u })).toBeVisible()
  await hands.use(turned)
  await expect(page.getByRole('heading', { name: 'Before the change' })).toBeVisible()
  for (const after of ['3.9', '3.9', '3.95']) await countedRun(hands, after)
  const result = page.getByRole('region', { name: 'Result' })
  await expect(result).toContainText(/In window/u)
  // what the turn was expected to do stands beside what it did
  await expect(result).toContainText(/expected 5\.\d+ ± 0\.\d+ mL\/min/u)
  await expect(result).toContainText('It came as foretold.')

  await hands.use(page.getByRole('button', { name: 'Go there' }))
  await hands.use(page.getByRole('button', { name: 'I have read the label and the safety data sheet' }))
  await hands.use(page.getByRole('button', { name: 'Water for drenching is within reach' }))
  await hands.use(page.getByRole('button', { name: 'Line is primed' }))
  await hands.enter(page.getByRole('textbox', { name: /^Level before/u }), '100')
  if (hands.way === 'keys') await hands.press('Enter')
  for (const after of ['36', '36.5', '36']) await countedRun(hands, after)

  await hands.use(page.getByRole('button', { name: 'Go there' }))
  await hands.use(page.getByRole('button', { name: /^Guards, labels, caps and tubes/u }))
  const seenBy = page.getByRole('textbox', { name: 'Seen by, for the site' })
  await hands.enter(seenBy, 'K. Ortega')
  if (hands.way === 'keys') {
    await hands.press('Enter')
    await hands.press('Enter')
  }
  await hands.use(page.getByRole('button', { name: 'Close visit and show the report' }))
  await expect(page.getByRole('heading', { level: 1, name: 'Service report' }).first()).toBeVisible()
}

test.describe('a visit with two pumps', () => {
  test('is done with keys alone, in at most 45 keystrokes beyond the digits', async ({ program }) => {
    await quickTime(program)
    await openDemoSite(program, 'Lantern Lane Cafe')
    const hands = new Hands(program, 'keys')
    await twoPumps(hands)
    console.log(`two-pump visit with keys: ${hands.count} keystrokes beyond the digits`)
    expect(hands.count).toBeLessThanOrEqual(45)
    await expect(program.getByRole('article', { name: 'For the customer' })).toContainText(
      'Lantern Lane Cafe',
    )
  })

  test.describe('by touch', () => {
    test.use({ hasTouch: true, viewport: { width: 820, height: 1180 } })

    test('takes at most 45 taps beyond the digits', async ({ program }) => {
      await quickTime(program)
      await openDemoSite(program, 'Lantern Lane Cafe')
      const hands = new Hands(program, 'touch')
      await twoPumps(hands)
      console.log(`two-pump visit by touch: ${hands.count} taps beyond the digits`)
      expect(hands.count).toBeLessThanOrEqual(45)
    })
  })
})

test('closing the program in the middle of a visit loses nothing that was entered', async ({
  program,
  host,
  browser,
}) => {
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Start a visit' }).click()
  await program.getByRole('button', { name: /^All \d+ in order$/u }).click()
  await benchOf(program, /Rinse aid pump/u)
  await program.getByRole('textbox', { name: /^Level before/u }).fill('10')
  await program.getByRole('textbox', { name: /^Level after/u }).fill('3.4')
  await program.keyboard.press('Tab')
  await expect(program).not.toHaveTitle(/•/u)
  await host.stop()

  const again = await startHost(host.dataFolder)
  const page = await browser.newPage()
  await page.goto(await again.address())
  await page.getByRole('link', { name: 'Lantern Lane Cafe' }).click()
  await page.getByRole('button', { name: 'Resume the visit' }).click()
  await page
    .getByRole('navigation', { name: 'Parts of the visit' })
    .getByRole('button', { name: /Rinse aid/u })
    .click()
  await expect(page.getByRole('textbox', { name: /^Level before/u })).toHaveValue('10')
  await expect(page.getByRole('textbox', { name: /^Level after/u })).toHaveValue('3.4')
  await page.close()
  await again.stop()
})
