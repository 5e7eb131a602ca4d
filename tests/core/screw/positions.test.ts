import { describe, expect, it } from 'vitest'
import type { Step, Test } from '#core/records/visit'
import { positions } from '#core/screw/positions'

const when = '2026-03-09T10:00:00.000Z'
const test = (id: string): Test => ({
  kind: 'test',
  id,
  at: when,
  method: 'draw-down',
  instrumentId: null,
  tubeImmersed: true,
  primed: true,
  productTemperature: null,
  runs: [],
})
const turn = (eighths: number): Step => ({ kind: 'turn', id: `turn ${String(eighths)}`, at: when, eighths })
const stop = (direction: 'up' | 'down'): Step => ({ kind: 'end-stop', id: direction, at: when, direction })
const tube: Step = { kind: 'tube-fitted', id: 'tube', at: when }

describe('where the screw is', () => {
  it('adds up what was really turned between the tests', () => {
    const found = positions([test('a'), turn(4), test('b'), turn(-3), turn(1), test('c')])
    expect([...found.byTest]).toEqual([
      ['a', 0],
      ['b', 4],
      ['c', 2],
    ])
    expect(found).toMatchObject({ now: 2, moves: 3, tubes: [['a', 'b', 'c']] })
  })

  it('begins a new list of tests with a new tube and keeps the position', () => {
    const found = positions([test('a'), turn(4), tube, test('b')])
    expect(found.tubes).toEqual([['a'], ['b']])
    expect(found.byTest.get('b')).toBe(4)
  })

  it('knows the stops from the record and better from what was met', () => {
    expect(positions([], { up: '6', down: '2' }).stops).toEqual({ up: 6, down: -2 })
    expect(positions([turn(5), stop('up')], { up: '9', down: null }).stops).toEqual({ up: 5, down: null })
    expect(positions([turn(-3), stop('down')], { up: 'a lot', down: null }).stops).toEqual({
      up: null,
      down: -3,
    })
  })
})
