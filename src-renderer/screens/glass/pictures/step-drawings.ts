import type { TestId } from '#core/glass/tests'
import {
  bottle,
  box,
  circle,
  cloth,
  clock,
  cross,
  drop,
  eye,
  ink,
  lamp,
  line,
  pale,
  paper,
  tap,
  thin,
  tumbler,
  upturned,
  water,
  type Stroke,
} from './drawing'

/** Steps of each test as small drawings on a 120 x 84 ground, in the order of the steps in words. Our own. */
type Drawing = readonly Stroke[]

const SINK: Drawing = [pale('M14 58h92v6q0 14-14 14H28q-14 0-14-14z'), line('M8 58h104')]
const MARKED = (x: number, y: number): Drawing => [
  pale(tumbler(x, y, 26, 36)),
  thin(`${circle(x + 10, y + 12, 2.5)}${circle(x + 17, y + 20, 3)}${circle(x + 11, y + 27, 2)}`),
]
const CLEAR = (x: number, y: number): Drawing => [
  pale(tumbler(x, y, 26, 36)),
  thin(`M${x + 8} ${y + 6}l2 18`),
]
const GREY = (x: number, y: number): Drawing => [
  pale(tumbler(x, y, 26, 36)),
  thin(
    `M${x + 3} ${y + 8}l18 22M${x + 3} ${y + 18}l12 15M${x + 8} ${y + 2}l15 19M${x + 15} ${y + 2}l8 10M${x + 22} ${y + 8}l-17 22M${x + 17} ${y + 3}l-13 16`,
  ),
]
const DRIP = (x: number, y: number): Drawing => [water(drop(x, y))]
const LIGHT: Drawing = [line(lamp(60, 6)), ...MARKED(28, 44), ...CLEAR(66, 44)]
const BLEACH_AWAY: Drawing = [pale(bottle(86, 10)), line('M90 34h14M90 40h14'), cross(97, 32, 17)]
const VINEGAR: Drawing = [pale(bottle(6, 12)), line('M10 38l4 8l4-8')]

const HALF_WIPED: Drawing = [
  pale(tumbler(44, 12, 32, 54)),
  thin(`${circle(54, 26, 3)}${circle(53, 40, 3)}${circle(55, 54, 2)}M60 14v50`),
  pale(cloth(64, 30)),
]

