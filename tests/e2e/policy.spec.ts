import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { parseRoute, type Screen } from '#renderer/state/route.ts'
import { rest } from './conventions/walk'
import { startHost } from './support/host'
import { addDemoSites, expect, test, watched } from './support/program'

const SITE = '11111111-1111-4111-8111-111111111111'
const VISIT = '22222222-2222-4222-8222-222222222222'

/** An address for every screen there is: one that is added and not listed here does not compile. */
const ADDRESSES = {
  sites: '#/',
  site: `#/site/${SITE}`,
  visit: `#/site/${SITE}/visit/${VISIT}`,
  report: `#/site/${SITE}/visit/${VISIT}/report`,
  trend: `#/site/${SITE}/trend`,
  spend: `#/site/${SITE}/spend`,
  setup: `#/site/${SITE}/setup`,
  glass: `#/site/${SITE}/glass`,
  kitchen: `#/site/${SITE}/kitchen`,
  portfolio: '#/portfolio',
  products: '#/products',
  instruments: '#/instruments',
  settings: '#/settings',
  nowhere: '#/no/such/place',
} as const satisfies Readonly<Record<Screen, string>>

const built = fileURLToPath(new URL('../../out/renderer/assets', import.meta.url))
const screenFiles = (): readonly string[] =>
  readdirSync(built).filter((name) => /^[A-Z]\w*Screen-[\w-]+\.js$/u.test(name))

/** Everything folded is opened, so that what it holds is drawn, too. */
const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true
  })
const linksOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('a[href], area[href], form[action], iframe, object, embed')]
      .map((node) => node.getAttribute('href') ?? node.getAttribute('action') ?? node.tagName)
      .filter((to) => !to.startsWith('#')),
  )

async function come(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to
  }, hash)
  await expect(page.locator('main h1').first()).toBeVisible()
  await rest(page)
  await unfold(page)
  await rest(page)
}

test('the watch over the policy sees what breaks it, and the policy holds: nothing inline, nothing from elsewhere, no eval', async ({
  page,
}) => {
  const host = await startHost()
  const wrongs = await watched(page, host.origin)
  await page.goto(await host.address())
  await page.getByRole('button', { name: /demo sites/iu }).waitFor()
  const outcome = await page.evaluate(async () => {
    // eslint-disable-next-line unicorn/consistent-function-scoping -- runs in the page, which knows nothing of this file
    const add = <K extends keyof HTMLElementTagNameMap>(
      name: K,
      set: (node: HTMLElementTagNameMap[K]) => void,
    ) => {
      const node = document.createElement(name)
      set(node)
      document.body.append(node)
      return node
    }
    add('script', (node) => (node.textContent = 'globalThis.inlineRan = true'))
    const styled = add('p', (node) => node.setAttribute('style', 'margin-left: 77px'))
    add('style', (node) => (node.textContent = 'body { margin-top: 77px }'))
    add('img', (node) => (node.src = 'http://picture.example/x.png'))
    add('iframe', (node) => (node.src = 'http://frame.example/'))
    add('object', (node) => (node.data = 'http://object.example/'))
    const called = await fetch('http://call.example/').then(
      () => 'reached',
      () => 'stopped',
    )
    // later, since what the test itself sends may be evaluated
    const evaluated = await new Promise<string>((resolve) => {
      setTimeout(() => {
        try {
          // eslint-disable-next-line no-new-func -- whether it may is the question
          resolve(String(new Function('return "ran"')()))
        } catch {
          resolve('stopped')
        }
      }, 10)
    })
    const form = add('form', (node) => {
      node.action = 'http://form.example/'
      node.method = 'post'
    })
    form.submit()
    return {
      inline: 'inlineRan' in globalThis,
      margin: [getComputedStyle(styled).marginLeft, getComputedStyle(document.body).marginTop].includes(
        '77px',
      ),
      called,
      evaluated,
      there: location.host,
    }
  })
  expect(outcome).toEqual({
    inline: false,
    margin: false,
    called: 'stopped',
    evaluated: 'stopped',
    there: new URL(host.origin).host,
  })
  for (const directive of [
    'script-src-elem inline',
    'style-src-attr inline',
    'style-src-elem inline',
    'img-src http://picture.example',
    'frame-src http://frame.example',
    'object-src http://object.example',
    'connect-src http://call.example',
    'script-src eval',
    'form-action http://form.example',
  ])
    await expect.soft.poll(() => wrongs.join('\n')).toContain(`broke the content policy: ${directive}`)
  await host.stop()
})

