import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { dropFolder, startHost } from './support/host'
import { addDemoSites, expect, test, watched } from './support/program'

type Spoil = (text: string) => Buffer | string

/** What disks, transfers, editors and strangers do to a file. */
const DAMAGE: readonly (readonly [string, Spoil])[] = [
  ['cut short', (text) => text.slice(0, text.length / 2)],
  ['emptied', () => ''],
  ['with one bit flipped', (text) => text.replace('"version"', '"versinn"')],
  ['saved in UTF-16', (text) => Buffer.from(text, 'utf16le')],
  ['saved in Latin-1', (text) => Buffer.from(text.replace('"name": "', '"name": "Café '), 'latin1')],
  ['replaced by foreign JSON', () => '{"hello": "world"}'],
  ['nested a hundred thousand deep', () => '['.repeat(100_000)],
  ['grown to 100 MB', () => Buffer.alloc(100_000_000, 32)],
  ['with an id twice', (text) => withSite(text, (site) => ({ ...site, machines: twice(site['machines']) }))],
  ['of version 0', (text) => text.replace(/"version": \d+/u, '"version": 0')],
  ['with a prototype name', (text) => text.replace('"site": {', '"site": {"__proto__": {"name": "x"}, ')],
  [
    'with a name of 10,000 letters',
    (text) => withSite(text, (site) => ({ ...site, name: 'x'.repeat(10_000) })),
  ],
]

type Group = Readonly<Record<string, unknown>>
const twice = (list: unknown): readonly unknown[] => (Array.isArray(list) ? [...list, ...list] : [])
const withSite = (text: string, change: (site: Group) => Group): string => {
  const file = JSON.parse(text) as { readonly site: Group }
  return JSON.stringify({ ...file, site: change(file.site) })
}

const rowOf = (page: Page, name: string) =>
  page.getByRole('listitem').filter({ hasText: `${name} cannot be read` })

test('each kind of damage to a site’s file is said in words, kept aside, and stops no other site', async ({
  browser,
}) => {
  const first = await startHost()
  const { dataFolder } = first
  const page = await browser.newPage()
  page.setDefaultTimeout(30_000)
  await page.goto(await first.address())
  await addDemoSites(page)
  await first.stop()
  const sites = readdirSync(join(dataFolder, 'sites'))
    .filter((file) => /^[\da-f-]{36}\.json$/u.test(file))
    .map((file) => {
      const path = join(dataFolder, 'sites', file)
      const whole = readFileSync(path, 'utf8')
      return { path, whole, name: (JSON.parse(whole) as { site: { name: string } }).site.name }
    })
  const [unharmed, ...victims] = sites
  if (unharmed === undefined || victims.length < 4) throw new Error('too few demo sites')

  for (let from = 0; from < DAMAGE.length; from += 4) {
    const round = DAMAGE.slice(from, from + 4).map(([how, spoil], index) => {
      const victim = victims[index] ?? unharmed
      const spoilt = Buffer.from(spoil(victim.whole))
      writeFileSync(victim.path, spoilt)
      return { how, victim, spoilt }
    })
    const host = await startHost(dataFolder)
    const wrongs = from === 0 ? await watched(page, host.origin) : []
    await page.goto(await host.address())
    for (const { how, victim, spoilt } of round) {
      const row = rowOf(page, victim.name)
      await expect(row, how).toContainText('its file is damaged')
      await expect(row, how).toContainText('The last good version is from')
      const kept = /damaged\/\S+\.json/u.exec((await row.textContent()) ?? '')?.[0] ?? 'none'
      expect(readFileSync(join(dataFolder, kept)).equals(spoilt), how).toBe(true)
    }
    await page.getByRole('link', { name: unharmed.name }).click()
    await expect(page.getByRole('heading', { level: 1, name: unharmed.name })).toBeVisible()
    await page.getByRole('link', { name: 'Sites', exact: true }).click()
    for (const { how, victim } of round) {
      await rowOf(page, victim.name)
        .getByRole('button', { name: /^Bring back the version of/u })
        .click()
      await expect(page.getByRole('link', { name: victim.name }), how).toBeVisible()
      expect(readFileSync(victim.path, 'utf8'), how).toBe(victim.whole)
    }
    expect(wrongs).toEqual([])
    await host.stop()
  }
  expect(readdirSync(join(dataFolder, 'damaged')).length).toBe(DAMAGE.length)
  await page.close()
  dropFolder(dataFolder)
})