export const STEP_DRAWINGS: Readonly<Record<TestId, readonly Drawing[]>> = {
  round: [
    [pale(bottle(28, 20)), line('M38 20V8q0-4 4-4h36v16'), thin('M36 46v14M42 46v14')],
    [pale(box(30, 22, 60, 50)), line('M30 34h60'), thin('M38 62l6-10l8 8l8-12l8 12l8-6l6 8')],
    [
      pale(box(20, 12, 80, 60)),
      line('M34 24h52M34 60h52'),
      thin('M44 24v6M60 24v6M76 24v6M44 60v-6M60 60v-6M76 60v-6'),
    ],
  ],
  'close-look': [
    [
      ink(box(54, 8, 58, 68)),
      paper(tumbler(64, 20, 30, 44)),
      line(tumbler(64, 20, 30, 44)),
      line(eye(24, 42)),
    ],
    [line(lamp(26, 8)), pale('M56 30l34-14l14 34l-34 16z'), thin('M66 34l24-10M72 48l22-9')],
    [...CLEAR(28, 26), ...GREY(66, 26)],
  ],
  gauges: [
    [pale(box(26, 10, 68, 64)), line('M40 66h40M60 22v32M48 44l12 12l12-12')],
    [
      line(`${circle(38, 42, 22)}M38 42l12-12`),
      line(`${circle(86, 42, 22)}M86 42l-9-13`),
      thin('M20 42h5M51 42h5M68 42h5M99 42h5'),
    ],
    [
      pale(box(22, 16, 76, 52)),
      line('M32 30h40M32 42h56M32 54h30'),
      thin(`${circle(27, 21, 2)}${circle(93, 21, 2)}${circle(27, 63, 2)}${circle(93, 63, 2)}`),
    ],
  ],
  'water-wipe': [
    [...SINK, ...MARKED(46, 16)],
    [pale(cloth(40, 42)), ...DRIP(50, 12), ...DRIP(60, 20), ...DRIP(70, 12)],
    HALF_WIPED,
    LIGHT,
  ],
  'acid-wipe': [
    [...SINK, ...MARKED(40, 16), ...BLEACH_AWAY],
    [...VINEGAR, ...HALF_WIPED.map((stroke) => stroke), line(clock(100, 18, 12))],
    [...SINK, line(tap(36, 16)), water('M60 36v22h4v-22z'), pale(upturned(50, 44, 26, 26))],
    [pale(cloth(10, 34)), ...CLEAR(46, 34), line(lamp(96, 10))],
  ],
  pin: [
    [line('M6 72h108'), ...GREY(46, 34)],
    [
      pale(tumbler(40, 14, 34, 56)),
      thin('M46 26l22 30M46 38l16 22M52 20l18 24'),
      line('M112 20L66 42'),
      ink(circle(112, 20, 4)),
    ],
    [
      line(lamp(26, 8)),
      pale(tumbler(56, 14, 34, 56)),
      thin('M62 26l22 30M62 38l16 22'),
      line('M64 50l20-12'),
      line(eye(26, 62)),
    ],
  ],
  'wet-glass': [
    [
      water('M20 52h80v20q0 6-6 6H26q-6 0-6-6z'),
      line('M20 44v28q0 6 6 6h68q6 0 6-6V44'),
      pale(upturned(46, 14, 28, 40)),
    ],
    [
      pale(upturned(20, 12, 30, 48)),
      thin(`${circle(30, 28, 3)}${circle(38, 40, 3)}${circle(31, 48, 2)}`),
      pale(upturned(70, 12, 30, 48)),
      water('M74 24h22l2 30H72z'),
    ],
    [
      pale(box(70, 8, 22, 30)),
      line('M70 16h22'),
      ink(`${circle(66, 44, 1.5)}${circle(60, 52, 1.5)}${circle(54, 46, 1.5)}${circle(58, 60, 1.5)}`),
      line(tumbler(34, 30, 38, 46)),
    ],
  ],
  strips: [
    [pale(upturned(44, 6, 30, 40)), ...DRIP(52, 50), ...DRIP(64, 54), line('M36 68h46v10h-46z')],
    [
      pale(box(30, 10, 14, 62)),
      ink(box(32, 12, 10, 12)),
      pale(box(66, 14, 30, 56)),
      thin('M66 28h30M66 42h30M66 56h30'),
    ],
    [
      pale(box(40, 6, 14, 50)),
      ink(box(42, 42, 10, 12)),
      water('M26 58h66v14q0 4-4 4H30q-4 0-4-4z'),
      line('M26 50v22q0 4 4 4h58q4 0 4-4V50'),
    ],
  ],
  'water-meters': [
    [
      line('M40 26h44l-4 44q0 6-6 6H50q-6 0-6-6z'),
      water('M42 42h40l-3 30q-1 3-5 3H50q-4 0-5-3z'),
      ...DRIP(62, 4),
    ],
    [
      pale(box(24, 10, 26, 52)),
      line('M28 16h18v12h-18z'),
      thin('M33 62v12M41 62v12'),
      pale(box(76, 12, 14, 60)),
      thin('M76 28h14M76 40h14M76 52h14'),
    ],
  ],
  'new-glass': [
    [pale(upturned(44, 22, 32, 46)), line('M52 16l16 0'), ink(circle(60, 26, 4)), line('M96 6L66 24')],
    [
      pale(box(10, 30, 76, 42)),
      ...[16, 34, 52].map((x) => pale(upturned(x, 38, 16, 26))),
      line('M92 34a18 18 0 1 1-2 28M90 62l-2-10M90 62l10-2'),
    ],
    [...CLEAR(20, 36), ...GREY(74, 36), line(lamp(60, 4))],
  ],
  measured: [
    [pale('M34 8h52q6 0 6 6v56q0 6-6 6H34q-6 0-6-6V14q0-6 6-6z'), line('M44 30h32M44 42h32M44 54h20')],
    [line('M28 72V20M28 72h70'), ink(box(40, 40, 14, 32)), pale(box(66, 26, 14, 46)), thin('M34 34h60')],
  ],
}
