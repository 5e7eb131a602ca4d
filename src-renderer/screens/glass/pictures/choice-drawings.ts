import type { EvidenceId } from '#core/glass/evidence'
import type { PictureId } from '#core/glass/pictures'
import {
  bottle,
  box,
  circle,
  clock,
  cloth,
  drop,
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
  // a wet glass in its rack, drops on it, and a clock
  'dries-slowly': [
    pale(upturned(14, 14, 40, 48)),
    water(`${drop(26, 22)}${drop(40, 30)}${drop(28, 44)}${drop(44, 46)}`),
    line('M6 64h58'),
    water(`${drop(22, 66)}${drop(46, 66)}`),
    line(clock(92, 40, 18)),
  ],
  // a finger slides along a wet glass
  'feels-slippery': [
    pale(tumbler(40, 8, 40, 66)),
    water(`${drop(52, 14)}${drop(66, 24)}`),
    line('M6 58q22-2 38-14q8-4 10 2q2 5-6 10l-12 10q-12 8-30 6'),
    thin('M62 44q14-8 28-4M64 54q14-8 28-4M66 64q14-8 28-4'),
  ],
  // a glass with finger marks
  'feels-greasy': [
    pale(tumbler(36, 6, 48, 70)),
    thin(
      'M48 30q6-10 12 0v10q-6 10-12 0zM51 32q3-5 6 0v6q-3 5-6 0zM62 46q6-10 12 0v10q-6 10-12 0zM65 48q3-5 6 0v6q-3 5-6 0z',
    ),
    ink(`${circle(54, 60, 2)}${circle(70, 32, 2)}${circle(48, 20, 2)}`),
  ],
  // a beer glass full of foam, and one gone flat
  'head-collapses': [
    pale(tumbler(8, 26, 36, 50)),
    pale(`${circle(16, 24, 7)}${circle(27, 20, 8)}${circle(37, 24, 7)}`),
    line('M52 48h14M60 42l6 6l-6 6'),
    pale(tumbler(76, 26, 36, 50)),
    line('M78 36h32'),
  ],
  // a clear glass early, a spotted one late
  'worse-late': [
    pale(tumbler(6, 30, 30, 44)),
    line('M42 50h14M50 44l6 6l-6 6'),
    pale(tumbler(60, 30, 30, 44)),
    ink(`${circle(68, 40, 3)}${circle(80, 48, 3)}${circle(70, 58, 3)}${circle(80, 66, 2)}`),
    line(clock(104, 16, 12)),
  ],
  // the inside of a machine with a ragged crust
  'chalk-crust': [
    pale(box(18, 8, 84, 66)),
    line('M18 28q8-6 14 0t14-2t14 4t14-4t14 2t14 0M18 52q8 6 14 0t14 2t14-4t14 4t14-2t14 0'),
    ink(
      `${circle(30, 36, 2)}${circle(44, 44, 3)}${circle(60, 38, 2)}${circle(76, 46, 3)}${circle(90, 38, 2)}`,
    ),
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
