import { describe, expect, it } from 'vitest'
import { firstVisits, HELD_OUT, visitsWithRecord } from '../../bench/screw-simulation/arms'
import { bestPossibleFirstVisit } from '../../bench/screw-simulation/best-possible'
import { beaten } from '../../bench/screw-simulation/goals'
import { advice, fixedGain, quarterTurns, secant } from '../../bench/screw-simulation/strategies'
import { airNaming, naming, summarise } from '../../bench/screw-simulation/summary'
import { THREE_RUNS } from '../../bench/screw-simulation/visit'

// The large run is `npm run bench`; the pumps here are its first ones, held out from every choice made in the advice.
// Limits leave room for the smaller number.
const sound = firstVisits(800, 'sound', advice)
const summary = summarise('advice', sound)
const [, one = 0, two = 0, three = 0] = summary.within

describe('the advice on virtual pumps it knows nothing of', () => {
  it('settles a first visit in one turn at the median, 95 % in two, 99 % in three', () => {
    expect(one).toBeGreaterThan(0.5)
    expect(two).toBeGreaterThan(0.95)
    expect(three).toBeGreaterThan(0.99)
  })

  it('never sends the screw the wrong way', () => {
    expect(summary.moves).toBeGreaterThan(800)
    expect(summary.wrongWay).toBe(0)
  })

  it('foretells the next test: 95 % of them fall into the 95 % interval', () => {
    expect(summary.asForetold).toBeGreaterThan(0.93)
    expect(summary.asForetold).toBeLessThan(0.985)
  })

  const plain = [
    ['always a quarter turn', quarterTurns],
    ['secant', secant],
    ['fixed gain', fixedGain(0.35)],
  ] as const
  const [oneMove = { margin: 0, share: 1, standardError: 0, proved: null }] = bestPossibleFirstVisit(
    100,
    1000,
    [0],
    HELD_OUT,
  )

  it.each(plain)(
    'beats %s at every percentile, or is level where fewer turns are impossible',
    (name, strategy) => {
      const goal = beaten(summary, summarise(name, firstVisits(800, 'sound', strategy)), oneMove)
      expect(goal.found).not.toMatch(/behind|, level at p|^level at p/u)
      expect(goal.found).toMatch(/beaten at .*p90 p95 p99/u)
    },
  )

  it.each(plain)('beats %s as well when nobody may make more than three runs a test', (name, strategy) => {
    const rules = { rules: THREE_RUNS }
    const strict = summarise('advice', firstVisits(800, 'sound', advice, rules))
    expect(strict.extraRuns).toBe(0)
    expect(strict.within[2]).toBeGreaterThan(0.88)
    const goal = beaten(strict, summarise(name, firstVisits(800, 'sound', strategy, rules)), oneMove)
    expect(goal.found).not.toMatch(/behind/u)
    expect(goal.found).toMatch(/beaten at .*p90 p95 p99/u)
  })

  it('settles seven of eight in one turn, nearly all in two, when one earlier visit is on record', () => {
    const record = visitsWithRecord(500, advice, { earlier: 1, drift: 0.3 })
    const known = summarise('record', record)
    expect(known.within[1]).toBeGreaterThan(7 / 8)
    expect(known.within[2]).toBeGreaterThan(0.98)
    expect(record.filter((visit) => visit.ended === 'screw-does-not-act')).toEqual([])
  })

  it('names nearly every dead screw within two moves, all within three, and nearly every slipping one', () => {
    const dead = naming('dead', firstVisits(300, 'dead', advice))
    expect(dead.troubled).toBeGreaterThan(200)
    expect(dead.within[2]).toBeGreaterThan(0.97)
    expect(dead.within[3]).toBe(1)
    expect(naming('slipping', firstVisits(200, 'slipping', advice)).within[3]).toBeGreaterThan(0.97)
  })

  it('hardly ever calls a sound screw dead', () => {
    expect(sound.filter((visit) => visit.ended === 'screw-does-not-act').length).toBeLessThanOrEqual(1)
  })

  it('names a worn tube at once where there is a record, and air before the first turn', () => {
    const worn = visitsWithRecord(150, advice, { earlier: 1, drift: 0.05, wornSince: true })
    expect(naming('worn', worn).within[0]).toBeGreaterThan(0.85)
    expect(airNaming(firstVisits(150, 'air', advice)).within[0]).toBeGreaterThan(0.95)
  })
})
