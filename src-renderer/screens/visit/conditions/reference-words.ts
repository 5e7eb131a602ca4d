import type { SiteCheckReference } from '#core/cautions/site-checks'
import { unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'

const BOUND = { min: 'at least', max: 'at most' } as const

/** The figures a condition is held against: `at least 180 °F (82 °C), at most 194 °F (90 °C)`. */
export const referenceWords = (references: readonly SiteCheckReference[], sign: DecimalSign): string =>
  references
    .map((reference) => {
      const [first, ...others] = reference.figures.map(
        (figure) =>
          `${sign === 'comma' ? String(figure.value).replace('.', ',') : figure.value} ${unitSymbol(figure.unit)}`,
      )
      const also = others.length === 0 ? '' : ` (${others.join(', ')})`
      return `${BOUND[reference.bound]} ${first ?? ''}${also}`
    })
    .join(', ')

/** Where the figures come from; each source once. */
export const referenceSources = (references: readonly SiteCheckReference[]): string =>
  [...new Set(references.map((reference) => reference.source))].join('; ')
