import { readFileSync } from 'node:fs'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { PDFParse } from 'pdf-parse'
import { answer, firstPages, inTest, onward, openKitchen, standing, untilResult } from './glass-hands'
import { expect, openDemoSite, test } from './support/program'

const CAFE = 'Lantern Lane Cafe'
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']

test.use({ viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true })

/** What is wrong with the page as it stands: axe, controls too low for a wet finger, and width that does not fit. */
async function faults(page: Page): Promise<readonly string[]> {
  const axe = await new AxeBuilder({ page }).withTags(TAGS).analyze()
  const low = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, summary, .kitchen a')]
      .filter((element) => element.checkVisibility() && element.getBoundingClientRect().height < 44)
      .map((element) => `low: ${element.outerHTML.slice(0, 120)}`),
  )
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  )
  const { heading } = await standing(page)
  return [
    ...axe.violations.map((violation) => `${violation.id}: ${violation.nodes[0]?.html.slice(0, 120) ?? ''}`),
    ...low,
    ...(over > 0 ? [`${over} px too wide`] : []),
  ].map((fault) => `${heading}: ${fault}`)
}

const rinseAidOut = [
  /^Rinse aid bottle empty/u,
  /^Only what I picked/u,
  /^None of these/u,
  /^It breaks into drops/u,
]

test('kitchen staff find the empty rinse aid by touch alone, with a finger’s few taps', async ({
  program: page,
}) => {
  await openDemoSite(page, CAFE)
  await openKitchen(page)
  let taps = 0
  await page.exposeFunction('tapped', () => {
    taps += 1
  })
  await page.evaluate(() =>
    document.addEventListener('click', () => void (globalThis as unknown as { tapped(): void }).tapped()),
  )
  await firstPages(page, [/^Clear spots/u])
  // the first test is the look around the machine: pick the bottle, then say that this is all
  await page.getByRole('button', { name: /^Rinse aid bottle empty/u }).tap()
  await page.getByRole('button', { name: 'Only what I picked' }).tap()
  await untilResult(page, [/^It breaks into drops/u, /^Yes, it is gone/u, /^None of these/u])
  await expect(page.getByRole('heading', { level: 2, name: 'Too little rinse aid' })).toBeVisible()
  await expect(page.getByText('The rinse aid bottle is empty')).toBeVisible()
  await expect(page.getByRole('heading', { name: 'What you can do now' })).toBeVisible()
  // after the warning, the one next thing comes first
  const parts = await page.locator('.kitchen .parts h3').allTextContents()
  expect(parts.slice(0, 2)).toEqual(['The next thing', 'What you can do now'])
  console.log(`taps from start to result: ${taps}`)
  expect(taps).toBeLessThanOrEqual(20)
})

test('nothing of the rest of the program can be seen or reached from the kitchen’s view', async ({
  program: page,
}) => {
  await openDemoSite(page, CAFE)
  await openKitchen(page)
  await expect(page.getByRole('navigation')).toHaveCount(0)
  await expect(page.getByRole('textbox')).toHaveCount(0)
  await expect(page.getByRole('link', { name: /go to the content/iu })).toHaveCount(1)
  const links = await page.locator('a:not(.skip)').count()
  expect(links).toBe(0)
  await firstPages(page, [/^White film/u])
  await untilResult(page, rinseAidOut)
  expect(await page.locator('a:not(.skip)').count()).toBe(0)
  await expect(page.locator('body')).not.toContainText(/price|€|cost|screw setting/iu)
  // the rep's way out asks first
  await page.getByRole('button', { name: 'Start a new check' }).tap()
  await page.getByRole('button', { name: /^For your rep/u }).tap()
  await page.getByRole('button', { name: 'Stay here' }).tap()
  expect(await page.locator('a:not(.skip)').count()).toBe(0)
  // the keys of undo do nothing here
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('button', { name: 'Go on where you stopped' })).toBeVisible()
})

