import type { SiteCheck } from '#core/records/index'

/** A condition that is not in order, as advice to whoever can put it right. */
export const NOT_IN_ORDER: Record<SiteCheck, string> = {
  'supply-pressure': 'Bring the supply pressure at the machine into its range.',
  'rinse-pressure': 'Bring the final-rinse pressure inside the data plate.',
  'rinse-temperature': 'Bring the final rinse up to the temperature on the data plate.',
  'wash-temperature': 'Bring the wash water up to the temperature on the data plate.',
  'drain-air-gap': 'Make an air gap at the drain.',
  'drain-loop': 'Put the anti-siphon loop of the drain hose back.',
  'containers-low': 'Keep the containers on the floor, close by and below the pumps.',
  'pick-up-and-cap':
    'Pick-up tube to the bottom, foot valve clean, cap vented, each colour in its own container.',
  'primed-after-change': 'Prime the line after every container change.',
  'tubes-as-installed': 'Fit pump tubes of the size installed, not stretched, and note the date.',
  'high-limit-thermostats': 'Have the high-limit thermostats checked.',
  'power-to-nameplate': 'Have the power checked against the nameplate.',
  'rack-signal': 'See to the rack signal: every rack must reach the dispenser once.',
  'tank-level': 'Mend water level, drain seat or overflow of the tank.',
  'water-recorded': 'Have hardness and dissolved solids measured, and look at the softener’s salt.',
  'jets-and-screens': 'Clean jets and screens every day; curtains and arms in place.',
  'proof-of-delivery': 'Make it visible or audible that detergent and sanitizer are delivered.',
  'label-matches-record': 'Keep only the product on record at this pump; tell us when it changes.',
}
