import { dryingFacts } from './known-conditions'
import { doseFacts } from './known-doses'
import { waterFacts } from './known-water'
import type { Finding } from './findings'
import type { KnownFact, KnownInput } from './known-types'

/**
 * What the visits and the site record know about one machine, the latest of each kind, without asking. Facts too old
 * for their kind are in the list as not trusted; only trusted ones count (`findingsKnown`). No problems: what is
 * missing or unreadable is left out.
 */
export function knownFacts(input: KnownInput): readonly KnownFact[] {
  return [...doseFacts(input), ...waterFacts(input), ...dryingFacts(input)]
}

/** The findings of the facts that still can be trusted. */
export const findingsKnown = (facts: readonly KnownFact[]): readonly Finding[] =>
  facts.filter((fact) => fact.trusted).flatMap((fact) => fact.findings)