test('a newer file is left unchanged and said to be newer; a damaged one without any copy can leave the list', async ({
  browser,
}) => {
  const first = await startHost()
  const { dataFolder } = first
  const page = await browser.newPage()
  page.setDefaultTimeout(30_000)
  await page.goto(await first.address())
  await addDemoSites(page)
  await first.stop()
  const [newer = '', lost = ''] = readdirSync(join(dataFolder, 'sites')).filter((file) =>
    /^[\da-f-]{36}\.json$/u.test(file),
  )
  const text = readFileSync(join(dataFolder, 'sites', newer), 'utf8').replace(
    /"version": \d+/u,
    '"version": 99',
  )
  writeFileSync(join(dataFolder, 'sites', newer), text)
  writeFileSync(join(dataFolder, 'sites', lost), 'x')
  writeFileSync(join(dataFolder, 'sites', lost.replace('.json', '.last-good.json')), 'y')
  const host = await startHost(dataFolder)
  await page.goto(await host.address())
  await expect(page.getByText('written by a newer version of this program (format 99)')).toBeVisible()
  const row = rowOf(page, 'A site')
  await expect(row).toContainText('No earlier version was found')
  await row.getByRole('button', { name: 'Take it off the list' }).click()
  await expect(row).toHaveCount(0)
  expect(readFileSync(join(dataFolder, 'sites', newer), 'utf8')).toBe(text)
  expect(
    readdirSync(join(dataFolder, 'damaged')).map((file) =>
      readFileSync(join(dataFolder, 'damaged', file), 'utf8'),
    ),
  ).toEqual(['x'])
  await page.close()
  await host.stop()
  dropFolder(dataFolder)
})

test('a damaged or hostile file is refused in words when it is imported, and nothing comes in', async ({
  program: page,
  host,
}) => {
  const whole = readFileSync(new URL('../fixtures/documents/site-v2-full.json', import.meta.url), 'utf8')
  const before = readdirSync(join(host.dataFolder, 'sites'))
  const newer: (readonly [string, Spoil])[] = [
    ['of a newer version', (text) => text.replace('"version": 2', '"version": 99')],
  ]
  for (const [how, spoil] of [...DAMAGE, ...newer]) {
    await page.locator('#site-file').setInputFiles({
      name: 'site.json',
      mimeType: 'application/json',
      buffer: Buffer.from(spoil(whole)).subarray(0, 25_000_000),
    })
    const alert = page.getByRole('alert').filter({ hasText: 'site.json:' })
    await expect(alert, how).toContainText(/site\.json: [A-Z"].{20,}\./u)
    await expect(alert, how).not.toContainText(/undefined|null|\[object|at :/u)
    await alert.getByRole('button', { name: 'Close' }).click()
    await expect(alert, how).toHaveCount(0)
  }
  expect(readdirSync(join(host.dataFolder, 'sites'))).toEqual(before)
})

test('hostile names are shown as the text they are, and a file saved under one stays where it belongs', async ({
  program: page,
}) => {
  const whole = readFileSync(new URL('../fixtures/documents/site-v2-full.json', import.meta.url), 'utf8')
  const names = ['../../etc/passwd', 'CON', '\u202Etxt.exe', '😀 <img src=x onerror=alert(1)>', '__proto__']
  for (const [index, name] of names.entries()) {
    const text = withSite(whole, (site) => ({
      ...site,
      id: `aaaaaaaa-0000-4000-8000-00000000000${index}`,
      name,
    }))
    await page.locator('#site-file').setInputFiles({
      name: 'site.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    })
    await expect(page.getByRole('link', { name, exact: true })).toBeVisible()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: `Save ${name} as a file`, exact: true }).click()
    expect((await download).suggestedFilename()).toMatch(/^[^\\/:\u202E<>]+\.dosewright\.json$/u)
  }
  await expect(page.locator('img[src=x]')).toHaveCount(0)
})
