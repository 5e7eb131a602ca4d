import type { Distrust } from './types'

/** What to say about a disagreement: which side to doubt and what to do next. */
export const DISTRUST_WORDS: { readonly [D in Distrust]: string } = {
  'tank-not-settled':
    'Neither yet: the tank has not washed enough racks since the fill to show its setting. Wash on, then test again.',
  'booster-not-through':
    'Neither yet: the reading lies between the dose before the change and the one after it, so the booster may still hold water from before. Wash the racks it needs, then test again.',
  'read-on-ware': 'Doubt the reading: ware reads lower than the rinse itself. Test the rinse water.',
  'strip-between-pads':
    'Doubt the strip: one more pad would agree. Repeat with a fresh strip, or with a drop kit.',
  'hardness-changed':
    'Doubt the record: hardness changes with the supply and with the softener. Measure once more, and enter what you find as the hardness of this site.',
  'product-aged':
    'Doubt the recorded strength: the product may have weakened in store. Titrate it, and enter what you find.',
  'water-not-subtracted':
    'Doubt the reading: the water’s own alkalinity counts as detergent. Titrate the plain water and enter it as the blank.',
  'soil-or-leak':
    'Doubt the prediction: soil uses detergent up, and a leak or a stuck fill valve washes it out. Look at the drain seat and the level.',
  'rinse-volume-unsure':
    'Doubt the prediction: the rinse water per rack is its weakest figure. Catch or meter one rack’s water.',
  'reading-less-certain': 'Doubt the reading: it is the less certain of the two. Repeat it with a finer kit.',
  'prediction-less-certain':
    'Doubt the prediction: it is the less certain of the two. Make more runs, and measure the rinse water.',
}
