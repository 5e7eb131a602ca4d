import type { BudgetSource } from '../statistics/estimate'

/** Causes of doubt as they stand inside a sentence. */
export const SOURCE_NAMES: Readonly<Record<BudgetSource, string>> = {
  replicates: 'the scatter between runs',
  'run-repeatability': 'the pump’s own unevenness',
  reading: 'reading the level',
  'roller-pulse': 'the roller pulses',
  timer: 'starting and stopping by hand',
  'cylinder-tolerance': 'the cylinder',
  'tube-factor': 'the tube standing in the cylinder',
  density: 'the density',
  scale: 'the scale',
  flow: 'the flow',
  'dose-seconds': 'the seconds per rack',
  'rinse-volume': 'the rinse water per rack',
  strength: 'the strength of the product',
  racks: 'the count of racks',
  charges: 'the drain-and-fills',
  priming: 'the priming at container changes',
  price: 'the price',
  'tank-volume': 'the tank volume',
  'kit-factor': 'the test kit',
  'step-width': 'the step of the strip',
  count: 'the counting',
  'tank-above': 'the strength of the second tank',
}