test('skipping everything is always possible and blames nothing', async ({ program: page }) => {
  await openDemoSite(page, 'Harbourview Hotel bar')
  await openKitchen(page)
  await page.getByRole('button', { name: 'Start', exact: true }).tap()
  for (let pages = 0; pages < 5; pages += 1) {
    await onward(page, () => page.getByRole('button', { name: 'I do not know' }).tap())
  }
  for (let tests = 0; tests < 12 && (await inTest(page)); tests += 1) {
    await onward(page, () => page.getByRole('button', { name: 'Skip this' }).tap())
  }
  await expect(page.getByRole('heading', { name: 'What you can do now' })).toBeVisible()
  const reasons = await page.locator('.account li').allTextContents()
  expect(reasons.filter((reason) => !/last visit/u.test(reason))).toEqual([])
})

test('a check stands where it was after a reload, and a cure that did not help changes the answer', async ({
  program: page,
}) => {
  await openDemoSite(page, CAFE)
  await openKitchen(page)
  await firstPages(page, [/^Clear spots/u])
  const before = await standing(page)
  await expect(async () => {
    await page.reload()
    await page.getByRole('button', { name: 'Go on where you stopped' }).tap({ timeout: 15_000 })
  }).toPass()
  expect(await standing(page)).toEqual(before)
  await untilResult(page, rinseAidOut)
  const first = (await standing(page)).heading
  await page.getByRole('button', { name: 'Check again' }).tap()
  await page.getByRole('button', { name: /still have marks/u }).tap()
  await untilResult(page, [/^None of these/u, /^It runs off as one sheet/u, /^No, /u, /^9 or less/u])
  expect((await standing(page)).heading).not.toBe(first)
  await page.getByRole('button', { name: 'Check again' }).tap()
  await page.getByRole('button', { name: 'Yes, they are clear' }).tap()
  await expect(page.getByRole('heading', { name: /Good\. The glasses are clear/u })).toBeVisible()
  await page.getByRole('button', { name: 'Finish' }).tap()
  await expect(page.getByRole('heading', { name: 'Why do the glasses spot?' })).toBeVisible()
})

test('the result prints on one page without a control, and goes to the rep as a file he opens', async ({
  program: page,
}) => {
  await openDemoSite(page, CAFE)
  await openKitchen(page)
  await firstPages(page, [/^White film/u, /^Clear spots/u])
  await untilResult(page, [
    /^Softener out of salt/u,
    /^Only what I picked/u,
    /^Yes, it is gone/u,
    /^None of these/u,
  ])
  const cause = (await standing(page)).heading

  await page.emulateMedia({ media: 'print' })
  for (const format of ['A4', 'Letter'] as const) {
    const pdf = await page.pdf({
      format,
      margin: { top: '12mm', bottom: '12mm', left: '14mm', right: '14mm' },
    })
    const parser = new PDFParse({ data: new Uint8Array(pdf) })
    const text = await parser.getText()
    await parser.destroy()
    expect(text.total).toBe(1)
    expect(text.text).toContain(cause)
    expect(text.text).toContain(CAFE)
    expect(text.text).not.toContain('Check again')
  }
  await page.emulateMedia({ media: null })

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save a file for your rep' }).tap(),
  ])
  const path = await download.path()
  expect(readFileSync(path, 'utf8')).toContain('dosewright-glass-check')

  await page.goto(page.url().replace(/kitchen$/u, 'glass'))
  await page.getByRole('button', { name: 'Remove this check' }).tap()
  await expect(page.locator('article')).toHaveCount(0)
  await page.getByLabel('File of a glass check').setInputFiles(path)
  await expect(page.locator('article')).toHaveCount(1)
  await expect(page.getByText(/softener/iu).first()).toBeVisible()
  await page.getByLabel('File of a glass check').setInputFiles({
    name: 'letter.json',
    mimeType: 'application/json',
    buffer: Buffer.from('Dear rep'),
  })
  await expect(page.getByText(/^letter\.json: /u)).toBeVisible()
  await page.getByRole('button', { name: 'Confirm this cause' }).tap()
  await expect(page.getByText(/counts at the next checks/u)).toBeVisible()
})

test('the rep changes a weight, is told what cannot be used, and brings the shipped ones back', async ({
  program: page,
}) => {
  await openDemoSite(page, CAFE)
  await page.getByRole('link', { name: 'Glass check' }).tap()
  await page.getByText('See and change the weights').tap()
  const field = page.getByRole('textbox', { name: 'Rinsed glass beads: water break in the sheeting test' })
  await expect(field).toHaveValue('1.8')
  await field.fill('7')
  await field.blur()
  await expect(page.getByText(/The number in use is 1\.8/u)).toBeVisible()
  await expect(page.getByText('All weights are as shipped.')).toBeVisible()
  await field.fill('0.5')
  await field.blur()
  await expect(page.getByText('1 number differs from the shipped ones.')).toBeVisible()
  await page.getByRole('button', { name: 'Bring the shipped weights back' }).tap()
  await expect(field).toHaveValue('1.8')
})

