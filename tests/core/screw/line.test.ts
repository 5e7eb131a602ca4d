import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { moveLine, observeLine, startLine, type Line } from '#core/screw/line'
import { normalCdf } from '#core/statistics/distributions'
import { DEAD, KNOWN_VARIANCE, LEARNING, NORMAL_MEAN } from '#tests/references/screw'

const asFound = (): Line =>
  observeLine(
    startLine(LEARNING.found, LEARNING.standard, LEARNING.priorGain, LEARNING.priorStandard),
    LEARNING.found,
    LEARNING.standard,
  )

describe('the Bayesian line of one screw', () => {
  it('repeats the derived worked example step by step, to twelve digits', () => {
    let line = asFound()
    let at = 0
    for (const step of LEARNING.steps) {
      const moved = moveLine(line, step.to - at, 0)
      const standard = Math.sqrt(moved.flowVariance + LEARNING.standard ** 2)
      expect(moved.flow).toBeCloseTo(step.predicted, 11)
      expect(standard).toBeCloseTo(step.predictedStandard, 11)
      expect((step.measured - moved.flow) / standard).toBeCloseTo(step.z, 11)
      line = observeLine(moved, step.measured, LEARNING.standard)
      at = step.to
      expect(line.gain).toBeCloseTo(step.gain, 11)
      expect(Math.sqrt(line.gainVariance)).toBeCloseTo(step.gainStandard, 11)
      expect(line.flow - line.gain * at).toBeCloseTo(step.flowAtStart, 11)
      if (step.wantedNext !== null)
        expect((LEARNING.target - line.flow) / line.gain).toBeCloseTo(step.wantedNext, 11)
    }
    expect(line.gain / 16).toBeCloseTo(LEARNING.halfAnEighth, 11)
  })

  it('repeats the derived example of a dead screw: suspicious after one half turn, plain after two', () => {
    let line = asFound()
    let at = 0
    for (const step of DEAD) {
      line = observeLine(moveLine(line, step.to - at, 0), step.measured, LEARNING.standard)
      at = step.to
      const spread = Math.sqrt(line.gainVariance)
      expect(line.gain).toBeCloseTo(step.gain, 11)
      expect(spread).toBeCloseTo(step.gainStandard, 11)
      expect(normalCdf((0.2 * LEARNING.priorGain - line.gain) / spread)).toBeCloseTo(step.lowGainChance, 9)
    }
  })

  it('meets the exact fractions of a line with known variance', () => {
    let line: Line = { flow: 0, gain: 0, flowVariance: 1, gainVariance: 1, covariance: 0 }
    KNOWN_VARIANCE.x.forEach((_, i) => {
      line = observeLine(i === 0 ? line : moveLine(line, 1, 0), KNOWN_VARIANCE.y[i] ?? 0, 1)
    })
    const home = moveLine(line, -2, 0)
    expect(home.flow).toBeCloseTo(KNOWN_VARIANCE.level, 13)
    expect(home.gain).toBeCloseTo(KNOWN_VARIANCE.slope, 13)
    expect(home.flowVariance).toBeCloseTo(KNOWN_VARIANCE.levelVariance, 13)
    expect(home.covariance).toBeCloseTo(KNOWN_VARIANCE.covariance, 13)
    expect(home.gainVariance).toBeCloseTo(KNOWN_VARIANCE.slopeVariance, 13)
    const at3 = moveLine(line, 1, 0)
    expect(at3.flow).toBeCloseTo(KNOWN_VARIANCE.at3.mean, 13)
    expect(at3.flowVariance + 1).toBeCloseTo(KNOWN_VARIANCE.at3.variance, 13)
  })

  it.each(NORMAL_MEAN)('meets the exact fractions of a flow alone, from $mean +- sqrt $variance', (row) => {
    let line: Line = { flow: row.mean, gain: 0, flowVariance: row.variance, gainVariance: 0, covariance: 0 }
    for (const seen of row.seen) line = observeLine(line, seen, Math.sqrt(row.seenVariance))
    expect(line.flow).toBeCloseTo(row.after.mean, 13)
    expect(line.flowVariance).toBeCloseTo(row.after.variance, 13)
    expect(line.gain).toBe(0)
  })

  it('a bend makes the forecast less sure and never moves it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 4, noNaN: true }),
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        (turns, bend) => {
          const straight = moveLine(asFound(), turns, 0)
          const bent = moveLine(asFound(), turns, bend)
          expect(bent.flow).toBe(straight.flow)
          expect(bent.flowVariance).toBeGreaterThanOrEqual(straight.flowVariance)
          expect(bent.flowVariance * bent.gainVariance).toBeGreaterThanOrEqual(bent.covariance ** 2)
        },
      ),
    )
  })
})
