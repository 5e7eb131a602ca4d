/**
 * Derived worked examples of the screw learner, worked by script outside this project and printed in full; not
 * published. Target 24.0 mL/min, as-found 15.0, prior gain 8 +- 4 mL/min per turn, standard uncertainty of a flow 0.30,
 * no view of the flow beforehand (variance 1e4), gain taken as straight.
 */
export const LEARNING = {
  target: 24,
  found: 15,
  priorGain: 8,
  priorStandard: 4,
  standard: 0.3,
  steps: [
    {
      to: 0.5,
      measured: 20.1,
      predicted: 19,
      predictedStandard: 2.0445046319360105,
      flowAtStart: 15.023684001959914,
      gain: 10.105263565848583,
      gainStandard: 0.8300555694493987,
      z: 0.5380276389779437,
      wantedNext: 0.38828123477908577,
    },
    {
      to: 0.875,
      measured: 23.6,
      predicted: 23.865789622077422,
      predictedStandard: 0.6357187769866232,
      flowAtStart: 15.064890274759842,
      gain: 9.822057157606093,
      gainStandard: 0.4797430448826282,
      z: -0.41809308093319586,
      wantedNext: null,
    },
  ],
  residual: 0.4,
  halfAnEighth: 0.6138785723503808,
} as const

/** The same start, and a screw that does not act: +1/2 turn shows 15.2, another +1/2 turn 15.1. Chance: gain under 1.6. */
export const DEAD = [
  {
    to: 0.5,
    measured: 15.2,
    gain: 0.7272713179776327,
    gainStandard: 0.8300555694493987,
    lowGainChance: 0.8534648252760209,
  },
  {
    to: 1,
    measured: 15.1,
    gain: 0.18788633326210236,
    gainStandard: 0.4218965936583487,
    lowGainChance: 0.999591633931884,
  },
] as const

/**
 * Bayesian line with known variance 1, prior N(0, I) on level and slope, x = 0, 1, 2 and y = 1, 3, 4: exact fractions,
 * derived by hand.
 */
export const KNOWN_VARIANCE = {
  x: [0, 1, 2],
  y: [1, 3, 4],
  level: 1,
  slope: 4 / 3,
  levelVariance: 2 / 5,
  covariance: -1 / 5,
  slopeVariance: 4 / 15,
  at3: { mean: 5, variance: 13 / 5 },
} as const

/** A normal mean with known variance of what is seen: exact fractions, derived by hand from the conjugate rule. */
export const NORMAL_MEAN = [
  { mean: 10, variance: 4, seen: [12], seenVariance: 1, after: { mean: 58 / 5, variance: 4 / 5 } },
  {
    mean: 1,
    variance: 1 / 100,
    seen: [1.1, 1.2, 1],
    seenVariance: 1 / 25,
    after: { mean: 73 / 70, variance: 1 / 175 },
  },
] as const
