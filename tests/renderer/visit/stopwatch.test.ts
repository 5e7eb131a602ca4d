import * as fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { face, left } from '#renderer/screens/visit/watch/face.ts'
import {
  begin,
  doubtOf,
  elapsed,
  readRunning,
  takeUp,
  withSeen,
} from '#renderer/screens/visit/watch/running.ts'
import { Stopwatch, type Keep, type Timed } from '#renderer/screens/visit/watch/stopwatch.svelte.ts'

/** A computer with a steady clock, a clock on the wall, and one page at a time. */
class Computer {
  #now = 1_773_065_100_000
  #wallShift = 0
  #asleep = 0
  readonly kept = new Map<string, string>()
  readonly keep: Keep = {
    getItem: (key) => this.kept.get(key) ?? null,
    setItem: (key, value) => void this.kept.set(key, value),
    removeItem: (key) => void this.kept.delete(key),
  }
  /** a page's steady clock starts from the wall clock at the moment it opens */
  openPage() {
    const origin = this.#now + this.#wallShift
    const from = this.#now - this.#asleep
    return {
      steady: () => origin + (this.#now - this.#asleep - from),
      wall: () => this.#now + this.#wallShift,
    }
  }
  wait(seconds: number): void {
    this.#now += seconds * 1000
  }
  sleep(seconds: number): void {
    this.#now += seconds * 1000
    this.#asleep += seconds * 1000
  }
  setClock(seconds: number): void {
    this.#wallShift += seconds * 1000
  }
}

const timedBy = (work: (computer: Computer) => void): Timed => {
  const computer = new Computer()
  const watch = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
  watch.start('pump')
  work(computer)
  const timed = watch.stop()
  if (timed === null) throw new Error('did not run')
  return timed
}

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

describe('a stopwatch', () => {
  it('shows the seconds that went by, whatever the timers of the page did', () => {
    expect(timedBy((computer) => computer.wait(61.25))).toMatchObject({
      seconds: 61.25,
      doubt: null,
      away: 0,
    })
  })

  it('does not care when the clock is set back', () => {
    const timed = timedBy((computer) => {
      computer.wait(30)
      computer.setClock(-3600)
      computer.wait(30)
    })
    expect(timed).toMatchObject({ seconds: 60, doubt: null })
  })

  it('asks when the clock was set forward or the computer slept: it cannot tell which', () => {
    const forward = timedBy((computer) => {
      computer.wait(60)
      computer.setClock(15)
    })
    expect(forward.doubt).toEqual({ steady: 60, wall: 75 })
    const slept = timedBy((computer) => {
      computer.wait(60)
      computer.sleep(15)
    })
    expect(slept.doubt).toEqual({ steady: 60, wall: 75 })
  })

  it('turns laps into the times between them', () => {
    const computer = new Computer()
    const watch = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
    watch.start('pump')
    computer.wait(60)
    expect(watch.lap()?.seconds).toBe(60)
    computer.wait(58.5)
    expect(watch.lap()?.seconds).toBe(58.5)
    computer.wait(10)
    expect(watch.stop()?.seconds).toBe(10)
    expect(watch.running).toBe(false)
  })

  it('goes on across a reload and says how long the page was away', () => {
    const computer = new Computer()
    const first = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
    first.start('pump')
    computer.wait(20)
    first.release()
    computer.wait(2)
    const second = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
    expect(second.of).toBe('pump')
    computer.wait(38)
    expect(second.stop()).toMatchObject({ seconds: 60, doubt: null, away: 2 })
    expect(computer.kept.size).toBe(0)
  })

  it('still asks after a reload when the clock was set forward before it', () => {
    const computer = new Computer()
    const first = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
    first.start('pump')
    computer.wait(20)
    computer.setClock(100)
    first.release()
    const second = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
    computer.wait(40)
    expect(second.stop()).toMatchObject({ seconds: 60, doubt: { steady: 60, wall: 160 } })
  })

  it('forgets a watch that was left for hours, and one from the future', () => {
    for (const away of [3 * 3600, -60]) {
      const computer = new Computer()
      const first = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
      first.start('pump')
      first.release()
      computer.wait(1)
      computer.setClock(away)
      const second = new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() })
      expect(second.running).toBe(false)
      expect(computer.kept.size).toBe(0)
    }
  })

  it('is not upset by anything it finds in its keep', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
        const computer = new Computer()
        computer.kept.set('w', text)
        expect(readRunning(text)).toBeNull()
        expect(new Stopwatch({ key: 'w', keep: computer.keep, clock: computer.openPage() }).running).toBe(
          false,
        )
      }),
    )
  })
})

const counting = (computer: Computer, zeros: Timed[]) => {
  const watch = new Stopwatch({
    key: 'w',
    keep: computer.keep,
    clock: computer.openPage(),
    onZero: (timed) => zeros.push(timed),
  })
  watch.start('pump', 60)
  return watch
}

describe('a countdown', () => {
  it('ends by itself, as long as was asked', () => {
    const computer = new Computer()
    const zeros: Timed[] = []
    const watch = counting(computer, zeros)
    computer.wait(59.9)
    vi.advanceTimersByTime(50)
    expect(zeros).toEqual([])
    computer.wait(0.13)
    vi.advanceTimersByTime(50)
    expect(zeros).toEqual([{ of: 'pump', seconds: 60, doubt: null, away: 0 }])
    expect(watch.running).toBe(false)
    expect(watch.flashing).toBe(true)
  })

  it('goes on as a plain watch when its tone came too late to be heard', () => {
    const computer = new Computer()
    const zeros: Timed[] = []
    const watch = counting(computer, zeros)
    computer.wait(66)
    vi.advanceTimersByTime(50)
    expect(zeros).toEqual([])
    expect(watch.missedZero).toBe(true)
    expect(watch.remaining).toBeNull()
    expect(watch.stop()?.seconds).toBe(66)
  })
})

describe('the arithmetic behind it', () => {
  it('adds up over any number of reloads, and never goes back', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 12 }), (spans) => {
        const computer = new Computer()
        let clock = computer.openPage()
        let running = begin(clock, 'pump', null)
        for (const span of spans) {
          computer.wait(span)
          running = withSeen(running, clock)
          clock = computer.openPage()
          const taken = takeUp(running, clock)
          if (taken === null) throw new Error('forgotten')
          running = taken
        }
        const total = spans.reduce((sum, span) => sum + span, 0)
        expect(elapsed(running, clock)).toBeCloseTo(total, 2)
        expect(doubtOf(running, clock)).toBeNull()
      }),
    )
  })

  it('shows tenths cut off, and whole seconds left rounded up', () => {
    expect([0, 7.49, 60, 725.06].map(face)).toEqual(['0:00.0', '0:07.4', '1:00.0', '12:05.0'])
    expect([60, 59.2, 0.1, 0].map(left)).toEqual(['1:00', '1:00', '0:01', '0:00'])
  })
})
