import type { CauseId } from '#core/glass/causes'
import { pagesAsked } from '#core/glass/check-findings'
import { diagnose, type Diagnosis } from '#core/glass/diagnose'
import type { PictureId } from '#core/glass/pictures'
import type { NoticedId } from '#core/glass/signs'
import type { TestId } from '#core/glass/tests'
import { daysBetween } from '#core/units/days'
import type { GlassAnswer, GlassCheck, Id, Machine, Site } from '#core/records/index'
import {
  answerTest,
  pickMachine,
  pickNoticed,
  pickPictures,
  pickSince,
  pickSpread,
  pickWare,
  recordCure,
  startCheck,
  takeLastBack,
} from '../../../commands/glass'
import type { SiteSession } from '../../../state/site-session.svelte'
import { knownOf } from '../known-of'
import { pagesOf, stepOf, type Step, type Wish } from './steps'

/** A check older than this is not taken up again. JUDGEMENT. */
const TAKEN_UP_DAYS = 60

/** What kitchen staff can do: their own check, and nothing else of the site. */
export class GlassDesk {
  readonly #session: SiteSession
  #id = $state<Id | null>(null)
  #wish = $state<Wish>('as-it-comes')
  /** asking whether the cure helped */
  asksAgain = $state(false)

  constructor(session: SiteSession) {
    this.#session = session
  }

  get site(): Site {
    return this.#session.site
  }

  get today(): string {
    return this.#session.today
  }

  readonly check: GlassCheck | null = $derived.by(
    () => this.site.glassChecks.find((check) => check.id === this.#id) ?? null,
  )

  /** The newest check that can be gone on with. */
  readonly unfinished: GlassCheck | null = $derived.by(() => {
    const check = this.site.glassChecks.findLast(
      (one) => one.confirmedCause === null && daysBetween(one.at, this.today) <= TAKEN_UP_DAYS,
    )
    if (check === undefined || pagesAsked(check).length === 0) return null
    return this.#found(check).cured === null ? check : null
  })

  readonly found: Diagnosis | null = $derived.by(() => (this.check === null ? null : this.#found(this.check)))

  readonly machine: Machine | null = $derived.by(() => machineOf(this.site, this.check))

  readonly step: Step | null = $derived.by(() =>
    this.check === null || this.found === null ? null : stepOf(this.site, this.check, this.found, this.#wish),
  )

  get pageCount(): number {
    return pagesOf(this.site).length
  }

  #found(check: GlassCheck): Diagnosis {
    return diagnose({
      check,
      known: knownOf(this.#session, machineOf(this.site, check)),
      site: this.site,
      weights: this.#session.settings.glassWeights,
      today: this.today,
    })
  }

  start(): void {
    const id = this.#session.newId()
    const at = this.#session.now()
    const [first, ...others] = this.site.machines
    const machineId = others.length === 0 ? (first?.id ?? null) : null
    this.#session.apply('Start a glass check', (site) => startCheck(site, { id, at, machineId }))
    this.#open(id)
  }

  /** Takes the newest check up: at its next question, or at "are they clear now?" once it had a result. */
  goOn(): void {
    const check = this.unfinished
    if (check === null) return
    this.#open(check.id)
    this.asksAgain = this.step?.kind === 'result'
  }

  #open(id: Id): void {
    this.#id = id
    this.#wish = 'as-it-comes'
    this.asksAgain = false
  }

  leave(): void {
    this.#id = null
    this.asksAgain = false
  }

  #edit(label: string, change: (site: Site, id: Id) => Site): void {
    const id = this.#id
    if (id !== null) this.#session.apply(label, (site) => change(site, id))
  }

  pickMachine(machineId: Id | null): void {
    this.#edit('Pick the machine', (site, id) => pickMachine(site, id, machineId))
  }

  pickPictures(seen: readonly PictureId[], all: boolean): void {
    this.#edit('Pick what is seen', (site, id) => pickPictures(site, id, seen, all))
  }

  pickWare(ware: GlassCheck['ware']): void {
    this.#edit('Pick what shows it', (site, id) => pickWare(site, id, ware))
  }

  pickSpread(spread: GlassCheck['spread']): void {
    this.#edit('Pick where it is', (site, id) => pickSpread(site, id, spread))
  }

  pickSince(since: GlassCheck['since']): void {
    this.#edit('Pick since when', (site, id) => pickSince(site, id, since))
  }

  pickNoticed(noticed: readonly NoticedId[], all: boolean): void {
    this.#edit('Pick what is noticed', (site, id) => pickNoticed(site, id, noticed, all))
  }

  answer(test: TestId, answers: readonly GlassAnswer[]): void {
    this.#wish = 'as-it-comes'
    this.#edit('Answer a test', (site, id) => answerTest(site, id, test, answers))
  }

  back(): void {
    this.#wish = 'as-it-comes'
    this.#edit('Change the last answer', (site, id) => takeLastBack(site, id))
  }

  wish(wish: Wish): void {
    this.#wish = wish
    this.asksAgain = false
  }

  cure(cause: CauseId, helped: boolean): void {
    this.#edit('Say how it went', (site, id) => recordCure(site, id, cause, helped))
    this.asksAgain = false
  }
}

const machineOf = (site: Site, check: GlassCheck | null): Machine | null =>
  site.machines.find((machine) => machine.id === check?.machineId) ?? null
