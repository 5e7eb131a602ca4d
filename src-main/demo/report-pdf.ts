import { chromium } from '@playwright/test'
import { join } from 'node:path'
import { ok, type Outcome } from '#core/outcome'
import type { Site } from '#core/records/index'
import { version } from '../../package.json'
import { compose } from '../compose'
import { findBrowser } from '../launch/app-window'
import { startLocalHost } from '../local-host/server'
import { readManifest } from '../static-files/manifest'

export interface ReportRequest {
  readonly root: string
  /** an empty folder of its own */
  readonly dataFolder: string
  readonly siteName: string
}

const fits = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value
}

const log = (line: string): void => console.error(line)

/**
 * The service report of a demo site's newest visit as PDF: the built program on its local host, opened by a browser
 * without a window, printed with the page's own print layout. Null where no browser is installed.
 */
export async function reportPdf({ root, dataFolder, siteName }: ReportRequest): Promise<Buffer | null> {
  const browserPath = findBrowser(process.platform, process.env)
  if (browserPath === null) return null
  const program = fits(
    compose({
      dataFolder,
      assets: join(root, 'assets'),
      log,
      host: {
        describe: () => ({ kind: 'local-window', version, savesPdf: false, dataFolder }),
        savePdf: null,
      },
    }),
  )
  const manifest = readManifest(join(root, 'out', 'renderer'))
  const host = await startLocalHost({ dispatch: program.dispatch, files: () => manifest, log })
  const browser = await chromium.launch({
    executablePath: browserPath,
    args: ['--disable-gpu', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
  })
  try {
    const place = await newestVisit(program.dispatch, siteName)
    const page = await browser.newPage()
    await page.goto(host.startAddress())
    await page.getByRole('heading', { level: 1 }).first().waitFor()
    await page.goto(`${host.origin}/#/site/${place.siteId}/visit/${place.visitId}/report`)
    // its last page: the list shown before it names the site as well
    await page.getByRole('article', { name: 'For the file' }).getByText(siteName).first().waitFor()
    await page.evaluate('document.fonts.ready')
    return await page.pdf({ preferCSSPageSize: true, printBackground: true })
  } finally {
    await browser.close()
    await host.close()
    program.close()
  }
}

async function newestVisit(
  dispatch: (method: string, input: unknown) => Promise<Outcome<unknown>>,
  siteName: string,
): Promise<{ readonly siteId: string; readonly visitId: string }> {
  const { ids } = fits(await dispatch('demo.add', {})) as { readonly ids: readonly string[] }
  for (const id of ids) {
    const { site } = fits(await dispatch('site.open', { id })) as { readonly site: Site }
    const visitId = site.visits.at(-1)?.id
    if (site.name === siteName && visitId !== undefined) return { siteId: id, visitId }
  }
  return fits(ok({ siteId: ids[0] ?? '', visitId: '' }))
}
