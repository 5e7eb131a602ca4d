import { linkSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { encode } from '#core/documents/encode'
import type { SiteFile } from '#core/documents/site-schema'
import { addDays } from '#core/units/days'
import { entry } from '#core/units/entry'
import { seededRandom } from '../support/seeded-random'
import { bigSite } from './big-site'

/** Sites of one kind share readings; names, money, racks, stock and dates differ from site to site. */
const KINDS = 25
const VISITS = 24

const TOWNS = [
  'Ashcombe',
  'Brackwater',
  'Calder Row',
  'Dunmere',
  'Eastfold',
  'Fernley',
  'Grantwick',
  'Hollin',
]
const PLACES = ['Canteen', 'Diner', 'Hotel', 'School kitchen', 'Bistro', 'Hospital kitchen', 'Cafe']

/** Writes a data folder of `count` varied sites, each of 24 visits, with the library they share. */
export function writeManySites(root: string, count: number): void {
  for (const folder of ['sites', 'library']) mkdirSync(join(root, folder), { recursive: true, mode: 0o700 })
  const kinds = Array.from({ length: KINDS }, (_, kind) => bigSite(VISITS, 3, kind + 1))
  const products = kinds.flatMap((kind, at) =>
    kind.products.map((product) => ({
      ...product,
      name: `${product.name} ${at + 1}`,
      leadTimeDays: String(2 + (at % 9)),
    })),
  )
  const library = join(root, 'library')
  writeFileSync(
    join(library, 'products.json'),
    encode('products', { format: 'dosewright-products', version: 1, products }),
  )
  writeFileSync(
    join(library, 'instruments.json'),
    encode('instruments', {
      format: 'dosewright-instruments',
      version: 1,
      instruments: kinds.flatMap((kind) => kind.instruments),
    }),
  )
  for (let number = 0; number < count; number += 1) {
    const kind = kinds[number % KINDS]
    if (kind === undefined) continue
    const file = varied(kind, number)
    const path = join(root, 'sites', file.site.id)
    writeFileSync(`${path}.json`, encode('site', { ...file, products: [], instruments: [] }), { mode: 0o600 })
    linkSync(`${path}.json`, `${path}.last-good.json`)
  }
}

export const idOf = (number: number): string =>
  `10000000-0000-4000-8000-${number.toString(16).padStart(12, '0')}`

function varied(kind: SiteFile, number: number): SiteFile {
  const random = seededRandom(number + 1)
  const pick = <T>(of: readonly T[]): T | undefined => of[Math.floor(random.uniform() * of.length)]
  const { site } = kind
  const counted = addDays('2026-09-01', Math.floor(random.uniform() * 80))
  return {
    ...kind,
    site: {
      ...site,
      id: idOf(number),
      name: `${pick(TOWNS)} ${pick(PLACES)} ${number + 1}`,
      currency: pick(['EUR', 'EUR', 'EUR', 'GBP', 'USD']) ?? 'EUR',
      machines: site.machines.map((machine) => ({
        ...machine,
        racksPerDay: String(20 + Math.floor(random.uniform() * 300)),
      })),
      stock: kind.products.map((product, at) => ({
        kind: 'count',
        id: `20000000-0000-4000-8000-${(number * 8 + at).toString(16).padStart(12, '0')}`,
        on: counted,
        productId: product.id,
        fullContainers: String(Math.floor(random.uniform() * 8)),
        containerSize: entry('5', 'L'),
        part: null,
        tare: null,
        reference: '',
        visitId: null,
      })),
    },
  }
}
