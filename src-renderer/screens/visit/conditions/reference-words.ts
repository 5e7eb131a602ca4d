import type { SiteCheckReference } from '#core/cautions/site-checks'
import { UNITS, type UnitName } from '#core/units/dimensions'
import { formatPlaces, unitSymbol } from '#core/units/format'
import type { DecimalSign } from '#core/units/parse'
import { convertExactly } from '#core/units/quantity'

const BOUND = { min: 'at least', max: 'at most' } as const

/**
 * The figures a condition is held against: `at least 180 °F (82 °C), at most 194 °F (90 °C)`. A limit that is not
 * printed in the unit the rep reads, such as psi at a site that measures in kPa, is given in that too.
 */
export const referenceWords = (
  references: readonly SiteCheckReference[],
  sign: DecimalSign,
  unit: UnitName | null,
): string =>
  references
    .map((reference) => {
      const [first, ...others] = reference.figures.map(
        (figure) =>
          `${sign === 'comma' ? String(figure.value).replace('.', ',') : figure.value} ${unitSymbol(figure.unit)}`,
      )
      const also = [...others, ...inUnit(reference, sign, unit)]
      return `${BOUND[reference.bound]} ${first ?? ''}${also.length === 0 ? '' : ` (${also.join(', ')})`}`
    })
    .join(', ')

function inUnit(
  { figures }: SiteCheckReference,
  sign: DecimalSign,
  unit: UnitName | null,
): readonly string[] {
  const [first] = figures
  if (unit === null || first === undefined || figures.some((figure) => figure.unit === unit)) return []
  if (UNITS[first.unit].dimension !== UNITS[unit].dimension) return []
  const converted = convertExactly(String(first.value), first.unit, unit).toNumber()
  return [`${formatPlaces(converted, converted < 10 ? 1 : 0, sign)} ${unitSymbol(unit)}`]
}

/** Where the figures come from; each source once. */
export const referenceSources = (references: readonly SiteCheckReference[]): string =>
  [...new Set(references.map((reference) => reference.source))].join('; ')
