import { AxeBuilder } from '@axe-core/playwright'
import { expect, openDemoSite, test } from './support/program'

test.describe('the trend of a site', () => {
  test.beforeEach(async ({ program }) => {
    await openDemoSite(program, 'Lantern Lane Cafe')
    await program.getByRole('link', { name: 'Trend' }).click()
    await expect(program.getByRole('heading', { level: 1, name: 'Trend' })).toBeVisible()
  })

  test('says what the chart shows, and has the same figures beside it', async ({ program }) => {
    const chart = program.getByRole('img', { name: /mL\/min on .* its window/u })
    await expect(chart).toBeVisible()
    const table = program.getByRole('table', { name: /^Flow of Rinse aid pump/u })
    await expect(table.getByRole('row')).toHaveCount(11)
    await expect(table.getByText('new tube')).toBeVisible()
    await program.getByRole('radio', { name: 'Strength' }).check()
    await expect(program.getByRole('table', { name: /^Strength of Rinse aid pump/u })).toBeVisible()
  })

  test('is zoomed and moved by keyboard alone', async ({ program }) => {
    const picture = program.getByRole('group', { name: /^Chart/u })
    const shown = program.getByText(/\d+ \w+ \d{4} to \d+ \w+ \d{4}$/u)
    const all = await shown.textContent()
    await picture.focus()
    await program.keyboard.press('+')
    const near = await shown.textContent()
    expect(near).not.toBe(all)
    await program.keyboard.press('ArrowRight')
    expect(await shown.textContent()).not.toBe(near)
    await program.keyboard.press('Home')
    await expect(shown).toHaveText(all ?? '')
    await program.getByRole('button', { name: 'Closer' }).focus()
    await program.keyboard.press('Enter')
    await expect(shown).toHaveText(near ?? '')
  })

  // closed, the screen is looked at with every other one in conventions.spec.ts
  test('opens the rate and the day to their working, which keeps the rules of access', async ({
    program,
  }) => {
    await program.getByText('Working of the rate and of the day').click()
    await expect(program.getByText('ln q = a − λ × age')).toBeVisible()
    await expect(program.getByText('days = ln(q / edge) / λ')).toBeVisible()
    const found = await new AxeBuilder({ page: program })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'])
      .analyze()
    expect(found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`)).toEqual([])
  })
})
