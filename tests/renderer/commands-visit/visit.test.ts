import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { visit as visitSchema } from '#core/documents/visit-schema'
import type { Site, Test, Visit } from '#core/records/index'
import {
  acknowledgeCaution,
  addAdvice,
  addReading,
  addRun,
  addTest,
  addVerification,
  amendVisit,
  answerCheck,
  answerChecks,
  closeVisit,
  containerChanged,
  discardVisit,
  editAdvice,
  editReading,
  editRun,
  editTest,
  editVerification,
  excludeRun,
  recordEndStop,
  recordTurn,
  removeRun,
  removeStep,
  setNotes,
  startVisit,
  tubeFitted,
  turnedOtherWay,
  watchSeconds,
} from '#renderer/commands/visit.ts'
import { AT, emptySite, freeze, MACHINE, nextId, product, PRODUCT, PUMP } from './site.ts'

const setup = {
  method: 'draw-down',
  instrumentId: null,
  tubeImmersed: true,
  primed: true,
  productTemperature: null,
} as const

const begun = (): { site: Site; visitId: string } => {
  const visitId = nextId()
  return { site: freeze(startVisit(emptySite(), { id: visitId, at: AT, by: 'R. Vale' })), visitId }
}

const withTest = () => {
  const { site, visitId } = begun()
  const at = { visitId, pumpId: PUMP, testId: nextId() }
  return { site: freeze(addTest(site, { ...at, id: at.testId, at: AT, ...setup })), at }
}

const visitOf = (site: Site): Visit => {
  const visit = site.visits.at(-1)
  if (visit === undefined) throw new Error('no visit')
  return visit
}

const testOf = (site: Site): Test => {
  const step = visitOf(site).work[0]?.steps.find((one) => one.kind === 'test')
  if (step?.kind !== 'test') throw new Error('no test')
  return step
}

const reading = (value: string) => ({ value, unit: 'mL' }) as const
const run = { start: reading('100'), end: reading('70'), seconds: watchSeconds(60) }

const close = (site: Site, visitId: string): Site =>
  closeVisit(site, {
    visitId,
    snapshotId: nextId(),
    at: AT,
    nextVisitOn: '2026-04-06',
    customerName: ' K. Ortega ',
    signedBy: 'R. Vale',
    products: [product],
    instruments: [],
    dayOf: (instant) => instant.slice(0, 10),
  })

describe('starting a visit', () => {
  it('resumes the open visit instead of starting a second one', () => {
    const { site } = begun()
    expect(startVisit(site, { id: nextId(), at: AT, by: 'Someone' })).toBe(site)
  })

  it('can be taken back while it is open, not once it is closed', () => {
    const { site, visitId } = begun()
    expect(discardVisit(site, { visitId }).visits).toEqual([])
    const closed = freeze(close(site, visitId))
    expect(discardVisit(closed, { visitId })).toBe(closed)
  })
})

describe('runs', () => {
  it('keep what was typed and the seconds of the watch to a hundredth', () => {
    const { site, at } = withTest()
    const timed = addRun(site, { ...at, id: nextId() }, { ...run, seconds: watchSeconds(59.98765) })
    expect(testOf(timed).runs[0]).toMatchObject({
      start: reading('100'),
      seconds: { value: '59.99', unit: 's' },
    })
  })

  it('can be corrected, left out with a reason, counted again and removed', () => {
    const { site, at } = withTest()
    const runId = nextId()
    const one = freeze(addRun(site, { ...at, id: runId }, run))
    const corrected = editRun(one, { ...at, runId }, { end: reading('71.5') })
    expect(testOf(corrected).runs[0]?.end).toEqual(reading('71.5'))
    const out = freeze(excludeRun(one, { ...at, runId }, ' bubble passed '))
    expect(testOf(out).runs[0]?.excluded).toBe('bubble passed')
    expect(testOf(excludeRun(out, { ...at, runId }, null)).runs[0]?.excluded).toBeNull()
    expect(testOf(removeRun(one, { ...at, runId })).runs).toEqual([])
  })

  it('are not left out without a reason', () => {
    const { site, at } = withTest()
    const runId = nextId()
    const one = freeze(addRun(site, { ...at, id: runId }, run))
    expect(excludeRun(one, { ...at, runId }, '   ')).toBe(one)
  })

  it('keep their test’s set-up until it is changed, and a change to the same changes nothing', () => {
    const { site, at } = withTest()
    expect(testOf(editTest(site, at, { method: 'catch' })).method).toBe('catch')
    expect(editTest(site, at, { method: 'draw-down' })).toBe(site)
  })
})

