import type { Machine, Product, Pump, Site, WindowBasis } from '#core/records/index'
import { feedsATank } from '#core/dose/feeds-a-tank'
import { heldByProbe } from '#core/dose/held-by-probe'
import { usualBasis } from '../../commands/setup/window-around'

/** Something that is not entered yet, what is not shown without it, and the box to enter it in. */
export interface Gap {
  readonly text: string
  /** as it follows "without it" */
  readonly without: string
  readonly fieldId: string
  /** the product whose own page holds the box; null: the box is on the set-up */
  readonly productId: string | null
  /** a dose cannot be judged without it, or only use and money */
  readonly for: 'dose' | 'cost'
}

export const fieldIds = {
  pump: (pump: Pick<Pump, 'id'>, part: 'product' | 'seconds' | 'target'): string => `pump-${pump.id}-${part}`,
  machine: (machine: Pick<Machine, 'id'>, part: 'racks' | 'rinse' | 'tank' | 'second-tank'): string =>
    `machine-${machine.id}-${part}`,
  product: (product: Pick<Product, 'id'>, part: 'density' | 'strength' | 'price'): string =>
    `product-${product.id}-${part}`,
}

const NEEDS_DENSITY: ReadonlySet<WindowBasis> = new Set(['mg-per-L-product', 'g-per-L-tank'])
/** Pumps a rep expects a strength of, whatever their window is in: in the rinse, or in the tank. */
const EXPECTS_STRENGTH: ReadonlySet<Pump['role']> = new Set(['rinse-aid', 'detergent', 'sanitizer'])

/** What a visit would miss, in the order of the page, then what the costs would. Empty: everything is there. */
export function setupGaps(site: Site, products: readonly Product[]): readonly Gap[] {
  const dosed = products.filter((product) =>
    site.machines.some((machine) => machine.pumps.some((pump) => pump.productId === product.id)),
  )
  const gaps = [
    ...site.machines.flatMap((machine) => [
      ...machineGaps(machine),
      ...machine.pumps.flatMap((pump) => pumpGaps(machine, pump, products)),
    ]),
    ...dosed.flatMap(priceGap),
  ]
  // one product in two pumps is asked for once
  return gaps.filter((gap, i) => gaps.findIndex((one) => one.fieldId === gap.fieldId) === i)
}

function machineGaps(machine: Machine): readonly Gap[] {
  const { wash, pumps } = machine
  const gap = (text: string, without: string, part: Parameters<typeof fieldIds.machine>[1]): Gap => ({
    text: `${machine.name}: ${text}`,
    without,
    fieldId: fieldIds.machine(machine, part),
    productId: null,
    for: part === 'racks' ? 'cost' : 'dose',
  })
  const gaps: Gap[] = []
  const tankFed = pumps.some(feedsATank)
  if (machine.rinse === null && pumps.some((pump) => EXPECTS_STRENGTH.has(pump.role)))
    gaps.push(
      gap(
        'fresh rinse water per rack',
        tankFed ? 'no strength in the rinse, nor in the tank' : 'no strength in the rinse',
        'rinse',
      ),
    )
  if (tankFed && wash.kind === 'tank' && wash.volume === null)
    gaps.push(
      gap('what the wash tank holds', 'no initial charge, and no racks to wait before a tank test', 'tank'),
    )
  if (tankFed && wash.kind === 'dump-and-refill' && wash.heel === null)
    gaps.push(gap('what stays in the sump', 'no course of the strength from rack to rack', 'tank'))
  if (wash.kind === 'tank' && wash.upstream !== null && wash.upstream.volume === null)
    gaps.push(
      gap(
        'what the second tank holds',
        'not its first charge, nor how long it takes to settle',
        'second-tank',
      ),
    )
  if (machine.racksPerDay === null)
    gaps.push(gap('racks per day', 'no month’s use, no cost, no day to order', 'racks'))
  return gaps
}

function pumpGaps(machine: Machine, pump: Pump, products: readonly Product[]): readonly Gap[] {
  const name = machine.pumps.length > 1 || machine.name === '' ? pump.name : `${machine.name}, ${pump.name}`
  const gaps: Gap[] = []
  const product = products.find((candidate) => candidate.id === pump.productId)
  const add = (text: string, without: string, part: Parameters<typeof fieldIds.pump>[1]): void => {
    const fieldId = fieldIds.pump(pump, part)
    gaps.push({ text: `${name}: ${text}`, without, fieldId, productId: null, for: 'dose' })
  }
  if (product === undefined)
    add('which product it doses', 'no cautions for it, no strength, no cost', 'product')
  if (pump.doseSeconds === null && !heldByProbe(pump))
    add('how many seconds it runs per rack', 'no dose, only a flow', 'seconds')
  if (pump.window === null)
    add('what the dose should be', 'nothing to judge the dose by, and no turn', 'target')
  return product === undefined ? gaps : [...gaps, ...productGaps(name, pump, product)]
}

/** What the product lacks for the basis its pump is judged in; for the usual one of its role while none is chosen. */
function productGaps(name: string, pump: Pump, product: Product): readonly Gap[] {
  const basis = pump.window?.basis ?? usualBasis(pump.role)
  const gap = (part: 'density' | 'strength', without: string): Gap => ({
    text: `${name}: the ${part} of ${product.name}`,
    without,
    fieldId: fieldIds.product(product, part),
    productId: product.id,
    for: 'dose',
  })
  return [
    ...(NEEDS_DENSITY.has(basis) && product.density === null
      ? [gap('density', basis === 'g-per-L-tank' ? 'no g/L in the tank' : 'no mg/L of product')]
      : []),
    ...(basis === 'mg-per-L-active' && product.strength.kind === 'none'
      ? [gap('strength', 'no mg/L of active substance')]
      : []),
  ]
}

const priceGap = (product: Product): readonly Gap[] =>
  product.prices.length > 0
    ? []
    : [
        {
          text: `${product.name}: its price and container size`,
          without: 'no cost, no containers to order',
          fieldId: fieldIds.product(product, 'price'),
          productId: product.id,
          for: 'cost',
        },
      ]
