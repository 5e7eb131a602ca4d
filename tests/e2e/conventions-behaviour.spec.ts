import type { Page } from '@playwright/test'
import { numberBoxes, wheelAndArrows, wrongTexts } from './conventions/fields'
import { plainInForcedColours } from './conventions/forced-colours'
import { rest, walk } from './conventions/walk'
import { expect, test } from './support/program'

test.describe.configure({ mode: 'parallel' })
test.use({ trace: 'off', actionTimeout: 20_000 })

test('a text that is no number is kept, marked and explained without blame, in every field of every screen', async ({
  program,
}) => {
  let boxes = 0
  const found = await walk(program, async (page) => {
    boxes += await numberBoxes(page).count()
    return wrongTexts(page)
  })
  expect(found).toEqual([])
  expect(boxes).toBeGreaterThan(40)
})

test('wheel and arrow keys change no number', async ({ program }) => {
  let boxes = 0
  const found = await walk(program, async (page) => {
    boxes += await numberBoxes(page).count()
    return wheelAndArrows(page)
  })
  expect(found).toEqual([])
  expect(boxes).toBeGreaterThan(40)
})

test('the theme chosen in Settings is used, whatever the computer prefers, and is there after a reload', async ({
  program: page,
}) => {
  await page.emulateMedia({ colorScheme: 'light' })
  const ground = (): Promise<string> => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  const light = await ground()
  await goTo(page, '#/settings')
  await page.getByLabel('dark', { exact: true }).check()
  await expect.poll(ground).not.toBe(light)
  await expect(page.getByText(/^Saved/u).first()).toBeVisible()
  await page.reload()
  await expect(page.locator('main h1').first()).toBeVisible()
  expect(await ground()).not.toBe(light)
})

test.describe('with the colours a person has chosen for everything', () => {
  test.use({ contextOptions: { forcedColors: 'active' }, colorScheme: 'dark' })

  test('every control has an edge, what is chosen differs, and every picture can be seen', async ({
    program,
  }) => {
    const found = await walk(program, plainInForcedColours)
    expect(found).toEqual([])
  })
})

test.describe('on paper', () => {
  test.use({ colorScheme: 'dark' })

  test('no control, place or message is printed with any screen, and ink is dark on white', async ({
    program,
  }) => {
    const found = await walk(program, async (page, place) => {
      // a window over the page is not printed, and then there is nothing else to look at
      await page.emulateMedia({ media: 'print' })
      const wrong = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('button, header nav, nav, dialog, [role=status] button')]
          .filter((node) => node.checkVisibility({ visibilityProperty: true }))
          .map((node) => `is printed: ${node.outerHTML.slice(0, 140)}`),
      )
      const [ground, ink] = await page.evaluate(() =>
        [document.body, document.querySelector('main h1, main h2, main p') ?? document.body].map(
          (node, at) => {
            const style = getComputedStyle(node)
            return at === 0 ? style.backgroundColor : style.color
          },
        ),
      )
      await page.emulateMedia({ media: 'screen' })
      return [
        ...(place.name === 'report' ? wrong : []),
        ...(ground === 'rgb(255, 255, 255)' ? [] : [`the paper is ${ground ?? ''}`]),
        ...(/rgb\((?:\d{1,2}), (?:\d{1,2}), (?:\d{1,2})\)/u.test(ink ?? '')
          ? []
          : [`the ink is ${ink ?? ''}`]),
      ]
    })
    expect(found).toEqual([])
  })
})

test('no figure stands on an entry that cannot be read', async ({ program }) => {
  const found = await walk(program, async (page, place) => {
    if (!place.name.startsWith('bench with runs')) return []
    const wrong: string[] = []
    const result = page.getByRole('region', { name: 'Result' })
    const bench = await page.evaluate(() => location.hash)
    const before = await result.innerText()
    const strength = /\d[\d.,]*\s*(?:±\s*[\d.,]+\s*)?(?:ppm|mg\/L)/u
    const dose = /\d[\d.,]*\s*(?:±\s*[\d.,]+\s*)?mL\/rack/u
    if (!strength.test(before) || !dose.test(before)) wrong.push(`shows no result to begin with: ${before}`)

    for (const [field, gone] of [
      [/^Fresh water per rack/u, [strength]],
      [/^Runs for one rack/u, [strength, dose]],
    ] as const) {
      await goTo(page, bench.replace(/\/visit.*/u, '/setup'))
      const box = page.getByRole('textbox', { name: field }).first()
      const good = await box.inputValue()
      await box.fill('2.4.1x')
      await box.blur()
      await goTo(page, bench)
      const text = await result.innerText()
      for (const figure of gone) {
        const stale = figure.exec(text)
        if (stale !== null) wrong.push(`${String(field)} cannot be read, and still “${stale[0]}” is shown`)
      }
      await goTo(page, bench.replace(/\/visit.*/u, '/setup'))
      await page.getByRole('textbox', { name: field }).first().fill(good)
      await goTo(page, bench)
      if ((await result.innerText()) === text)
        wrong.push(`${String(field)} is mended, and nothing comes back`)
    }

    for (const run of [1, 2, 3]) {
      const change = page.getByRole('button', { name: `Change run ${run}` })
      await change.click()
      const box = page.locator('.editor').getByRole('textbox', { name: /^Level after/u })
      await box.fill('3.4x')
      await box.blur()
      await change.click()
    }
    const left = await result.allInnerTexts()
    const figure = /\d[\d.,]*\s*±|±\s*\d/u.exec(left.join(' '))
    if (figure !== null) wrong.push(`no run can be read, and still “${figure[0]}” is shown`)
    return wrong
  })
  expect(found).toEqual([])
})

async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to
  }, hash)
  await rest(page)
  await expect(page.locator('main h1').first()).toBeVisible()
}
