import { describe, expect, it } from 'vitest'
import { firstVisits, visitsWithRecord } from '../../bench/screw-simulation/arms'
import { advice, fixedGain, quarterTurns, secant } from '../../bench/screw-simulation/strategies'
import { airNaming, naming, summarise } from '../../bench/screw-simulation/summary'

// The large run is `npm run bench`; the pumps here are its first ones. Limits leave room for the smaller number.
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

  it('needs no more turns than any plain strategy at any percentile, and fewer in the tail', () => {
    for (const plain of [quarterTurns, secant, fixedGain(0.35)]) {
      const other = summarise('plain', firstVisits(800, 'sound', plain))
      summary.percentiles.forEach((turns, i) =>
        expect(turns).toBeLessThanOrEqual(other.percentiles[i] ?? Infinity),
      )
      expect(summary.percentiles[4]).toBeLessThan(other.percentiles[4] ?? 0)
    }
  })

  it('settles nine in ten in one turn when one earlier visit is on record', () => {
    const record = visitsWithRecord(500, advice, { earlier: 1, drift: 0.3 })
    const known = summarise('record', record)
    expect(known.within[1]).toBeGreaterThan(0.88)
    expect(known.within[2]).toBeGreaterThan(0.98)
    expect(record.filter((visit) => visit.ended === 'screw-does-not-act')).toEqual([])
  })

  it('names a dead screw within two moves and a slipping one within three', () => {
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
