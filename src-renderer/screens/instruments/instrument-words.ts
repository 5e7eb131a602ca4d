import type { InstrumentKind } from '#core/records/index'
import type { Measured } from '../../fields/units-for'

interface KindWords {
  readonly name: string
  /** what its reading is in; null when it is a plain number */
  readonly reads: Measured | null
  readonly capacity: string | null
  readonly graduation: string | null
}

const KINDS: Readonly<Record<InstrumentKind, KindWords>> = {
  cylinder: {
    name: 'Cylinder',
    reads: 'caught',
    capacity: 'Holds, at the top mark',
    graduation: 'Smallest mark',
  },
  cup: {
    name: 'Measuring cup',
    reads: 'caught',
    capacity: 'Holds, at the top mark',
    graduation: 'Smallest mark',
  },
  scale: { name: 'Scale', reads: 'weighed', capacity: 'Weighs up to', graduation: 'Smallest step shown' },
  timer: { name: 'Timer', reads: 'seconds', capacity: null, graduation: 'Smallest step shown' },
  strip: { name: 'Test strip', reads: null, capacity: null, graduation: null },
  'titration-kit': { name: 'Titration kit', reads: null, capacity: null, graduation: null },
  thermometer: {
    name: 'Thermometer',
    reads: 'temperature',
    capacity: null,
    graduation: 'Smallest step shown',
  },
  'pressure-gauge': {
    name: 'Pressure gauge',
    reads: 'pressure',
    capacity: 'Reads up to',
    graduation: 'Smallest mark',
  },
  'conductivity-meter': {
    name: 'Conductivity meter',
    reads: 'conductivity',
    capacity: null,
    graduation: 'Smallest step shown',
  },
  'pH-meter': { name: 'pH meter', reads: null, capacity: null, graduation: null },
}

export const kindWords = (kind: InstrumentKind): KindWords => KINDS[kind]
export const KIND_ORDER = Object.keys(KINDS) as readonly InstrumentKind[]