for (const theme of ['light', 'dark'] as const)
  test(`no page of the glass check breaks an accessibility rule in the ${theme} theme, nor runs over at 320 px`, async ({
    program: page,
  }) => {
    await page.emulateMedia({ colorScheme: theme })
    await page.setViewportSize({ width: 320, height: 640 })
    await openDemoSite(page, 'Quayside Banqueting')
    await openKitchen(page)
    const found: string[] = [...(await faults(page))]
    await page.getByRole('button', { name: 'Start', exact: true }).tap()
    const steps: readonly (readonly RegExp[])[] = [
      [/^I do not know/u],
      [/^White film/u],
      [/^That is all/u],
      [/^Glasses/u],
      [/^Next/u],
      [/^All over/u],
      [/^It began/u],
      [/^It gets worse/u],
      [/^Only what/u],
    ]
    for (const step of steps) {
      found.push(...(await faults(page)))
      await answer(page, step)
    }
    for (let tests = 0; tests < 14 && (await inTest(page)); tests += 1) {
      found.push(...(await faults(page)))
      await answer(page, [
        /^Only what I picked/u,
        /^None of these/u,
        /^It is better/u,
        /^A bit of both/u,
        /^In between/u,
        /^Hard to say/u,
        /^No, /u,
      ])
    }
    found.push(...(await faults(page)))
    for (const fold of await page.locator('summary').all()) await fold.tap()
    found.push(...(await faults(page)))
    await page.getByRole('button', { name: 'Check again' }).tap()
    found.push(...(await faults(page)))
    await page.goto(page.url().replace(/kitchen$/u, 'glass'))
    await expect(page.locator('article')).toHaveCount(1)
    for (const fold of await page.locator('main summary').all()) await fold.tap()
    const rep = await new AxeBuilder({ page }).withTags(TAGS).analyze()
    found.push(...rep.violations.map(({ id, nodes }) => `rep: ${id}: ${nodes[0]?.html.slice(0, 160) ?? ''}`))
    expect(found).toEqual([])
  })

test('the eight faults are told apart without colour', async ({ program: page, context }) => {
  await openDemoSite(page, CAFE)
  await openKitchen(page)
  await page.getByRole('button', { name: 'Start', exact: true }).tap()
  const pictures = page.locator('.pictures svg[viewBox="0 0 120 120"]')
  await expect(pictures).toHaveCount(8)
  const shots: string[] = []
  for (const picture of await pictures.all()) shots.push((await picture.screenshot()).toString('base64'))
  const bench = await context.newPage()
  const apart = await bench.evaluate(async (all) => {
    const SIDE = 24
    const greys: number[][] = []
    for (const shot of all) {
      const image = new Image()
      image.src = `data:image/png;base64,${shot}`
      await image.decode()
      const canvas = document.createElement('canvas')
      canvas.width = SIDE
      canvas.height = SIDE
      const context = canvas.getContext('2d')
      if (context === null) throw new Error('no canvas')
      context.drawImage(image, 0, 0, SIDE, SIDE)
      const { data } = context.getImageData(0, 0, SIDE, SIDE)
      greys.push(
        Array.from(
          { length: SIDE * SIDE },
          (_, i) =>
            0.2126 * (data[4 * i] ?? 0) + 0.7152 * (data[4 * i + 1] ?? 0) + 0.0722 * (data[4 * i + 2] ?? 0),
        ),
      )
    }
    return greys.flatMap((one, i) =>
      greys
        .slice(i + 1)
        .map(
          (other) =>
            one.reduce((sum, grey, k) => sum + Math.abs(grey - (other[k] ?? 0)), 0) / one.length / 255,
        ),
    )
  }, shots)
  console.log(`least difference of two pictures in grey: ${(100 * Math.min(...apart)).toFixed(1)} %`)
  expect(apart).toHaveLength(28)
  expect(Math.min(...apart)).toBeGreaterThan(0.03)
})
