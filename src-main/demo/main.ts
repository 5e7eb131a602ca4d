import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { DEFAULT_SETTINGS } from '#core/documents/default-settings'
import { decode } from '#core/documents/decode'
import { shiftDays } from '#core/documents/shift-days'
import { lastVisitAt } from '#core/documents/summarize-site'
import { sentence } from '#core/messages/sentence'
import { daysBetween } from '#core/units/days'
import { computeWorksheet } from '#core/worksheet/compute'
import { spendOf } from '#core/worksheet/spend-of'
import { worksheetText } from '../worksheet/text'
import { reportPdf } from './report-pdf'

/**
 * `npm run demo [-- --to FOLDER]`: the main job without a screen. Works every demo site out and prints the month; writes
 * each worksheet as text, and the service report of the newest visit as PDF, exactly as the program prints it.
 */
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..')
const { values } = parseArgs({ options: { to: { type: 'string', default: join(root, 'out', 'demo') } } })
const target = values.to
const today = new Date().toISOString().slice(0, 10)

mkdirSync(target, { recursive: true })
const folder = join(root, 'assets', 'demo')
for (const name of readdirSync(folder).filter((file) => file.endsWith('.json'))) {
  const decoded = decode('site', readFileSync(join(folder, name), 'utf8'))
  if (!decoded.ok) {
    console.error(`${name}: ${sentence(decoded.problem)}`)
    process.exit(2)
  }
  const file = decoded.value.document
  const last = lastVisitAt(file.site)
  const moved = shiftDays(file, last === null ? 0 : daysBetween(last, today) - 3)
  const worksheet = computeWorksheet({ ...moved, settings: null, asOf: today })
  const spend = spendOf(worksheet, { ...moved, settings: DEFAULT_SETTINGS })
  const text = worksheetText(worksheet, { ...moved, spend })
  writeFileSync(join(target, name.replace(/\.json$/u, '.txt')), text)
  console.log(`${text}\n`)
}

const data = mkdtempSync(join(tmpdir(), 'dosewright-demo-'))
try {
  const pdf = await reportPdf({ root, dataFolder: data, siteName: 'Harbourview Hotel bar' })
  if (pdf === null) console.log('No Chromium-family browser is installed here: the report was not made.')
  else {
    writeFileSync(join(target, 'service-report.pdf'), pdf)
    console.log(`Service report: ${join(target, 'service-report.pdf')}`)
  }
} finally {
  rmSync(data, { recursive: true, force: true })
}
