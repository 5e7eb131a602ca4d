import type { CodeLimit, CodeLimitId, CodeLimits } from './types'

/** [id, what, bound, figures as printed, source, how]. Imperial first: the codes' own primary figures. */
type Row = readonly [
  CodeLimitId,
  string,
  'min' | 'max',
  CodeLimit['figures'],
  string,
  Exclude<CodeLimit['how'], 'settings' | 'record'>,
]

const temperature = (degF: number, degC: number): CodeLimit['figures'] => [
  { value: degF, unit: 'degF' },
  { value: degC, unit: 'degC' },
]
const active = (value: number): CodeLimit['figures'] => [{ value, unit: 'mg/L-active' }]
const seconds = (value: number): CodeLimit['figures'] => [{ value, unit: 's' }]
const pH = (value: number): CodeLimit['figures'] => [{ value, unit: 'pH' }]

/** The 2022 text was not seen; states that quote it section by section were. Its numbers are those of 2017. */
const code = (section: string): string => `FDA Food Code 2022, ${section}, as states have adopted it`
const WASH = code('4-501.110')
const RINSE = code('4-501.112')
const CHLORINE = code('4-501.114(A)')
const IODINE = code('4-501.114(B)')
const QUAT = code('4-501.114(C)')
const CONTACT = code('4-703.11(C)')

