import type { BudgetSource } from '#core/statistics/estimate'

/** Where doubt comes from, in the words of the bench. */
export const BUDGET_NAMES: Record<BudgetSource, string> = {
  replicates: 'Scatter between runs',
  'run-repeatability': 'Pump’s own unevenness',
  reading: 'Reading the level',
  'roller-pulse': 'Roller pulses',
  timer: 'Starting and stopping by hand',
  'cylinder-tolerance': 'Cylinder tolerance',
  'tube-factor': 'Tube standing in the cylinder',
  density: 'Density',
  scale: 'Scale',
  flow: 'Flow',
  'dose-seconds': 'Seconds per rack',
  'rinse-volume': 'Rinse water per rack',
  strength: 'Product strength',
  racks: 'Racks counted',
  charges: 'Drain-and-fills',
  priming: 'Priming at container changes',
  price: 'Price',
  'tank-volume': 'Tank volume',
  'kit-factor': 'Test kit',
  'step-width': 'Step of the strip',
  count: 'Counting',
  'tank-above': 'Strength of the second tank',
}
