import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { PDFParse } from 'pdf-parse'
import { expect, openDemoSite, test } from './support/program'

const root = new URL('../../', import.meta.url)

/** Opens the report of the last visit of a demo site. */
async function openReport(page: Page, name: string, file: string): Promise<void> {
  const { site } = JSON.parse(await readFile(new URL(`assets/demo/${file}`, root), 'utf8')) as {
    site: { id: string; visits: readonly { id: string; closing: unknown }[] }
  }
  await openDemoSite(page, name)
  const visit = site.visits.findLast((one) => one.closing !== null)
  await page.evaluate(
    ([siteId, visitId]) => {
      location.hash = `#/site/${siteId}/visit/${visitId}/report`
    },
    [site.id, visit?.id ?? ''],
  )
  await page.getByRole('article', { name: 'For the file' }).waitFor()
}

async function printed(
  page: Page,
): Promise<{ readonly pages: number; readonly text: string; readonly size: string }> {
  const data = await page.pdf({ preferCSSPageSize: true, printBackground: true })
  const parser = new PDFParse({ data: new Uint8Array(data) })
  const { text, total } = await parser.getText()
  const { pages } = await parser.getInfo({ parsePageInfo: true })
  await parser.destroy()
  const first = pages[0]
  return {
    pages: total,
    text: text.replaceAll(/\s+/gu, ' '),
    size: first === undefined ? '' : `${Math.round(first.width)} x ${Math.round(first.height)}`,
  }
}

/** Millimetres of paper left above the signatures of the customer’s page as it is printed. */
async function freeRoom(page: Page): Promise<number> {
  await page.emulateMedia({ media: 'print' })
  const pixels = await page.getByRole('article', { name: 'For the customer' }).evaluate((sheet) => {
    const end = sheet.querySelector('.push')
    const before = end?.previousElementSibling
    return end === null || before === null || before === undefined
      ? 0
      : end.getBoundingClientRect().top - before.getBoundingClientRect().bottom
  })
  await page.emulateMedia({ media: null })
  // CSS Values: 96 px an inch, 25.4 mm an inch
  return (pixels / 96) * 25.4
}

test('the report is one page for the customer and one for the file, on A4 and on Letter', async ({
  program,
}) => {
  await openReport(program, 'Copper Spoon Diner', 'copper-spoon-diner.json')
  // points; ISO 216 A4 is 210 x 297 mm, ANSI A is 8.5 x 11 in
  for (const [paper, size] of [
    ['A4', '595 x 842'],
    ['Letter', '612 x 792'],
  ] as const) {
    await program.getByRole('radio', { name: paper }).check({ force: true })
    const paperwork = await printed(program)
    expect(paperwork.pages, paper).toBe(2)
    expect(paperwork.size, paper).toBe(size)
    // and not by luck: a longer name of a month or a line of advice more must not push the signatures off
    expect(await freeRoom(program), paper).toBeGreaterThan(15)
  }
})

test('a report of four pumps on two machines is still one page for the customer', async ({ program }) => {
  await openReport(program, 'Quayside Banqueting', 'quayside-banqueting.json')
  await program.getByRole('radio', { name: 'For the customer' }).check({ force: true })
  for (const paper of ['A4', 'Letter']) {
    await program.getByRole('radio', { name: paper }).check({ force: true })
    expect((await printed(program)).pages, paper).toBe(1)
    expect(await freeRoom(program), paper).toBeGreaterThan(15)
  }
})

test('a printed sheet keeps margins every printer can reach, on A4 and on Letter', async ({
  program: page,
}) => {
  await openReport(page, 'Copper Spoon Diner', 'copper-spoon-diner.json')
  await page.emulateMedia({ media: 'print' })
  for (const paper of ['A4', 'Letter'] as const) {
    await page.emulateMedia({ media: 'screen' })
    await page.getByRole('radio', { name: paper }).check({ force: true })
    // CSS pixels, 96 to the inch: the paper is as wide as the window
    await page.setViewportSize(paper === 'A4' ? { width: 794, height: 1123 } : { width: 816, height: 1056 })
    await page.emulateMedia({ media: 'print' })
    const margins = await page.getByRole('article').evaluateAll((sheets) =>
      sheets.map((one) => {
        const style = getComputedStyle(one)
        return Math.min(parseFloat(style.paddingLeft), parseFloat(style.paddingRight))
      }),
    )
    expect(margins).toHaveLength(2)
    // 6.4 mm is what a desktop printer cannot reach at most: common practice, no source
    for (const margin of margins) expect(margin, paper).toBeGreaterThan((6.4 / 25.4) * 96)
  }
})

test('the printed report says what was found and left, what to never mix, when next, and certifies nothing', async ({
  program,
}) => {
  await openReport(program, 'Copper Spoon Diner', 'copper-spoon-diner.json')
  const { text } = await printed(program)
  for (const words of [
    'Copper Spoon Diner',
    'Sanitizer pump',
    'mg/L active',
    'In window',
    'Never mix.',
    'Next visit:',
    'Name and signature, for the site',
    'Rack counter',
    'Draw down, 50 mL cylinder',
    'It certifies nothing.',
  ])
    expect(text).toContain(words)
  for (const control of ['Print, or save as PDF', 'Back to the visit', 'Settings', 'Undo'])
    expect(text).not.toContain(control)
})

test('one page can be printed alone', async ({ program }) => {
  await openReport(program, 'Lantern Lane Cafe', 'lantern-lane-cafe.json')
  await program.getByText('For the customer', { exact: true }).first().click()
  const { pages, text } = await printed(program)
  expect(pages).toBe(1)
  expect(text).not.toContain('Service record')
})

test('the report is white paper in the dark theme too', async ({ program }) => {
  await program.emulateMedia({ colorScheme: 'dark' })
  await openReport(program, 'Lantern Lane Cafe', 'lantern-lane-cafe.json')
  const sheet = program.getByRole('article', { name: 'For the customer' })
  await expect(sheet).toHaveCSS('background-color', 'rgb(255, 255, 255)')
  await expect(sheet).toHaveCSS('color', 'rgb(16, 32, 29)')
})
