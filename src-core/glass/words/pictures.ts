import type { PictureId } from '../pictures'
import type { NoticedId } from '../signs'

export const PICTURE_WORDS: Readonly<Record<PictureId, { readonly name: string; readonly hint: string }>> = {
  'clear-spots': { name: 'Clear spots', hint: 'Small rings where drops dried.' },
  'white-film': { name: 'White film', hint: 'Cloudy or chalky.' },
  streaks: { name: 'Streaks', hint: 'Lines that run down.' },
  rainbow: { name: 'Rainbow or blue shine', hint: 'Seen when you tilt it.' },
  foam: { name: 'Foam', hint: 'Suds on the glass or in the machine.' },
  'food-soil': { name: 'Food left on', hint: 'Bits, or a milky coat.' },
  'lip-marks': { name: 'Marks at the rim', hint: 'Lipstick or grease.' },
  grey: { name: 'Grey that stays', hint: 'Dull, and worst on old glasses.' },
}

export const NOTICED_WORDS: Readonly<Record<NoticedId, string>> = {
  'dries-slowly': 'Glasses come out wet and dry slowly',
  'feels-slippery': 'A wet glass feels slippery',
  'feels-greasy': 'A dry glass feels greasy',
  'head-collapses': 'Beer loses its head fast',
  'worse-late': 'It gets worse during the shift',
  'chalk-crust': 'There is a white crust in the machine',
  towelled: 'We dry with a towel, stack wet, or use a flat mat',
}

export const WARE_WORDS = {
  glass: 'Glasses',
  cutlery: 'Knives and forks',
  plates: 'Plates and cups',
} as const

export const SPREAD_WORDS = {
  all: 'All over the rack',
  'one-zone': 'Mostly one part of the rack',
  unknown: 'I do not know',
} as const

export const SINCE_WORDS = {
  new: 'It began in the last few days',
  weeks: 'It came on over weeks',
  unknown: 'I do not know',
} as const
