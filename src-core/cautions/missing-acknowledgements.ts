import type { Visit } from '../records'
import type { Caution } from './types'

/**
 * The cautions among `cautions` that ask for a word and have not had it in this visit. One acknowledgement counts for
 * the caution and the product it was given for, once per visit; a caution that speaks of no product counts once.
 */
export const missingAcknowledgements = (
  visit: Pick<Visit, 'cautions'>,
  cautions: readonly Caution[],
): readonly Caution[] =>
  cautions.filter(
    (caution) =>
      caution.confirm !== null &&
      !visit.cautions.some((given) => given.caution === caution.id && given.productId === caution.productId),
  )
