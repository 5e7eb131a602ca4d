import type { EvidenceId } from './evidence'

/** The faults an operator picks from by picture, and the observation each stands for. */
export const PICTURES = {
  'clear-spots': 'clear-spots',
  'white-film': 'white-film',
  streaks: 'foam-or-streaks',
  rainbow: 'iridescent',
  foam: 'foam-or-streaks',
  'food-soil': 'food-soil',
  'lip-marks': 'rim-marks',
  grey: 'matte-permanent',
} as const satisfies Record<string, EvidenceId>

export type PictureId = keyof typeof PICTURES

export const PICTURE_IDS = Object.keys(PICTURES) as readonly PictureId[]

export const isPicture = (text: string): text is PictureId => Object.hasOwn(PICTURES, text)
