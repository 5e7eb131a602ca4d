import type { HazardGround } from '#core/cautions/incompatible'
import type { ActiveSubstance, Hazard, ProductRole } from '#core/records/index'

interface Option<V extends string> {
  readonly value: V
  readonly label: string
}

/** Hazards as the label shows them, with what they change here. */
export const HAZARDS: readonly (Option<Hazard> & { readonly hint: string })[] = [
  { value: 'corrosive', label: 'Corrosive', hint: 'goggles, gloves, an eyewash within reach' },
  { value: 'alkaline', label: 'Alkaline', hint: '' },
  { value: 'acid', label: 'Acid', hint: 'never together with chlorine' },
  { value: 'chlorine', label: 'Chlorine', hint: 'never together with acid, ammonia or quat' },
  { value: 'ammonia-or-quat', label: 'Ammonia or quat', hint: 'never together with chlorine' },
  { value: 'iodine', label: 'Iodine', hint: '' },
  { value: 'irritant', label: 'Irritant', hint: '' },
]

const GROUNDS: Readonly<Record<HazardGround, string>> = {
  strength: 'taken from its strength',
  role: 'taken from what it is for',
}

/** What stands under a hazard: where it was taken from, when nobody had to tick it, and what it changes. */
export const hazardHint = (
  hazard: Option<Hazard> & { readonly hint: string },
  ground: HazardGround | undefined,
): string =>
  [ground === undefined ? '' : GROUNDS[ground], hazard.hint].filter((part) => part !== '').join('; ')

export const ROLES: readonly Option<ProductRole>[] = [
  { value: 'rinse-aid', label: 'Rinse aid' },
  { value: 'detergent', label: 'Detergent' },
  { value: 'sanitizer', label: 'Sanitizer' },
  { value: 'delimer', label: 'Delimer' },
  { value: 'other', label: 'Other' },
]

export const ACTIVES: readonly Option<ActiveSubstance>[] = [
  { value: 'available-chlorine', label: 'available chlorine' },
  { value: 'quat', label: 'quat' },
  { value: 'iodine', label: 'iodine' },
  { value: 'surfactant', label: 'surfactant' },
  { value: 'alkali', label: 'alkali' },
  { value: 'other', label: 'another substance' },
]

export const roleWord = (role: ProductRole): string =>
  ROLES.find((option) => option.value === role)?.label ?? role
