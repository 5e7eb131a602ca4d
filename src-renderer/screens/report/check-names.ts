import type { SiteCheck } from '#core/records/index'

/** A condition in a few words, for a list. */
export const CHECK_NAMES: Record<SiteCheck, string> = {
  'supply-pressure': 'Supply pressure, flowing',
  'rinse-pressure': 'Final rinse pressure, flowing',
  'rinse-temperature': 'Final rinse temperature',
  'wash-temperature': 'Wash temperature',
  'drain-air-gap': 'Drain air gap',
  'drain-loop': 'Drain hose loop',
  'containers-low': 'Containers below the pumps',
  'pick-up-and-cap': 'Pick-up, foot valve, cap, colour',
  'primed-after-change': 'Primed after container change',
  'tubes-as-installed': 'Pump tubes as installed',
  'high-limit-thermostats': 'High-limit thermostats',
  'power-to-nameplate': 'Power to nameplate',
  'rack-signal': 'Rack signal',
  'tank-level': 'Tank level, drain seat, overflow',
  'water-recorded': 'Hardness, solids, softener salt',
  'jets-and-screens': 'Jets, screens, curtains, arms',
  'proof-of-delivery': 'Proof of delivery',
  'label-matches-record': 'Label matches record',
}
