import type { EvidenceId } from '#core/glass/evidence'
import type { PictureId } from '#core/glass/pictures'
import {
  bottle,
  box,
  circle,
  cloth,
  ink,
  line,
  pale,
  thin,
  tumbler,
  upturned,
  water,
  type Stroke,
} from './drawing'

/** Pictures of the things an operator ticks: a fault picture, or a drawing of the place. */
export const CHOICE_FAULTS: Readonly<Partial<Record<EvidenceId, PictureId>>> = {
  iridescent: 'rainbow',
  'foam-or-streaks': 'streaks',
  'rim-marks': 'lip-marks',
  'matte-permanent': 'grey',
}

export const CHOICE_DRAWINGS: Readonly<Partial<Record<EvidenceId, readonly Stroke[]>>> = {
  // an empty bottle, and a tube with bubbles in it
  'ra-supply-out': [
    pale(bottle(14, 22)),
    water('M17 62h20v2H17z'),
    line('M25 56V14q0-6 6-6h46q8 0 8 8v52M31 60V18h46v50'),
    thin(`${circle(46, 13, 3)}${circle(60, 13, 3)}${circle(81, 34, 3)}${circle(81, 50, 3)}`),
  ],
  // a salt bin with a grain or two, and a lit lamp
  'softener-empty': [
    pale(box(24, 18, 56, 58)),
    line('M24 32h56'),
    ink(`${circle(38, 70, 2)}${circle(52, 71, 2)}${circle(62, 69, 2)}`),
    line(`${circle(98, 24, 7)}M98 10v-4M110 24h5M106 14l4-4M90 14l-4-4`),
  ],
  // a spray arm: two holes clear, the rest crusted
  'jets-blocked': [
    pale(box(10, 46, 100, 16)),
    ink(`${circle(42, 54, 5)}${circle(62, 54, 5)}${circle(82, 54, 5)}`),
    thin('M22 44V20M22 44l-7-20M22 44l7-20M98 44V20M98 44l-7-20M98 44l7-20'),
    line('M34 44q8-8 16 0q8-9 16 0q10-9 24 0'),
  ],
  // a tank with lumps and a scum line
  'racks-many': [
    line('M14 18v52q0 6 6 6h80q6 0 6-6V18'),
    water('M16 34h88v36q0 4-4 4H20q-4 0-4-4z'),
    line('M16 34q11-6 22 0t22 0t22 0t22 0'),
    ink(
      `${circle(34, 50, 5)}${circle(58, 60, 4)}${circle(80, 48, 6)}${circle(92, 64, 3)}${circle(46, 42, 2)}`,
    ),
  ],
  // a towel in a glass, and two glasses stacked
  towelled: [
    pale(tumbler(14, 34, 34, 42)),
    pale(cloth(22, 14)),
    pale(upturned(72, 8, 30, 34)),
    pale(upturned(70, 36, 34, 38)),
    line('M62 76h50'),
  ],
  // needle at the low end of a heat gauge
  'rinse-cool': [
    line(circle(60, 42, 34)),
    line('M60 42L36 58'),
    thin('M30 42h6M60 12v6M84 42h6M39 21l4 4M81 21l-4 4'),
    ink('M92 66q-5 8 0 12q5-4 0-12z'),
  ],
  // needle at the high end, with arrows both ways
  'pressure-bad': [
    line(circle(60, 42, 34)),
    line('M60 42L84 58'),
    thin('M30 42h6M60 12v6M84 42h6M39 21l4 4M81 21l-4 4'),
    line('M8 20v-12l-5 6M8 8l5 6M112 8v12l-5-6M112 20l5-6'),
  ],
}