describe('the steps at a pump', () => {
  it('stand in the order they were done', () => {
    const { site, at } = withTest()
    const stamp = () => ({ ...at, id: nextId(), at: AT })
    const turned = recordTurn(site, { ...stamp(), eighths: 3 })
    const met = recordEndStop(turned, { ...stamp(), direction: 'up' })
    const fitted = tubeFitted(met, stamp())
    const changed = containerChanged(fitted, stamp())
    expect(visitOf(changed).work[0]?.steps.map((step) => step.kind)).toEqual([
      'test',
      'turn',
      'end-stop',
      'tube-fitted',
      'container-changed',
    ])
  })

  it('take no turn of nothing, of half an eighth, or of more than a hundred turns', () => {
    const { site, at } = withTest()
    for (const eighths of [0, 0.5, 801, Number.NaN])
      expect(recordTurn(site, { ...at, id: nextId(), at: AT, eighths })).toBe(site)
  })

  it('lets a turn that was written down the wrong way round be put right where it stands', () => {
    const { site, at } = withTest()
    const id = nextId()
    const turned = tubeFitted(recordTurn(site, { ...at, id, at: AT, eighths: 4 }), {
      ...at,
      id: nextId(),
      at: AT,
    })
    const steps = visitOf(turnedOtherWay(turned, { ...at, stepId: id })).work[0]?.steps
    expect(steps?.map((step) => (step.kind === 'turn' ? step.eighths : step.kind))).toEqual([
      'test',
      -4,
      'tube-fitted',
    ])
    expect(turnedOtherWay(freeze(turned), { ...at, stepId: at.testId })).toBe(turned)
  })

  it('can be taken back out one by one', () => {
    const { site, at } = withTest()
    const id = nextId()
    const turned = recordTurn(site, { ...at, id, at: AT, eighths: -2 })
    expect(visitOf(removeStep(turned, { ...at, stepId: id })).work[0]?.steps).toHaveLength(1)
  })
})

describe('conditions, readings and cautions', () => {
  const ok = { machineId: MACHINE, check: 'drain-loop', answer: 'ok', value: null, note: '' } as const

  it('hold one answer per check and machine, the latest', () => {
    const { site, visitId } = begun()
    const once = answerCheck(site, { visitId }, ok)
    const twice = answerCheck(once, { visitId }, { ...ok, answer: 'not-ok', note: 'loop missing' })
    expect(visitOf(twice).checks).toEqual([{ ...ok, answer: 'not-ok', note: 'loop missing' }])
    expect(answerChecks(freeze(once), { visitId }, [ok])).toBe(once)
  })

  it('keep the moment a reading was taken when it is corrected', () => {
    const { site, visitId } = begun()
    const id = nextId()
    const first = addReading(site, {
      visitId,
      id,
      at: AT,
      machineId: MACHINE,
      kind: 'rack-counter',
      value: null,
      count: '12345',
    })
    const fixed = editReading(first, { visitId, readingId: id }, { value: null, count: '12354' })
    expect(visitOf(fixed).readings).toEqual([
      { id, at: AT, machineId: MACHINE, kind: 'rack-counter', value: null, count: '12354' },
    ])
  })

  it('log a caution once per product, at the first time', () => {
    const { site, visitId } = begun()
    const read = { visitId, caution: 'read-label', productId: PRODUCT, at: AT }
    const once = freeze(acknowledgeCaution(site, read))
    expect(acknowledgeCaution(once, { ...read, at: '2026-03-09T15:00:00.000Z' })).toBe(once)
    expect(visitOf(acknowledgeCaution(once, { ...read, productId: null })).cautions).toHaveLength(2)
  })
})

const tubeOf = (machines: Site['machines']): string | null | undefined =>
  machines.flatMap(({ pumps }) => pumps).find(({ id }) => id === PUMP)?.tube.fittedOn

