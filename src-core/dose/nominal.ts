import { chain, ok, type Outcome } from '../outcome'
import { exactly } from '../statistics/make-estimate'
import { onBasis, type DoseContext } from './on-basis'

/** mg/L active that `dose` mL/rack gives, on the figures as they stand. Problems as `onBasis`. */
export const activeOf = (dose: number, context: DoseContext): Outcome<number> =>
  chain(exactly(dose, 'mL/rack'), (one) =>
    chain(onBasis('mg-per-L-active', one, context), (active) => ok(active.value)),
  )
