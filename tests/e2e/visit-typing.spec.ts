import { expect, openDemoSite, test } from './support/program'
import { benchOf, countedRun, Hands, quickTime } from './visit-hands'

interface Seen {
  added: number
  outside: string[]
  moving: number
}

test('a key in a reading changes the figures that follow from it, at once, and nothing else of the page', async ({
  program,
}) => {
  await quickTime(program)
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Start a visit' }).click()
  await benchOf(program, /Rinse aid pump/u)
  await program.getByRole('button', { name: 'Line is primed' }).click()
  await program.getByRole('textbox', { name: /^Level before/u }).fill('10')
  await program.keyboard.press('Enter')
  for (const after of ['3.4', '3.3']) await countedRun(new Hands(program, 'keys'), after)
  await program.getByRole('button', { name: 'Change run 2' }).click()
  const level = program.getByRole('textbox', { name: /^Level after/u }).last()
  await level.focus()
  await program.keyboard.press('End')
  await program.keyboard.type('1')
  const flow = program.locator('td.flow').last()
  const before = (await flow.textContent()) ?? ''
  expect(before).toMatch(/^\d/u)
  const size = await program.locator('.bench *').count()

  // what a button under the mouse still fades in is none of the key's doing
  await expect
    .poll(() =>
      program.evaluate(
        () => document.getAnimations().filter(({ playState }) => playState === 'running').length,
      ),
    )
    .toBe(0)
  await program.evaluate(() => {
    const seen: Seen = { added: 0, outside: [], moving: 0 }
    ;(globalThis as unknown as { seen: Seen }).seen = seen
    new MutationObserver((changes) => {
      for (const { target, addedNodes } of changes) {
        seen.added += [...addedNodes].filter((node) => node instanceof Element).length
        const place = target instanceof Element ? target : target.parentElement
        // the mark that says "saved", and the title of the window, tell of the edit as such
        const own = place?.closest('main, title, [role="status"], header') ?? null
        if (own === null) seen.outside.push(place?.outerHTML.slice(0, 200) ?? 'gone')
      }
      seen.moving += document.getAnimations().filter(({ playState }) => playState === 'running').length
    }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true })
  })
  await program.keyboard.press('Backspace')
  await program.keyboard.type('2')
  await expect(flow).not.toHaveText(before)
  await expect(flow).toHaveText(/^\d/u)
  const seen = await program.evaluate(() => (globalThis as unknown as { seen: Seen }).seen)
  // no figure glides to where it belongs: it is there in the frame of the key
  expect(seen.moving).toBe(0)
  expect(seen.outside).toEqual([])
  // lines of words may be exchanged; cards, tables and pictures are not made anew
  expect(size).toBeGreaterThan(200)
  expect(seen.added).toBeLessThan(20)
})