const ROWS: readonly Row[] = [
  [
    'wash-temperature-stationary-single',
    'wash water, stationary rack, one temperature',
    'min',
    temperature(165, 74),
    WASH,
    'adoption',
  ],
  [
    'wash-temperature-stationary-dual',
    'wash water, stationary rack, two temperatures',
    'min',
    temperature(150, 66),
    WASH,
    'adoption',
  ],
  [
    'wash-temperature-single-tank-conveyor',
    'wash water, conveyor with one tank',
    'min',
    temperature(160, 71),
    WASH,
    'adoption',
  ],
  [
    'wash-temperature-multi-tank-conveyor',
    'wash water, conveyor with several tanks',
    'min',
    temperature(150, 66),
    WASH,
    'adoption',
  ],
  [
    'wash-temperature-chemical',
    'wash water, spray machine that sanitizes with a chemical',
    'min',
    temperature(120, 49),
    WASH,
    'adoption',
  ],
  [
    'rinse-temperature-max',
    'sanitizing rinse at the manifold',
    'max',
    temperature(194, 90),
    RINSE,
    'adoption',
  ],
  [
    'rinse-temperature-stationary-single',
    'sanitizing rinse at the manifold, stationary rack, one temperature',
    'min',
    temperature(165, 74),
    RINSE,
    'adoption',
  ],
  [
    'rinse-temperature-other',
    'sanitizing rinse at the manifold, every other machine',
    'min',
    temperature(180, 82),
    RINSE,
    'adoption',
  ],
  [
    'rinse-pressure-min',
    'flowing pressure of the sanitizing rinse',
    'min',
    [
      { value: 5, unit: 'psi' },
      { value: 35, unit: 'kPa' },
    ],
    code('4-501.113'),
    'adoption',
  ],
  [
    'rinse-pressure-max',
    'flowing pressure of the sanitizing rinse',
    'max',
    [
      { value: 30, unit: 'psi' },
      { value: 200, unit: 'kPa' },
    ],
    code('4-501.113'),
    'adoption',
  ],
  [
    'supply-pressure-min',
    'flowing supply pressure at the machine',
    'min',
    [{ value: 25, unit: 'psi' }],
    'common practice, no source',
    'common-practice',
  ],
  [
    'supply-pressure-max',
    'flowing supply pressure at the machine',
    'max',
    [{ value: 95, unit: 'psi' }],
    'common practice, no source',
    'common-practice',
  ],
  [
    'ware-temperature-min',
    'surface of the ware, by an irreversible indicator',
    'min',
    temperature(160, 71),
    code('4-703.11(B)'),
    'adoption',
  ],
  [
    'drain-air-gap-min',
    'air gap',
    'min',
    [
      { value: 1, unit: 'in' },
      { value: 25, unit: 'mm' },
    ],
    `${code('5-202.13')}; also twice the opening`,
    'adoption',
  ],
  [
    'chlorine-low-step',
    'available chlorine, first step of the table',
    'min',
    active(25),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-low-temperature-pH-10',
    'water at the first step, pH up to 10',
    'min',
    temperature(120, 49),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-low-temperature-pH-8',
    'water at the first step, pH up to 8',
    'min',
    temperature(120, 49),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-middle-step',
    'available chlorine, second step of the table',
    'min',
    active(50),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-middle-temperature-pH-10',
    'water at the second step, pH up to 10',
    'min',
    temperature(100, 38),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-middle-temperature-pH-8',
    'water at the second step, pH up to 8',
    'min',
    temperature(75, 24),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-high-step',
    'available chlorine, third step of the table',
    'min',
    active(100),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-high-temperature-pH-10',
    'water at the third step, pH up to 10',
    'min',
    temperature(55, 13),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-high-temperature-pH-8',
    'water at the third step, pH up to 8',
    'min',
    temperature(55, 13),
    CHLORINE,
    'adoption',
  ],
  ['chlorine-pH-max', 'pH of a chlorine solution', 'max', pH(10), CHLORINE, 'adoption'],
  [
    'chlorine-pH-mild',
    'pH for the milder temperatures of the chlorine table',
    'max',
    pH(8),
    CHLORINE,
    'adoption',
  ],
  [
    'chlorine-max',
    'available chlorine left on ware without a rinse',
    'max',
    active(200),
    '40 CFR 180.940(a); the figure from memory, in agreement with county pages read',
    'memory',
  ],
  ['chlorine-contact', 'contact with a chlorine solution', 'min', seconds(10), CONTACT, 'adoption'],
  [
    'chlorine-contact-short',
    'contact at 50 mg/L with the temperatures of the second step',
    'min',
    seconds(7),
    CONTACT,
    'adoption',
  ],
  ['iodine-min', 'iodine', 'min', active(12.5), IODINE, 'adoption'],
  ['iodine-max', 'iodine', 'max', active(25), IODINE, 'adoption'],
  [
    'iodine-temperature',
    'iodine solution',
    'min',
    temperature(68, 20),
    `${IODINE}; older adoptions print 75 °F`,
    'adoption',
  ],
  [
    'iodine-pH-max',
    'pH of an iodine solution, unless its maker states a higher one as effective',
    'max',
    pH(5),
    IODINE,
    'adoption',
  ],
  [
    'quat-min',
    'quat in a machine’s rinse',
    'min',
    active(150),
    'a secondary article on NSF/ANSI 3; the label governs',
    'secondary',
  ],
  [
    'quat-max',
    'quat in a machine’s rinse',
    'max',
    active(400),
    'a secondary article on NSF/ANSI 3, and 40 CFR 180.940 by compound from memory; the label governs',
    'secondary',
  ],
  ['quat-temperature', 'quat solution', 'min', temperature(75, 24), QUAT, 'adoption'],
  [
    'quat-hardness-max',
    'hardness of the water for quat, unless the label says otherwise',
    'max',
    [{ value: 500, unit: 'mg/L-CaCO3' }],
    QUAT,
    'adoption',
  ],
  ['other-contact', 'contact with any other sanitizing chemical', 'min', seconds(30), CONTACT, 'adoption'],
  ['hot-water-contact-manual', 'immersion in hot water by hand', 'min', seconds(30), CONTACT, 'adoption'],
]

/** The limits as shipped. Every one can be replaced in the settings, because local code differs. */
export const SHIPPED_LIMITS: CodeLimits = Object.fromEntries(
  ROWS.map(([id, what, bound, figures, source, how]) => [id, { id, what, bound, figures, source, how }]),
) as unknown as CodeLimits

export const CODE_LIMIT_IDS: readonly CodeLimitId[] = ROWS.map(([id]) => id)
