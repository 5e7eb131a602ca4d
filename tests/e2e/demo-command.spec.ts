import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from '@playwright/test'
import { PDFParse } from 'pdf-parse'
import { dropFolder, newDataFolder } from './support/host'

const root = fileURLToPath(new URL('../..', import.meta.url))

test('the demo command does the main job without a screen, down to the service report as PDF', async () => {
  const folder = newDataFolder()
  const run = spawnSync(process.execPath, [join(root, 'out/main/demo.js'), '--to', folder], {
    cwd: root,
    encoding: 'utf8',
  })
  expect(run.status, run.stderr).toBe(0)
  expect(readdirSync(folder).filter((name) => name.endsWith('.txt'))).toHaveLength(5)
  expect(run.stdout).toContain('All together')

  const parser = new PDFParse({ data: readFileSync(join(folder, 'service-report.pdf')) })
  const { pages, text } = await parser.getText()
  await parser.destroy()
  expect(pages).toHaveLength(2)
  for (const words of [
    'Service report',
    'Harbourview Hotel bar',
    'Rinse aid pump',
    'Detergent pump',
    'ppm v/v product',
    '±',
    'For the customer',
    'For the file',
    'in an average month',
    'certifies nothing',
  ])
    expect(text).toContain(words)
  dropFolder(folder)
})
