import { expect, openDemoSite, test } from './support/program'
import { benchOf, countedRun, Hands, quickTime, watch } from './visit-hands'

test('a closed visit takes no entries, only a dated correction with its reason, which the report prints', async ({
  program,
}) => {
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Start a visit' }).click()
  const list = program.getByRole('navigation', { name: 'Parts of the visit' })
  await list.getByRole('button', { name: /Close the visit/u }).click()
  await program.getByRole('button', { name: 'Close visit and show the report' }).click()
  await program.getByRole('link', { name: 'Back to the visit' }).click()
  await expect(program.getByRole('heading', { name: /^Closed /u })).toBeVisible()

  await list.getByRole('button', { name: /Rinse aid pump/u }).click()
  await expect(watch(program)).toHaveCount(0)
  await list.getByRole('button', { name: /Before you adjust/u }).click()
  await expect(program.getByRole('radio')).toHaveCount(0)

  await list.getByRole('button', { name: /Closed/u }).click()
  await program.getByText('Add a correction', { exact: true }).click()
  const add = program.getByRole('button', { name: 'Add the correction' })
  await expect(add).toHaveAttribute('aria-disabled', 'true')
  await program.getByRole('textbox', { name: 'What is right' }).fill('The rack counter read 70412.')
  await program.getByRole('textbox', { name: 'Why it was wrong' }).fill('Written down a day later')
  await add.click()
  await program.getByRole('link', { name: 'Show the report' }).click()
  await expect(program.getByRole('article', { name: 'For the file' })).toContainText(
    'The rack counter read 70412. (Written down a day later)',
  )
})

test('a run is left out with a reason, which the series and the report show, and undo counts it again', async ({
  program,
}) => {
  await quickTime(program)
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Start a visit' }).click()
  await benchOf(program, /Rinse aid pump/u)
  await program.getByRole('button', { name: 'Line is primed' }).click()
  await program.getByRole('textbox', { name: /^Level before/u }).fill('10')
  await program.keyboard.press('Enter')
  for (const after of ['3.4', '3.4', '5']) await countedRun(new Hands(program, 'keys'), after)
  const runs = program.getByRole('region', { name: 'Runs of this series' })
  await expect(runs).toContainText('Run 3 does not fit the others')

  await program.getByRole('button', { name: 'Change run 3' }).click()
  await program.getByRole('button', { name: 'Level misread' }).click()
  await expect(runs).toContainText('left out: Level misread')
  await expect(runs).not.toContainText('does not fit')
  await program.getByRole('button', { name: /^Undo: Leave a run out/u }).click()
  await expect(runs).toContainText('Run 3 does not fit the others')
})

test('advice begun and not written leaves nothing on the report', async ({ program }) => {
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Start a visit' }).click()
  const list = program.getByRole('navigation', { name: 'Parts of the visit' })
  await list.getByRole('button', { name: /Close the visit/u }).click()
  await program.getByRole('button', { name: 'Add advice for the kitchen' }).click()
  await expect(program.getByRole('textbox', { name: 'Advice', exact: true })).toBeFocused()
  await program.keyboard.type('Descale on Fridays')
  await program.getByRole('button', { name: 'Add advice for the technician' }).click()
  await program.getByRole('button', { name: 'Close visit and show the report' }).click()
  const page = program.getByRole('article', { name: 'For the customer' })
  await expect(page).toContainText('Kitchen: Descale on Fridays')
  await expect(page).not.toContainText('Technician:')
})

test('a visit started by mistake is discarded, and undo brings it back', async ({ program }) => {
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.getByRole('button', { name: 'Start a visit' }).click()
  await program
    .getByRole('navigation', { name: 'Parts of the visit' })
    .getByRole('button', { name: /Close the visit/u })
    .click()
  await program.getByRole('button', { name: 'Discard this visit' }).click()
  await expect(program.getByRole('button', { name: 'Start a visit' })).toBeVisible()
  await program.getByRole('button', { name: /^Undo: Discard the visit/u }).click()
  await expect(program.getByRole('button', { name: 'Resume the visit' })).toBeVisible()
})
