import { doseContext } from '#core/dose/on-basis'
import { cautionsFor } from '#core/cautions/cautions-for'
import { missingAcknowledgements } from '#core/cautions/missing-acknowledgements'
import type { Caution, CautionTrigger } from '#core/cautions/types'
import type { RightSize } from '#core/drawdown/choose-cylinder'
import type { Entry, Id, Instrument, Machine, Product, Pump, PumpWork, Run, Test } from '#core/records/index'
import { turnForecasts, type TurnForecast } from '#core/worksheet/turn-forecasts'
import { judgedState } from '#core/worksheet/judged-state'
import { mustNotServe } from '#core/worksheet/must-not-serve'
import type { PumpState, PumpVisit } from '#core/worksheet/types'
import {
  acknowledgeCaution,
  addTest,
  editRun,
  editTest,
  type RunReadings,
  type TestSetup,
} from '../../../commands/visit'
import {
  lastTest,
  nextSetup,
  openTest,
  recordEnd,
  recordSeconds,
  runAtHand,
  startChoices,
  startFor,
  withRun,
  type Between,
  type NewRun,
  type StartChoices,
} from './bench-record'
import type { Surroundings } from '../bench/figures'
import { expectedFlow, rightInstrument } from './suggest-cylinder'
import type { VisitDesk } from './visit-desk.svelte'

/** One pump on the bench: how it is being tested, the run at hand, and what the rep does to it. */
export class PumpBench {
  /** how the next run starts, where the rep said so */
  between: Between | null = $state(null)
  #chosenRun: Id | null = $state(null)
  /** cautions for something about to be done to this pump, beside those before the first test */
  trigger: CautionTrigger | null = $state(null)

  constructor(
    readonly desk: VisitDesk,
    readonly pumpId: Id,
  ) {}

  get pump(): Pump | undefined {
    return this.desk.pumps.find((pump) => pump.id === this.pumpId)
  }
  get machine(): Machine | undefined {
    return this.desk.machines.find((machine) => machine.pumps.some((pump) => pump.id === this.pumpId))
  }
  get product(): Product | null {
    return this.desk.products.find((product) => product.id === this.pump?.productId) ?? null
  }
  get result(): PumpVisit | undefined {
    return this.desk.result?.pumps.find((pump) => pump.pumpId === this.pumpId)
  }
  get work(): PumpWork | undefined {
    return this.desk.visit?.work.find((work) => work.pumpId === this.pumpId)
  }
  get at(): { readonly visitId: Id; readonly pumpId: Id } {
    return { visitId: this.desk.visitId, pumpId: this.pumpId }
  }

  // --- how it is tested ---

  readonly test: Test | null = $derived.by(() => openTest(this.work))

  /** the last test of this pump at an earlier visit */
  readonly earlier: Test | null = $derived.by(() => {
    const visits = this.desk.session.site.visits.filter((visit) => visit.id !== this.desk.visitId)
    for (const visit of visits.toReversed()) {
      const test = lastTest(visit.work.find((work) => work.pumpId === this.pumpId))
      if (test !== null) return test
    }
    return null
  })

  readonly rightSize: RightSize | null = $derived.by(() => {
    const { pump, machine, product, desk } = this
    if (pump === undefined || machine === undefined) return null
    const context = doseContext(machine, product, pump)
    const flow = expectedFlow(pump, context, desk.session.worksheet.visits, desk.visitId)
    const model = this.test ?? lastTest(this.work) ?? this.earlier
    const how = { method: model?.method ?? 'draw-down', tubeImmersed: model?.tubeImmersed ?? true } as const
    return rightInstrument(flow, this.seconds, how, pump, context, desk.instruments)
  })

  readonly setup: TestSetup = $derived.by(
    () => this.test ?? nextSetup(this.work, this.earlier, this.rightSize?.instrumentId ?? null),
  )

  get instrument(): Instrument | null {
    return this.desk.instruments.find((one) => one.id === this.setup.instrumentId) ?? null
  }

  /** length of a run by the usual test, s */
  get seconds(): number {
    const typed = Number(this.desk.session.settings.protocol.seconds)
    return typed > 0 && typed <= 600 ? typed : 60
  }

  editSetup(label: string, change: Partial<TestSetup>): void {
    const { test, at } = this
    const fresh = { ...at, ...this.desk.stamp(), ...this.setup, ...change }
    this.desk.apply(label, (site) =>
      test === null ? addTest(site, fresh) : editTest(site, { ...at, testId: test.id }, change),
    )
  }

  /** The line is primed: so it is from here on. */
  markPrimed(): void {
    this.editSetup('Line primed', { primed: true })
  }

  /** what the numbers of one series were worked out from; null for a series that is not there */
  surroundings(testId: Id): Surroundings | null {
    const { pump, machine, product, desk } = this
    const test = this.work?.steps.find((step) => step.id === testId)
    if (pump === undefined || machine === undefined || test?.kind !== 'test') return null
    return { pump, machine, product, instruments: desk.instruments, test }
  }

  /** what each turn of this visit was expected to do, beside what came */
  readonly forecasts: readonly TurnForecast[] = $derived.by(() =>
    this.work?.steps.some((step) => step.kind === 'turn') === true
      ? turnForecasts(this.desk.session.site, this.desk.session.worksheet, this.desk.machines, this.at)
      : [],
  )

  /** the number of a run in its row, counted from 1 */
  runNumber = (runId: Id): number => {
    const runs = (this.desk.closed ? lastTest(this.work) : this.test)?.runs ?? []
    return runs.findIndex((run) => run.id === runId) + 1
  }

  // --- the watch ---

