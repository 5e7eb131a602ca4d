import { blockingChecks } from '#core/cautions/site-checks'
import type {
  Id,
  Instrument,
  Machine,
  Product,
  Pump,
  PumpWork,
  SetupSnapshot,
  Site,
  Visit,
} from '#core/records/index'
import { judgedState } from '#core/worksheet/judged-state'
import type { PumpState, PumpVisit, VisitResult } from '#core/worksheet/types'
import type { Stamp } from '../../../commands/visit'
import type { SiteSession } from '../../../state/site-session.svelte'
import type { Keep, Timed } from '../watch/stopwatch.svelte'
import { changedSinceTest, lastTest, openTest } from './bench-record'
import { Clocks } from './clocks.svelte'
import { nextStep, type NextStep } from './order-of-work'
import { PumpBench } from './pump-bench.svelte'
import { recallPlace, rememberPlace } from './remembered-place'

/** A part of the visit: `conditions`, `close`, or a pump's id. */
export type Place = string

/** One visit on the bench: its record, its results, its watches, and where the rep stands. */
export class VisitDesk {
  readonly clocks: Clocks
  /** a time the watch cannot vouch for, waiting for the rep's word */
  asked: Timed | null = $state.raw(null)
  /** the last time taken, when the page was away for a part of it */
  away: Timed | null = $state.raw(null)
  readonly #benches = new Map<Id, PumpBench>()
  #place: Place = $state('conditions')

  constructor(
    readonly session: SiteSession,
    readonly visitId: Id,
    private readonly keep: Keep,
  ) {
    this.clocks = new Clocks(
      visitId,
      this.pumps.map((pump) => pump.id),
      keep,
      { timed: (timed) => this.takeTime(timed), primed: (pumpId) => this.bench(pumpId).markPrimed() },
    )
    for (const pump of this.pumps) this.#benches.set(pump.id, new PumpBench(this, pump.id))
    const recalled = recallPlace(keep, visitId)
    this.#place = recalled !== null && this.isPlace(recalled) ? recalled : this.next.place
    rememberPlace(keep, visitId, this.#place)
  }

  readonly visit: Visit | undefined = $derived.by(() =>
    this.session.site.visits.find((visit) => visit.id === this.visitId),
  )
  readonly result: VisitResult | undefined = $derived.by(() =>
    this.session.worksheet.visits.find((result) => result.visitId === this.visitId),
  )
  /** the set-up this visit counts with: as it stood at closing, or as it is */
  readonly setup: Pick<SetupSnapshot, 'machines' | 'products' | 'instruments' | 'water'> = $derived.by(() => {
    const { site, products, instruments } = this.session
    const kept = site.snapshots.find((snapshot) => snapshot.id === this.visit?.setupId)
    return kept ?? { machines: site.machines, products, instruments, water: site.water }
  })

  get closed(): boolean {
    return this.visit === undefined || this.visit.closing !== null
  }
  get machines(): readonly Machine[] {
    return this.setup.machines
  }
  get pumps(): readonly Pump[] {
    return this.machines.flatMap((machine) => machine.pumps)
  }
  get products(): readonly Product[] {
    return this.setup.products
  }
  get instruments(): readonly Instrument[] {
    return this.setup.instruments
  }

  workOf = (pumpId: Id): PumpWork | undefined => this.visit?.work.find((work) => work.pumpId === pumpId)

  /** the bench of one pump; the same one each time, so that it keeps its place */
  bench(pumpId: Id): PumpBench {
    const known = this.#benches.get(pumpId) ?? new PumpBench(this, pumpId)
    this.#benches.set(pumpId, known)
    return known
  }

  /** the run the watch is timing, by pump */
  get timing(): Id | null {
    return this.clocks.run.of
  }

  isPrimed = (pumpId: Id): boolean =>
    openTest(this.workOf(pumpId))?.primed ?? lastTest(this.workOf(pumpId))?.primed ?? false

  /** the pump was timed and then changed: its last result is the past */
  isChanged = (pumpId: Id): boolean => !this.closed && changedSinceTest(this.workOf(pumpId))

  /** where a pump stands now: not what it was before it was changed, and not what an unfit series says */
  stateOf = (pump: PumpVisit): PumpState =>
    this.isChanged(pump.pumpId) ? 'not-tested' : judgedState(pump.asLeft)

  /** pumps whose dose, as they stand now, lies in the window */
  get inWindow(): number {
    return (this.result?.pumps ?? []).filter((pump) => {
      const state = this.stateOf(pump)
      return state === 'proved-in' || state === 'in-not-proved'
    }).length
  }

  /** conditions whose answer bears on the dose and is still open, over all machines */
  readonly conditionsOpen: number = $derived.by(() => {
    const answered = this.visit?.checks ?? []
    return this.machines.reduce(
      (sum, machine) =>
        sum +
        blockingChecks(machine).filter(
          (check) => !answered.some((row) => row.machineId === machine.id && row.check === check),
        ).length,
      0,
    )
  })

  readonly next: NextStep = $derived.by(() =>
    nextStep(
      this.conditionsOpen,
      (this.result?.pumps ?? []).map((pump) => ({
        pump: {
          pumpId: pump.pumpId,
          pumpName: pump.pumpName,
          state: this.stateOf(pump),
          advice: pump.advice,
        },
        primed: this.isPrimed(pump.pumpId),
        priming: this.clocks.prime(pump.pumpId)?.running ?? false,
        changed: this.isChanged(pump.pumpId),
        checked: (this.workOf(pump.pumpId)?.verifications.length ?? 0) > 0,
      })),
      this.clocks.run.of,
    ),
  )

  get place(): Place {
    return this.isPlace(this.#place) ? this.#place : 'conditions'
  }
  goTo(place: Place): void {
    this.#place = place
    rememberPlace(this.keep, this.visitId, place)
  }
  private isPlace(place: string): boolean {
    return place === 'conditions' || place === 'close' || this.pumps.some((pump) => pump.id === place)
  }

  stamp = (): Stamp => ({ id: this.session.newId(), at: this.session.now() })
  apply(label: string, change: (site: Site) => Site, join: string | null = null): void {
    this.session.apply(label, change, join)
  }

  /** A time from the watch: written down, or asked about when the watch cannot vouch for it. */
  takeTime(timed: Timed): void {
    this.away = timed.away >= 1 ? timed : null
    if (timed.doubt === null) this.bench(timed.of).takeSeconds(timed.seconds)
    else this.asked = timed
  }
  answerTime(seconds: number | null): void {
    const timed = this.asked
    this.asked = null
    if (timed !== null && seconds !== null) this.bench(timed.of).takeSeconds(seconds)
  }

  release(): void {
    this.clocks.release()
  }
}
