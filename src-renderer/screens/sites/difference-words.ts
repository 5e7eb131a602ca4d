import type { Output } from '#core/contract/contract'

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

const STATE: Readonly<Record<Difference['state'], string>> = {
  'only-mine': 'only here',
  'only-theirs': 'only in the file',
  differs: 'differs',
}

/** One difference between two versions of a site, in words. */
export const differenceWords = (difference: Difference): string =>
  `${WHAT[difference.what]}${difference.name === '' ? '' : ` “${difference.name}”`}: ${STATE[difference.state]}`
