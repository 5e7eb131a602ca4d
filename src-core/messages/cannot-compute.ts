import type { CannotCompute } from '../problem'

export const CANNOT_COMPUTE: { readonly [K in CannotCompute]: string } = {
  'no-scatter':
    'All readings are the same, so they say nothing about how far they can be trusted. Read finer steps.',
  singular: 'The readings lie too close together to tell two effects apart. Add one at another setting.',
  'unreachable-precision':
    'No number of seconds reaches the precision wanted with these runs. Make more runs, or use a finer cylinder.',
  'no-water': 'Without rinse water there is no strength to work out. Enter the final-rinse water per rack.',
  'no-overflow': 'Without fresh water the tank never settles. Enter the final-rinse water per rack.',
  'more-arrives':
    'The second tank alone brings more than this tank should hold. Lower its target, or raise this one.',
  'outside-valid-range':
    'The numbers lie outside the range this rule holds for. Check the entries and their units.',
  'no-spread-in-x':
    'All readings were taken at one setting or on one day, so no trend shows. Add one at another.',
  'zero-flow':
    'The pump delivered nothing. Look for air, a closed cap or an empty container, then test again.',
  'probe-controlled':
    'A probe holds this strength, not the seconds. Titrate at the machine, then set the controller.',
  'no-initial-charge':
    'This machine drops its water every cycle, so there is no initial charge to set. Set the dose per rack.',
  'not-predicted':
    'Soil eats chlorine in a wash tank, so dilution cannot predict it. Measure it with a strip or a kit.',
}
