import type { Id, Machine, MachineClass, Product, ProductRole, Site } from '#core/records/index'
import { newMachine } from './machines'
import { newPump } from './pumps'

const CLASS_NAMES: Readonly<Record<MachineClass, string>> = {
  undercounter: 'Undercounter machine',
  door: 'Door-type machine',
  'conveyor-single-tank': 'Single-tank conveyor',
  'conveyor-multi-tank': 'Multi-tank conveyor',
}

const PUMP_NAMES: Readonly<Record<ProductRole, string>> = {
  'rinse-aid': 'Rinse aid',
  detergent: 'Detergent',
  sanitizer: 'Sanitizer',
  delimer: 'Delimer',
  other: 'Other product',
}

export const machineClassName = (kind: MachineClass): string => CLASS_NAMES[kind]
export const roleName = (role: ProductRole): string => PUMP_NAMES[role]

/** The pumps such a machine usually has. Common practice, no source. */
export const usualRoles = (sanitizing: Machine['sanitizing']): readonly ProductRole[] =>
  sanitizing === 'chemical' ? ['rinse-aid', 'detergent', 'sanitizer'] : ['rinse-aid', 'detergent']

/** A name nobody on the site has yet: "Rinse aid", "Rinse aid 2". */
export function freeName(wanted: string, taken: readonly string[]): string {
  if (!taken.includes(wanted)) return wanted
  let number = 2
  while (taken.includes(`${wanted} ${number}`)) number += 1
  return `${wanted} ${number}`
}

/**
 * A machine with its usual pumps, to be filled in. A pump gets its product when the library holds exactly one of its
 * role; nothing is guessed otherwise.
 */
export function addUsualMachine(
  site: Site,
  input: { readonly class: MachineClass; readonly sanitizing: Machine['sanitizing'] },
  products: readonly Product[],
  nextId: () => Id,
): Site {
  const name = freeName(
    machineClassName(input.class),
    site.machines.map((machine) => machine.name),
  )
  const machine = newMachine({ id: nextId(), name, ...input })
  const pumps = usualRoles(input.sanitizing).map((role) =>
    newPump({ id: nextId(), name: roleName(role), role, productId: onlyOne(products, role) }),
  )
  return { ...site, machines: [...site.machines, { ...machine, pumps }] }
}

/** The one product of a role, or null when there is none or a choice. */
export function onlyOne(products: readonly Product[], role: ProductRole): Id | null {
  const [first, second] = products.filter((product) => product.role === role)
  return first !== undefined && second === undefined ? first.id : null
}
