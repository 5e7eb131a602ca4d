import type { GlassCheck, Site } from '../records'
import type { CauseId } from './causes'
import { curesTried, findingsOfCheck, testsAsked } from './check-findings'
import type { Finding } from './findings'
import { findingsKnown, knownFacts } from './known-facts'
import { softenerHeard } from './known-softener'
import type { KnownFact, KnownInput } from './known-types'
import { glassModel, type GlassModel } from './model'
import { firstTwoShare, nextTests, type NextTest } from './next-test'
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
  /** time to show the result: sure of the first two, five tests, or nothing left worth asking */
  readonly enough: boolean
  /** the cure that helped, when one did */
  readonly cured: CauseId | null
}

/** JUDGEMENT: with this chance that the first two hold the true cause, asking ends early. */
export const SURE_OF_TWO = 0.9
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
  const findings = [...findingsKnown(known), ...softenerHeard(findingsOfCheck(input.check), input.site)]
  const history = siteHistory(input.site, input.check, input.today)
  const ranking = rankCauses(findings, model, history)
  const asked = testsAsked(input.check)
  const next = nextTests(ranking, findings, model, {
    asked,
    impossible: impossibleAt(input),
    left: MOST_TESTS - asked.length,
  })
  return {
    model,
    known,
    findings,
    ranking,
    together: causesTogether(ranking, findings, model),
    next,
    asked: asked.length,
    enough: isEnough(asked.length, ranking) || next.length === 0,
    cured: curesTried(input.check).find((cure) => cure.helped)?.cause ?? null,
  }
}

/** Whether asking may end: five tests, or after one at least, the first two are likely enough to hold the cause. */
export const isEnough = (asked: number, ranking: Ranking): boolean =>
  asked >= MOST_TESTS || (asked > 0 && ranking.separated && firstTwoShare(ranking) >= SURE_OF_TWO)

const impossibleAt = ({ site }: DiagnosisInput): readonly TestId[] =>
  site.machines.length === 0 ? ['gauges'] : []
