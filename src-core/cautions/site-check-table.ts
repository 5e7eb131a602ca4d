import type { SiteCheck } from '../records'

/** What never changes about one site condition; the machine decides whether it applies and which figure is shown. */
export interface SiteCheckText {
  readonly question: string
  /** what it does to the dose, or to the people */
  readonly why: string
  /** a `not ok` refuses an adjustment */
  readonly blocks: boolean
  readonly who: 'rep' | 'technician'
  readonly basis: string
}

const PRACTICE = 'Common practice, no source'

/** The conditions of a machine before any pump is adjusted, in the order they are best walked through. */
export const SITE_CHECKS: { readonly [C in SiteCheck]: SiteCheckText } = {
  'supply-pressure': {
    question: 'Is the flowing supply pressure at the machine inside its range?',
    why: 'It sets how much water the tank and the rinse get. Concentration is dose over water.',
    blocks: true,
    who: 'rep',
    basis: PRACTICE,
  },
  'rinse-pressure': {
    question: 'Is the flowing pressure of the final rinse inside the data plate?',
    why: 'Rinse water goes as the square root of the pressure: from 20 down to 15 psi every concentration rises by about 15 % with no change at the pump.',
    blocks: true,
    who: 'rep',
    basis: 'Food Code 4-501.113 as adopted by states; 20 psi from a county page; the data plate comes first',
  },
  'rinse-temperature': {
    question: 'Is the final rinse as hot as the data plate asks?',
    why: 'A cool rinse leaves ware wet and unsanitized. More rinse aid does not make up for it.',
    blocks: true,
    who: 'rep',
    basis: 'Food Code 4-501.112 as adopted by states; the data plate comes first',
  },
  'wash-temperature': {
    question: 'Is the wash water as hot as the data plate asks?',
    why: 'Detergent works and foam stays down only in the range it was made for.',
    blocks: false,
    who: 'rep',
    basis: 'Food Code 4-501.110 as adopted by states; the data plate comes first',
  },
  'drain-air-gap': {
    question: 'Is there an air gap at the drain?',
    why: 'A drain that backs up changes the tank level, and with it the strength. It is also the hygiene of the site.',
    blocks: true,
    who: 'rep',
    basis:
      'Twice the opening, not less than one inch: a state plumbing code, and Food Code 5-202.13 for water inlets; local code governs',
  },
  'drain-loop': {
    question: 'Is the anti-siphon loop of the drain hose in place?',
    why: 'A siphoning drain empties the tank, and the recharge never ends.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
  'containers-low': {
    question: 'Do the containers stand on the floor, close by and below the pumps?',
    why: 'A raised container siphons through a worn tube; a long lift starves the pump.',
    blocks: true,
    who: 'rep',
    basis: `${PRACTICE}; a drinking-water rule asks the same of feed pumps`,
  },
  'pick-up-and-cap': {
    question:
      'Pick-up tube at the bottom, foot valve clean, cap vented, right colour in the right container?',
    why: 'Air and vacuum starve the pump. A swapped tube brings acid and chlorine together.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
  'primed-after-change': {
    question: 'Were the tubes primed after the last container change?',
    why: 'With air in the line the first racks get nothing, and a test reads low. Prime until no bubble passes, then about one minute more.',
    blocks: true,
    who: 'rep',
    basis: PRACTICE,
  },
  'tubes-as-installed': {
    question: 'Is each pump tube of the size installed, not stretched, and its date known?',
    why: 'A tube fitted stretched gave between 71 and 89 % of its flow in one published trial.',
    blocks: false,
    who: 'rep',
    basis: 'A hospital-pharmacy trial of finger pumps (2018), abstract; common practice',
  },
  'high-limit-thermostats': {
    question: 'Were the high-limit thermostats checked after shipping?',
    why: 'A tripped one gives no heat and no drying. That is not a dosing fault.',
    blocks: false,
    who: 'technician',
    basis: PRACTICE,
  },
  'power-to-nameplate': {
    question: 'Does the power agree with the nameplate: volts, phase, fuse, earth?',
    why: 'Pump speed can follow the voltage, and a tripping fuse stops the dose.',
    blocks: false,
    who: 'technician',
    basis: PRACTICE,
  },
  'rack-signal': {
    question: 'Does every rack reach the dispenser as one signal?',
    why: 'Recharge follows the signal, not the rack: door flaps overfeed, lost signals starve.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
  'tank-level': {
    question: 'Is the water level right, the drain seat tight, the overflow free?',
    why: 'A leak takes detergent with it; the strength then settles lower than any setting says.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
  'water-recorded': {
    question: 'Are hardness and dissolved solids written down, and the softener’s salt?',
    why: 'They decide what dries on the glass, and how much of the product the water eats.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
  'jets-and-screens': {
    question: 'Are jets, screens, curtains and arms clean and in place?',
    why: 'A blocked jet changes the rinse water; a missing curtain carries wash into the rinse.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
  'proof-of-delivery': {
    question: 'Can one see or hear that detergent and sanitizer are delivered?',
    why: 'Asked for on machines installed since the code was adopted; and it tells the kitchen when a container is empty.',
    blocks: false,
    who: 'rep',
    basis: 'Food Code 4-204.117 as adopted by a state: detergents and sanitizers, not rinse aid',
  },
  'label-matches-record': {
    question: 'Do product, lot, strength and date on each label agree with the record?',
    why: 'Every concentration here is worked out from what the record says is in the container.',
    blocks: false,
    who: 'rep',
    basis: PRACTICE,
  },
}
