import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { encode } from '#core/documents/encode'
import type { Site } from '#core/records/index'
import { caught, run, uuid, visit, work } from '../support/make-site'
import { entry } from '#core/units/entry'
import { bigSite } from './big-site'

export interface BenchFolder {
  readonly siteId: string
  readonly visitId: string
}

/** A data folder with one site of 120 closed visits and one begun, in which a first series has two runs. */
export function writeBenchSite(root: string): BenchFolder {
  const file = bigSite(120, 5)
  const pumps = file.site.machines.flatMap((machine) => machine.pumps)
  const at = new Date().toISOString()
  const open = visit({
    id: uuid(),
    startedAt: at,
    closing: null,
    setupId: null,
    work: pumps.slice(0, 1).map((pump) =>
      work(pump.id, [
        caught([run(entry('5.02', 'mL')), run(entry('5.07', 'mL'))], {
          at,
          instrumentId: file.instruments[0]?.id ?? null,
        }),
      ]),
    ),
  })
  const site: Site = { ...file.site, name: 'Long history', visits: [...file.site.visits, open] }
  for (const folder of ['sites', 'library']) mkdirSync(join(root, folder), { recursive: true, mode: 0o700 })
  const write = (name: string, text: string): void => writeFileSync(join(root, name), text)
  write(join('sites', `${site.id}.json`), encode('site', { ...file, site, products: [], instruments: [] }))
  write(
    join('library', 'products.json'),
    encode('products', { format: 'dosewright-products', version: 1, products: file.products }),
  )
  write(
    join('library', 'instruments.json'),
    encode('instruments', { format: 'dosewright-instruments', version: 1, instruments: file.instruments }),
  )
  return { siteId: site.id, visitId: open.id }
}
