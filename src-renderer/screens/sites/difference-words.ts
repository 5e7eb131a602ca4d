import type { Output } from '#core/contract/contract'
import { placeName } from '#core/messages/place'

type Difference = Output<'site.compare'>['differences'][number]

const WHAT: Readonly<Record<Difference['what'], string>> = {
  site: 'Site',
  water: 'Water',
  calendar: 'Calendar',
  machine: 'Machine',
  'open-visit': 'Open visit',
  visit: 'Visit',
  stock: 'Stock entry',
  'glass-check': 'Glass check',
  'what-if': 'What-if',
  'kept-set-up': 'Set-up kept with a visit',
}

/** One difference between two versions of a site, in words; `sides` names where each version lies. */
export function differenceWords(
  difference: Difference,
  sides: { readonly mine: string; readonly theirs: string } = { mine: 'here', theirs: 'in the file' },
): string {
  const name = difference.name === '' ? '' : ` “${difference.name}”`
  const state =
    difference.state === 'differs'
      ? differs(difference.changed)
      : `only ${difference.state === 'only-mine' ? sides.mine : sides.theirs}`
  return `${WHAT[difference.what]}${name}: ${state}`
}

const differs = (changed: readonly string[]): string =>
  changed.length === 0
    ? 'differs'
    : `differs in ${changed.map((place) => (place === '...' ? 'and more' : placeName(place))).join('; ')}`