describe('closing', () => {
  it('ties the visit to the set-up as it stands', () => {
    const { site, visitId } = begun()
    const closed = close(site, visitId)
    expect(closed.snapshots).toHaveLength(1)
    expect(closed.snapshots[0]).toMatchObject({ machines: site.machines, products: [product] })
    expect(visitOf(closed)).toMatchObject({
      setupId: closed.snapshots[0]?.id,
      closing: { customerName: 'K. Ortega', nextVisitOn: '2026-04-06' },
    })
  })

  it('keeps an unchanged set-up once for all visits, and a changed one anew', () => {
    const { site, visitId } = begun()
    const first = close(site, visitId)
    const secondId = nextId()
    const second = close(startVisit(first, { id: secondId, at: AT, by: 'R. Vale' }), secondId)
    expect(second.snapshots).toHaveLength(1)
    expect(second.visits[1]?.setupId).toBe(second.visits[0]?.setupId)
    const thirdId = nextId()
    const softer: Site = { ...second, water: { ...second.water, softener: 'fitted' } }
    const third = close(startVisit(softer, { id: thirdId, at: AT, by: 'R. Vale' }), thirdId)
    expect(third.snapshots).toHaveLength(2)
  })

  it('puts the tubes that were fitted on record from then on, and leaves the visit the set-up it was made with', () => {
    const { site, visitId } = begun()
    const fitted = tubeFitted(site, { visitId, pumpId: PUMP, id: nextId(), at: AT })
    const closed = freeze(close(fitted, visitId))
    const before = tubeOf(site.machines)
    expect(before).not.toBe(AT.slice(0, 10))
    expect(tubeOf(closed.machines)).toBe(AT.slice(0, 10))
    expect(tubeOf(closed.snapshots.at(-1)?.machines ?? [])).toBe(before)
    // taken out again, or never fitted: the record stays as it is
    expect(close(site, visitId).machines).toBe(site.machines)
  })

  it('makes the visit unchangeable: every edit gives the same site back', () => {
    const { site, at } = withTest()
    const runId = nextId()
    const check = {
      id: nextId(),
      at: AT,
      method: 'strip',
      where: 'ware',
      instrumentId: null,
      reading: '50',
      step: '25',
      factor: null,
      blank: null,
    } as const
    const advice = { id: nextId(), to: 'operator', text: 'Clean the screens' } as const
    const filled = addAdvice(addVerification(addRun(site, { ...at, id: runId }, run), at, check), at, advice)
    const closed = freeze(close(filled, at.visitId))
    const stamp = { ...at, id: nextId(), at: AT }
    const edits: readonly Site[] = [
      addTest(closed, { ...stamp, ...setup }),
      addRun(closed, stamp, run),
      editRun(closed, { ...at, runId }, { end: reading('1') }),
      excludeRun(closed, { ...at, runId }, 'x'),
      removeRun(closed, { ...at, runId }),
      recordTurn(closed, { ...stamp, eighths: 1 }),
      turnedOtherWay(closed, { ...at, stepId: at.testId }),
      recordEndStop(closed, { ...stamp, direction: 'down' }),
      tubeFitted(closed, stamp),
      containerChanged(closed, stamp),
      removeStep(closed, { ...at, stepId: at.testId }),
      answerCheck(closed, at, {
        machineId: MACHINE,
        check: 'drain-loop',
        answer: 'ok',
        value: null,
        note: '',
      }),
      addReading(closed, { ...stamp, machineId: MACHINE, kind: 'pH-rinse', value: null, count: '7' }),
      acknowledgeCaution(closed, { ...at, caution: 'x', productId: null, at: AT }),
      editVerification(closed, { ...at, verificationId: check.id }, { reading: '75' }),
      editAdvice(closed, { ...at, adviceId: advice.id }, { text: 'x' }),
      setNotes(closed, at, 'x'),
      close(closed, at.visitId),
    ]
    for (const edited of edits) expect(edited).toBe(closed)
  })

  it('leaves corrections as dated amendments with a reason; the visit stays readable as it was', () => {
    const { site, visitId } = begun()
    const closed = freeze(close(site, visitId))
    const amendment = {
      visitId,
      id: nextId(),
      at: '2026-03-10T08:00:00.000Z',
      by: 'R. Vale',
      reason: 'Misread the counter',
      text: 'Rack counter was 12354.',
    }
    const amended = amendVisit(closed, amendment)
    const { amendments, ...rest } = visitOf(amended)
    const { amendments: none, ...before } = visitOf(closed)
    expect(rest).toEqual(before)
    expect(none).toEqual([])
    expect(amendments).toMatchObject([{ reason: 'Misread the counter', at: '2026-03-10T08:00:00.000Z' }])
    expect(amendVisit(closed, { ...amendment, reason: ' ' })).toBe(closed)
    expect(amendVisit(site, amendment)).toBe(site)
  })
})

describe('any visit made of these edits', () => {
  it('is one the document schema takes', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.double({ min: 0, max: 9999, noNaN: true })), {
          maxLength: 30,
        }),
        (edits) => {
          const { site, at } = withTest()
          const end = edits.reduce((now, [kind, x]) => {
            const stamp = { ...at, id: nextId(), at: AT }
            if (kind === 0) return addRun(now, stamp, { ...run, seconds: watchSeconds(x) })
            if (kind === 1) return recordTurn(now, { ...stamp, eighths: Math.round(x) - 400 })
            if (kind === 2) return tubeFitted(now, stamp)
            if (kind === 3) return recordEndStop(now, { ...stamp, direction: 'down' })
            if (kind === 4) return containerChanged(now, stamp)
            if (kind === 5) return setNotes(now, at, `note ${x}`)
            return addTest(now, { ...stamp, ...setup })
          }, site)
          expect(visitSchema.safeParse(visitOf(close(end, at.visitId))).error).toBeUndefined()
        },
      ),
    )
  })
})
