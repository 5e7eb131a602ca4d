import type { Machine, Product, Pump, Site, WindowBasis } from '#core/records/index'

/** Something that is not entered yet, what it stands in the way of, and the box to enter it in. */
export interface Gap {
  readonly text: string
  readonly fieldId: string
}

export const fieldIds = {
  pump: (pump: Pick<Pump, 'id'>, part: 'product' | 'seconds' | 'target'): string => `pump-${pump.id}-${part}`,
  machine: (machine: Pick<Machine, 'id'>, part: 'racks' | 'rinse' | 'tank' | 'second-tank'): string =>
    `machine-${machine.id}-${part}`,
}

const NEEDS_WATER: ReadonlySet<WindowBasis> = new Set([
  'ppm-vv',
  'mg-per-L-product',
  'mg-per-L-active',
  'g-per-L-tank',
])
const NEEDS_DENSITY: ReadonlySet<WindowBasis> = new Set(['mg-per-L-product', 'g-per-L-tank'])

/** What a visit would miss, in the order of the page. Empty: everything a first visit needs is there. */
export function setupGaps(site: Site, products: readonly Product[]): readonly Gap[] {
  return site.machines.flatMap((machine) => [
    ...machineGaps(machine),
    ...machine.pumps.flatMap((pump) => pumpGaps(machine, pump, products)),
  ])
}

function machineGaps(machine: Machine): readonly Gap[] {
  const gaps: Gap[] = []
  const needsWater = machine.pumps.some((pump) => pump.window !== null && NEEDS_WATER.has(pump.window.basis))
  if (machine.rinse === null && needsWater)
    gaps.push({
      text: `${machine.name}: fresh rinse water per rack, without which no strength can be worked out`,
      fieldId: fieldIds.machine(machine, 'rinse'),
    })
  const { wash } = machine
  if (wash.kind === 'tank' && wash.upstream !== null && wash.upstream.volume === null)
    gaps.push({
      text: `${machine.name}: what the second tank holds, for its first charge and how long it takes to settle`,
      fieldId: fieldIds.machine(machine, 'second-tank'),
    })
  if (machine.racksPerDay === null)
    gaps.push({
      text: `${machine.name}: racks per day, for what it uses and costs`,
      fieldId: fieldIds.machine(machine, 'racks'),
    })
  return gaps
}

function pumpGaps(machine: Machine, pump: Pump, products: readonly Product[]): readonly Gap[] {
  const name = machine.pumps.length > 1 || machine.name === '' ? pump.name : `${machine.name}, ${pump.name}`
  const gaps: Gap[] = []
  const product = products.find((candidate) => candidate.id === pump.productId)
  if (product === undefined)
    gaps.push({ text: `${name}: which product it doses`, fieldId: fieldIds.pump(pump, 'product') })
  if (pump.doseSeconds === null)
    gaps.push({
      text: `${name}: how many seconds it runs per rack`,
      fieldId: fieldIds.pump(pump, 'seconds'),
    })
  if (pump.window === null)
    gaps.push({ text: `${name}: what the dose should be`, fieldId: fieldIds.pump(pump, 'target') })
  if (product !== undefined && pump.window !== null) {
    if (NEEDS_DENSITY.has(pump.window.basis) && product.density === null)
      gaps.push({
        text: `${name}: the density of ${product.name}`,
        fieldId: fieldIds.pump(pump, 'product'),
      })
    if (pump.window.basis === 'mg-per-L-active' && product.strength.kind === 'none')
      gaps.push({
        text: `${name}: the strength of ${product.name}`,
        fieldId: fieldIds.pump(pump, 'product'),
      })
  }
  return gaps
}
