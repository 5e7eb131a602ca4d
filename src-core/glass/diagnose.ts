import type { GlassCheck, Site } from '../records'
import type { CauseId } from './causes'
import { curesTried, findingsOfCheck, testsAsked } from './check-findings'
import type { Finding } from './findings'
import { findingsKnown, knownFacts } from './known-facts'
import type { KnownFact, KnownInput } from './known-types'
import { glassModel, type GlassModel } from './model'
import { nextTests, type NextTest } from './next-test'
import { rankCauses, type Ranking } from './rank'
import { siteHistory } from './site-history'
import type { TestId } from './tests'
import { causesTogether } from './together'

export interface Diagnosis {
  readonly model: GlassModel
  readonly known: readonly KnownFact[]
  readonly findings: readonly Finding[]
  readonly ranking: Ranking
  /** causes that may be at work beside the first */
  readonly together: readonly CauseId[]
  /** what to ask next, the best first */
  readonly next: readonly NextTest[]
  /** tests answered or skipped in this check */
  readonly asked: number
  /** time to show the result: a clear lead, five tests, or nothing left worth asking */
  readonly enough: boolean
  /** the cure that helped, when one did */
  readonly cured: CauseId | null
}

/** JUDGEMENT: a lead of this much ends the asking early. */
export const CLEAR_LEAD = 2.5
/** JUDGEMENT: after this many tests the result is shown, clear or not. */
export const MOST_TESTS = 5

export interface DiagnosisInput {
  readonly check: GlassCheck
  /** null: the machine is not known, so no record speaks for it */
  readonly known: KnownInput | null
  readonly site: Site
  readonly weights: readonly { readonly key: string; readonly value: string }[]
  readonly today: string
}

/** Everything one check comes to, from the operator's answers, the record and the site's own past. Never fails. */
export function diagnose(input: DiagnosisInput): Diagnosis {
  const model = glassModel(input.weights)
  const known = input.known === null ? [] : knownFacts(input.known)
  const findings = [...findingsKnown(known), ...findingsOfCheck(input.check)]
  const history = siteHistory(input.site, input.check, input.today)
  const ranking = rankCauses(findings, model, history)
  const next = nextTests(ranking, findings, model, impossibleAt(input))
  const asked = testsAsked(input.check).length
  return {
    model,
    known,
    findings,
    ranking,
    together: causesTogether(ranking, findings, model),
    next,
    asked,
    enough: (asked > 0 && ranking.gap >= CLEAR_LEAD) || asked >= MOST_TESTS || next.length === 0,
    cured: curesTried(input.check).find((cure) => cure.helped)?.cause ?? null,
  }
}

const impossibleAt = ({ site }: DiagnosisInput): readonly TestId[] =>
  site.machines.length === 0 ? ['gauges'] : []
