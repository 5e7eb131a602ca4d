import type { CauseId } from '../glass/causes'
import { diagnose, type Diagnosis } from '../glass/diagnose'
import type { Finding } from '../glass/findings'
import type { KnownFact, KnownInput } from '../glass/known-types'
import type { NextTest } from '../glass/next-test'
import type { Reason } from '../glass/rank'
import { compareResidue, type ResidueComparison } from '../glass/residue-compare'
import type { Outcome } from '../outcome'
import type { GlassCheck, Id, Instant, Machine, Settings, Site } from '../records'
import type { Worksheet } from './types'

/** One glass check worked out: the causes in order with what speaks for and against each, and what to ask next. */
export interface GlassResult {
  readonly checkId: Id
  readonly at: Instant
  readonly machineId: Id | null
  readonly findings: readonly Finding[]
  readonly known: readonly Omit<KnownFact, 'findings'>[]
  readonly causes: readonly {
    readonly cause: CauseId
    /** natural-log units */
    readonly score: number
    /** a ranking aid, over-confident; the shares of all causes sum to 1 */
    readonly share: number
    readonly reasons: readonly {
      readonly kind: Reason['kind']
      readonly evidence: readonly string[]
      /** natural-log units, positive speaks for the cause */
      readonly weight: number
    }[]
  }[]
  readonly separated: boolean
  readonly open: readonly CauseId[]
  readonly together: readonly CauseId[]
  readonly next: readonly Omit<NextTest, 'tells'>[]
  readonly testsAsked: number
  readonly enough: boolean
  readonly cured: CauseId | null
  readonly confirmedCause: string | null
  /** mg on a glass now and with the cure of the first cause; null where water does not decide or is not known */
  readonly residue: Outcome<ResidueComparison> | null
}

/** Every glass check of a site, worked out for the worksheet's day. Never fails. */
export const glassOf = (
  worksheet: Pick<Worksheet, 'visits' | 'drift' | 'asOf'>,
  site: Site,
  weights: Settings['glassWeights'] = [],
): readonly GlassResult[] =>
  site.glassChecks.map((check) => {
    const machine = site.machines.find((one) => one.id === check.machineId)
    const known = machine === undefined ? null : knownInput(worksheet, site, machine)
    return result(check, diagnose({ check, known, site, weights, today: worksheet.asOf }))
  })

/** What the record can tell about a machine: computed visits, and how fast its rinse-aid flow falls. */
export const knownInput = (
  { visits, drift, asOf }: Pick<Worksheet, 'visits' | 'drift' | 'asOf'>,
  site: Site,
  machine: Machine,
): KnownInput => ({
  site,
  machine,
  visits,
  today: asOf,
  fallPerDay: new Map(
    machine.pumps
      .filter((pump) => pump.role === 'rinse-aid')
      .flatMap((pump) => {
        const outlook = drift.find((one) => one.pumpId === pump.id)?.drift.outlook
        return outlook?.ok === true ? [[pump.id, outlook.value.decay.rate] as const] : []
      }),
  ),
})

function result(check: GlassCheck, found: Diagnosis): GlassResult {
  const first = found.ranking.causes[0]?.cause
  const solids = found.known.find((fact) => fact.kind === 'solids')?.value ?? null
  return {
    checkId: check.id,
    at: check.at,
    machineId: check.machineId,
    findings: found.findings,
    known: found.known.map(({ kind, value, on, daysOld, trusted }) => ({
      kind,
      value,
      on,
      daysOld,
      trusted,
    })),
    causes: found.ranking.causes.map(({ cause, score, share, reasons }) => ({
      cause,
      score,
      share,
      reasons: reasons.map((reason) => ({
        kind: reason.kind,
        evidence: 'evidence' in reason ? [reason.evidence].flat() : [],
        weight: reason.points,
      })),
    })),
    separated: found.ranking.separated,
    open: found.ranking.open,
    together: found.together,
    next: found.next.map(({ test, gain, gainPerEffort, rise }) => ({ test, gain, gainPerEffort, rise })),
    testsAsked: found.asked,
    enough: found.enough,
    cured: found.cured,
    confirmedCause: check.confirmedCause,
    residue: first === undefined || solids === null ? null : compareResidue(first, solids),
  }
}
