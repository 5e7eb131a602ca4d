import { readFile, writeFile } from 'node:fs/promises'
import { randomUUID } from 'node:crypto'
import { expect, openDemoSite, test } from './support/program'
import { benchOf, countedRun, Hands, quickTime, type QuickWindow } from './visit-hands'

interface SiteFile {
  site: { id: string; name: string; visits: { id: string; startedAt: string; work: unknown }[] }
}

/** The demo site with forty visits: its own, and older copies of them. */
async function fortyVisits(): Promise<SiteFile> {
  const file = new URL('../../assets/demo/lantern-lane-cafe.json', import.meta.url)
  const read = JSON.parse(await readFile(file, 'utf8')) as SiteFile
  const own = read.site.visits
  const visits = Array.from({ length: 40 }, (_, i) => {
    const visit = own[i % own.length]
    const text = JSON.stringify(visit).replaceAll(/"id":"[0-9a-f-]{36}"/gu, () => `"id":"${randomUUID()}"`)
    const copy = JSON.parse(text) as SiteFile['site']['visits'][number]
    return { ...copy, startedAt: new Date(Date.UTC(2020, i, 5, 9)).toISOString() }
  })
  return { ...read, site: { ...read.site, id: randomUUID(), name: 'Forty Visits Cafe', visits } }
}

test('a result follows every key with forty visits behind it, and the time it takes is printed', async ({
  program,
}, info) => {
  const path = info.outputPath('forty.json')
  await writeFile(path, JSON.stringify(await fortyVisits()))
  await quickTime(program)
  await openDemoSite(program, 'Lantern Lane Cafe')
  await program.goto(`${new URL(program.url()).origin}/#/`)
  const chooser = program.waitForEvent('filechooser')
  await program
    .getByRole('button', { name: /^Import/u })
    .first()
    .click()
  await (await chooser).setFiles(path)
  await program.getByRole('link', { name: 'Forty Visits Cafe' }).click()
  await program.getByRole('button', { name: 'Start a visit' }).click()
  await benchOf(program, /Rinse aid pump/u)
  await program.getByRole('button', { name: 'Line is primed' }).click()
  await program.getByRole('textbox', { name: /^Level before/u }).fill('10')
  await program.keyboard.press('Enter')
  for (const after of ['3.4', '3.3']) await countedRun(new Hands(program, 'keys'), after)
  await program.evaluate(() => {
    const w = globalThis as unknown as QuickWindow & { frames: number[] }
    w.frames = []
    addEventListener(
      'input',
      () => {
        const start = w.realNow()
        // the screen is redrawn in the frame that follows; what runs after it sees it done
        requestAnimationFrame(() => {
          const channel = new MessageChannel()
          channel.port1.addEventListener('message', () => w.frames.push(w.realNow() - start))
          channel.port1.start()
          channel.port2.postMessage(0)
        })
      },
      true,
    )
  })
  const end = program.getByRole('textbox', { name: /^Level after/u })
  await end.focus()
  for (let i = 0; i < 12; i += 1) {
    await program.keyboard.type('3.4')
    for (let back = 0; back < 3; back += 1) await program.keyboard.press('Backspace')
  }
  const painted = (): Promise<number[]> =>
    program.evaluate(() => (globalThis as unknown as { frames: number[] }).frames)
  // a time is never a verdict: it depends on the machine. That every key was answered is one
  await expect.poll(async () => (await painted()).length).toBe(72)
  const frames = await painted()
  const median = frames.toSorted((a, b) => a - b)[Math.floor(frames.length / 2)] ?? Number.NaN
  console.log(`key to result: median ${median.toFixed(1)} ms over ${frames.length} keys`)
})