test('no other page can show this one in a frame', async ({ page }) => {
  const host = await startHost()
  await page.route('http://other.example/', (route) =>
    route.fulfill({ contentType: 'text/html', body: `<iframe src="${host.origin}/"></iframe>` }),
  )
  await page.goto('http://other.example/')
  await page.waitForTimeout(500)
  const [, frame] = page.frames()
  expect(await frame?.evaluate(() => document.body.textContent).catch(() => '')).not.toContain('Dosewright')
  await host.stop()
})

for (const colours of ['light', 'dark'] as const)
  test(`every screen of every demo site, all folds open, on screen and on paper, breaks no rule of the policy, asks nobody else and links nowhere else (${colours})`, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme: colours })
    const host = await startHost()
    const wrongs = await watched(page, host.origin)
    const fetched = new Set<string>()
    page.on('request', (request) => fetched.add(request.url().split('/').at(-1) ?? ''))
    await page.goto(await host.address())
    await addDemoSites(page)
    const sites = page.locator('main a[href^="#/site/"]')
    const ids = [
      ...new Set(
        (await sites.evaluateAll((links) => links.map((link) => link.getAttribute('href') ?? ''))).map(
          (href) => href.split('/')[2] ?? '',
        ),
      ),
    ]
    expect(ids.length).toBeGreaterThan(3)

    const seen = new Set<Screen>()
    const visit = async (hash: string): Promise<void> => {
      await come(page, hash)
      seen.add(parseRoute(hash).screen)
      for (const link of await linksOut(page)) wrongs.push(`${hash} links to ${link}`)
    }
    for (const [screen, address] of Object.entries(ADDRESSES)) {
      expect(parseRoute(address).screen).toBe(screen)
      if (!address.includes(SITE)) await visit(address)
      else
        for (const id of colours === 'light' || screen === 'site' ? ids : ids.slice(0, 1)) {
          await come(page, `#/site/${id}`)
          const link = await page.locator(`main a[href^="#/site/${id}/visit/"]`).first().getAttribute('href')
          await visit(address.replace(SITE, id).replace(VISIT, link?.split('/')[4] ?? ''))
          if (screen !== 'report') continue
          await page.emulateMedia({ media: 'print' })
          await rest(page)
          await page.emulateMedia({ media: null })
        }
    }
    expect([...seen].toSorted()).toEqual(Object.keys(ADDRESSES).toSorted())
    // each screen is a file of its own: none was left out
    expect(screenFiles().length).toBe(Object.keys(ADDRESSES).length - 1)
    expect(screenFiles().filter((name) => !fetched.has(name))).toEqual([])
    expect(wrongs).toEqual([])
    await host.stop()
  })

test('the closed door of a page without a code, and a page whose program has gone, break no rule either', async ({
  page,
}) => {
  const host = await startHost()
  const wrongs = await watched(page, host.origin)
  await page.goto(`${host.origin}/`)
  await expect(page.locator('h1').first()).toBeVisible()
  await page.goto(await host.address())
  await page.reload()
  await page.getByRole('button', { name: /demo sites/iu }).waitFor()
  await host.kill()
  await page.getByRole('button', { name: /demo sites/iu }).click()
  await expect(page.getByRole('alert').first()).toBeVisible()
  expect(wrongs.filter((wrong) => !wrong.startsWith('threw '))).toEqual([])
})
