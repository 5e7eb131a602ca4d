import type { MissingInput } from '../problem'

/** What is missing, and what to do about it: "<name> is missing: <action>." */
export const MISSING: { readonly [K in MissingInput]: readonly [name: string, action: string] } = {
  product: ['The product', 'choose what this pump feeds in the set-up'],
  density: ['The density', 'enter it with the product, from its data sheet'],
  strength: ['The strength', 'enter it with the product, from its label or your own test'],
  'container-size': ['The container size', 'enter it with the product'],
  price: ['The price', 'add a price row to the product'],
  'rinse-volume': ['The final-rinse water per rack', 'measure it, or take it from the data plate'],
  'dose-seconds': ['The seconds per rack', 'time the pump over one rack and enter it in the set-up'],
  window: ['The target window', 'enter it in the set-up, from the product label and the machine data plate'],
  'racks-per-day': ['The number of racks a day', 'enter it in the set-up, or two rack counter readings'],
  'tank-volume': ['The wash tank volume', 'enter it in the set-up, from the data plate'],
  'heel-volume': ['The water left in the sump', 'enter it in the set-up'],
  'booster-volume': ['The booster volume', 'enter it in the set-up, from the data plate'],
  instrument: ['The instrument', 'choose what the reading was made with'],
  graduation: ['The smallest step of the instrument', 'enter it with the instrument'],
  bore: ['The bore of the cylinder', 'enter it with the instrument, or lift the tube out for both readings'],
  'tube-diameter': [
    'The outside diameter of the tube',
    'enter it with the pump, or lift the tube out for both readings',
  ],
  runs: ['A counted run', 'time one more run'],
  history: ['An earlier visit', 'close this visit and test again at the next one'],
  'conductivity-check': [
    'A conductivity check',
    'make one, with what the plain water reads and what one g/L of product adds',
  ],
  water: ['The water analysis', 'enter it in the set-up'],
  target: ['The target', 'enter it in the set-up'],
  'stock-count': ['A stock count', 'count the containers and enter them'],
}