  countdown: boolean = $state(true)
  #length: number | null = $state(null)
  /** length of a counted-down run, s: the rep's, else that of the usual test */
  get length(): number {
    return this.#length ?? this.seconds
  }
  setLength(text: string | null): void {
    const seconds = Math.round(Number(text ?? ''))
    this.#length = seconds >= 5 && seconds <= 600 ? seconds : null
  }

  // --- the run at hand ---

  readonly run: Run | null = $derived.by(() => runAtHand(this.test, this.#chosenRun))

  readonly starts: StartChoices = $derived.by(() =>
    startChoices(this.test, lastTest(this.work), this.setup.method),
  )

  /** reading before the run at hand, or the one a new run would start from */
  get start(): Entry | null {
    return this.run === null ? startFor(this.starts, this.between) : this.run.start
  }

  choose(runId: Id | null): void {
    this.#chosenRun = runId
  }

  /** Leaves the run at hand: the next reading or time begins a new one. */
  nextRun(): void {
    this.#chosenRun = null
    this.between = null
  }

  /** The next lap starts where the last one ended, read or still to be read. */
  nextLap(): void {
    this.nextRun()
    this.between = 'goes-on'
  }

  #fresh(): NewRun {
    return {
      test: this.desk.stamp(),
      setup: this.setup,
      runId: this.desk.session.newId(),
      start: startFor(this.starts, this.between),
    }
  }

  setStart(start: Entry | null): void {
    const { test, run, at } = this
    const fresh = { ...this.#fresh(), start }
    this.#chosenRun = run?.id ?? fresh.runId
    const join = `start-${this.#chosenRun}`
    this.desk.apply(
      'Reading before the run',
      (site) => {
        const made = withRun(site, at, test, run, fresh)
        return editRun(made.site, { ...at, testId: made.testId, runId: made.runId }, { start })
      },
      join,
    )
  }

  setEnd(end: Entry | null): void {
    const { test, run, at } = this
    const fresh = this.#fresh()
    this.#chosenRun = run?.id ?? fresh.runId
    this.desk.apply(
      'Reading after the run',
      (site) => {
        if (test !== null && run !== null) return recordEnd(site, { ...at, test, run }, end)
        const made = withRun(site, at, test, run, fresh)
        return editRun(made.site, { ...at, testId: made.testId, runId: made.runId }, { end })
      },
      `end-${this.#chosenRun}`,
    )
  }

  /** Writes seconds from the watch into the run at hand, or into a new one. */
  takeSeconds(seconds: number): void {
    const { test, run, at } = this
    const fresh = this.#fresh()
    let runId: Id = fresh.runId
    this.desk.apply('Time a run', (site) => {
      const timed = recordSeconds(site, at, test, run, fresh, seconds)
      runId = timed.runId
      return timed.site
    })
    this.#chosenRun = runId
    this.between = null
  }

  editRun(testId: Id, runId: Id, readings: Partial<RunReadings>, join: string): void {
    const at = { ...this.at, testId, runId }
    this.desk.apply('Correct a run', (site) => editRun(site, at, readings), join)
  }

  /** as many runs as the usual test has count by now */
  get isEnough(): boolean {
    const wanted = Math.max(1, Number(this.desk.session.settings.protocol.runs) || 3)
    const runs = this.result?.tests.find((test) => test.testId === this.test?.id)?.runs ?? []
    return runs.filter((run) => run.excluded === null && run.flow.ok).length >= wanted
  }
  /** what the series at hand has come to, in short; null while nothing was timed in it */
  get stands(): { readonly state: PumpState; readonly move: number } | null {
    const test = this.result?.tests.find((one) => one.testId === this.test?.id)
    if (test === undefined || !test.flow.ok) return null
    const advice = this.result?.advice
    const moves = advice?.kind === 'turn' || advice?.kind === 'confirm'
    return { state: judgedState(test), move: moves ? (advice.eighths ?? 0) : 0 }
  }
  get advisesTurn(): boolean {
    return this.result?.advice?.kind === 'turn'
  }

  // --- cautions ---

  #cautions = (trigger: CautionTrigger): readonly Caution[] =>
    cautionsFor({
      site: { machines: this.desk.machines, stock: this.desk.session.site.stock },
      products: this.desk.products,
      trigger,
      productId: this.pump?.productId ?? null,
      texts: this.desk.session.settings.cautionTexts,
    })

  /** what is to be read before this pump is tested */
  readonly cautions: readonly Caution[] = $derived.by(() => this.#cautions('before-first-test'))
  readonly unread: readonly Caution[] = $derived.by(() => this.#missing(this.cautions))
  /** what is still to be read before this is done to the pump */
  unreadFor = (trigger: CautionTrigger): readonly Caution[] => this.#missing(this.#cautions(trigger))
  /** what is to be read for what was just begun */
  readonly unreadExtra: readonly Caution[] = $derived.by(() =>
    this.trigger === null ? [] : this.unreadFor(this.trigger),
  )

  /** a sanitizer measured outside its window, or its label: what must not happen until a strip confirms */
  readonly outsideLabel: readonly Caution[] = $derived.by(() => {
    const { result } = this
    if (result === undefined || !mustNotServe(result, result.state, this.product?.labelLimits ?? null))
      return []
    const cautions = this.#cautions('sanitizer-outside-label')
    return this.desk.closed ? cautions : this.#missing(cautions)
  })

  #missing = (cautions: readonly Caution[]): readonly Caution[] =>
    missingAcknowledgements({ cautions: this.desk.visit?.cautions ?? [] }, cautions)

  acknowledge(caution: Caution): void {
    const input = {
      visitId: this.desk.visitId,
      caution: caution.id,
      productId: caution.productId,
      at: this.desk.session.now(),
    }
    this.desk.apply(`Caution read: ${caution.title}`, (site) => acknowledgeCaution(site, input))
  }
}
