import type { EvidenceId } from '../evidence'
import type { TestId } from '../tests'

/** One page of a test: a question with its answers. */
export type TestPage =
  | {
      readonly kind: 'pick-one'
      readonly question: string
      readonly answers: readonly {
        readonly label: string
        /** what this answer says is so; null: none of the outcomes */
        readonly is: EvidenceId | null
      }[]
      readonly items: readonly EvidenceId[]
    }
  | {
      readonly kind: 'pick-many'
      readonly question: string
      readonly choices: readonly { readonly label: string; readonly is: EvidenceId }[]
    }

export interface TestWords {
  readonly title: string
  /** how hard it is, inside a sentence */
  readonly effort: string
  readonly need: string
  readonly steps: readonly string[]
  readonly care: readonly string[]
  readonly pages: readonly TestPage[]
}

const COOL = 'Look only. Wait until the machine has stopped. Do not open panels or touch hot parts.'

/** Numbers of the machine's own data plate, as text with their unit; null when the record has none. */
export interface PlateWords {
  readonly rinseAtLeast: string | null
  readonly pressure: string | null
}

/** The tests in the operator's words. Temperature and pressure come from the data plate, never from here. */
export const testWords = (test: TestId, plate: PlateWords): TestWords => ({
  ...TEST_WORDS[test],
  ...gauges(test, plate),
})

function gauges(test: TestId, plate: PlateWords): Partial<TestWords> {
  if (test !== 'gauges') return {}
  return {
    pages: [
      {
        kind: 'pick-many',
        question: 'What do the gauges show while it rinses?',
        choices: [
          {
            label:
              plate.rinseAtLeast === null
                ? 'Rinse heat is below the number on the plate'
                : `Rinse heat is below ${plate.rinseAtLeast}, the number on the plate`,
            is: 'rinse-cool',
          },
          {
            label:
              plate.pressure === null
                ? 'Rinse pressure is outside the numbers on the plate'
                : `Rinse pressure is outside ${plate.pressure}, the numbers on the plate`,
            is: 'pressure-bad',
          },
        ],
      },
    ],
  }
}

const TEST_WORDS: Readonly<Record<TestId, TestWords>> = {
  round: {
    title: 'Look around the machine',
    effort: 'only a look',
    need: 'Your eyes',
    steps: [
      'Look at the rinse aid bottle and its tube.',
      'Look at the salt in the water softener, if there is one.',
      'Look through the open door at the rinse jets and the wash water.',
    ],
    care: [COOL],
    pages: [
      {
        kind: 'pick-many',
        question: 'Which of these do you see?',
        choices: [
          { label: 'Rinse aid bottle empty, or air in its tube', is: 'ra-supply-out' },
          { label: 'Softener out of salt, or its alarm is on', is: 'softener-empty' },
          { label: 'Rinse jets blocked, or crusted white', is: 'jets-blocked' },
          { label: 'Wash water dirty, or not changed for long', is: 'racks-many' },
          { label: 'Glasses dried with a towel, stacked wet, or kept on a flat mat', is: 'towelled' },
        ],
      },
    ],
  },
  'close-look': {
    title: 'Look closely at a dry glass',
    effort: 'only a look',
    need: 'A marked glass, an old glass and a lamp',
    steps: [
      'Hold the dry glass in front of something dark.',
      'Tilt it in the light.',
      'Hold the oldest glass you have beside it.',
    ],
    care: [],
    pages: [
      {
        kind: 'pick-many',
        question: 'Which of these do you see?',
        choices: [
          { label: 'A rainbow or a blue shine', is: 'iridescent' },
          { label: 'Streaks, or foam in the machine', is: 'foam-or-streaks' },
          { label: 'Marks only at the rim', is: 'rim-marks' },
          { label: 'A grey haze, worst on the oldest glass', is: 'matte-permanent' },
        ],
      },
    ],
  },
  gauges: {
    title: 'Read the gauges on the machine',
    effort: 'only a look',
    need: 'The gauges and the metal plate on the machine',
    steps: ['Start a rack.', 'Watch the gauges while the last rinse runs.', 'Compare them with the plate.'],
    care: ['Read only. Do not change heat or pressure.', 'The rinse water can burn you. Keep the door shut.'],
    pages: [],
  },
  'water-wipe': {
    title: 'Wipe with water',
    effort: 'a cloth and one minute',
    need: 'A marked glass, a clean cloth and distilled water',
    steps: [
      'Take one marked glass to the sink.',
      'Wet a clean cloth with distilled water.',
      'Wipe one half of the glass. Let it dry.',
      'Compare the two halves in the light.',
    ],
    care: [],
    pages: [
      {
        kind: 'pick-one',
        question: 'Is the mark gone where you wiped?',
        answers: [
          { label: 'Yes, it is gone', is: 'water-clears' },
          { label: 'No, it is still there', is: null },
        ],
        items: ['water-clears'],
      },
    ],
  },
  'acid-wipe': {
    title: 'Wipe with vinegar',
    effort: 'a cloth and two minutes',
    need: 'One loose glass, a cloth and white vinegar',
    steps: [
      'Take one loose glass to the sink. Put on gloves.',
      'Rub the mark with a little vinegar. Wait one minute.',
      'Rinse the glass with water.',
      'Dry it. Then look at it in the light.',
    ],
    care: [
      'Keep bleach and other chlorine products far away. Vinegar and bleach make a gas that can hurt you.',
      'Keep vinegar out of the machine.',
    ],
    pages: [
      {
        kind: 'pick-one',
        question: 'The glass is dry. Is the mark gone?',
        answers: [
          { label: 'Yes, it is gone', is: 'acid-clears' },
          { label: 'No, nothing has changed', is: 'acid-no-change' },
          { label: 'It is better, but not gone', is: null },
        ],
        items: ['acid-clears', 'acid-no-change'],
      },
    ],
  },
  pin: {
    title: 'Scratch with a pin',
    effort: 'a pin and one minute',
    need: 'One marked glass and a pin',
    steps: [
      'Hold the dry glass on a table.',
      'Draw the pin lightly over the haze, away from your fingers.',
      'Look at the line in the light.',
    ],
    care: ['Do not use a glass that is chipped or cracked.', 'Do not use this glass for guests again.'],
    pages: [
      {
        kind: 'pick-one',
        question: 'Does the pin lift the haze?',
        answers: [
          { label: 'Yes, it comes off', is: 'scratch-removes' },
          { label: 'No, it stays', is: null },
        ],
        items: ['scratch-removes'],
      },
    ],
  },
  'wet-glass': {
    title: 'Watch water run off',
    effort: 'a wet glass and two minutes',
    need: 'A clean glass from the last rack, water and table salt',
    steps: [
      'Dip the clean glass in water. Lift it out upside down.',
      'Watch how the water runs off.',
      'Shake a little salt inside the wet glass.',
    ],
    care: [],
    pages: [
      {
        kind: 'pick-one',
        question: 'How does the water run off?',
        answers: [
          { label: 'It breaks into drops', is: 'beads' },
          { label: 'It runs off as one sheet', is: 'sheets' },
          { label: 'A bit of both', is: null },
        ],
        items: ['beads', 'sheets'],
      },
      {
        kind: 'pick-one',
        question: 'How does the salt stick?',
        answers: [
          { label: 'There are bare patches', is: 'salt-test-fails' },
          { label: 'It sticks all over', is: null },
        ],
        items: ['salt-test-fails'],
      },
    ],
  },
  strips: {
    title: 'Dip test strips',
    effort: 'two paper strips',
    need: 'A pH strip and a hard-water strip',
    steps: [
      'Catch the last drops from a glass just out of the rinse.',
      'Dip the pH strip. Compare its colour with the card.',
      'Dip the hard-water strip in the same drops.',
    ],
    care: ['The drops are hot. Use a cup with a handle.'],
    pages: [
      {
        kind: 'pick-one',
        question: 'What does the pH strip show?',
        answers: [
          { label: 'More than 9', is: 'ph-high-on-glass' },
          { label: '9 or less', is: null },
        ],
        items: ['ph-high-on-glass'],
      },
      {
        kind: 'pick-one',
        question: 'What does the hard-water strip show?',
        answers: [
          { label: 'More than 60 mg/L (3.5 grains)', is: 'hardness-high' },
          { label: '60 mg/L or less', is: null },
        ],
        items: ['hardness-high'],
      },
    ],
  },
  'water-meters': {
    title: 'Measure the rinse water',
    effort: 'a water meter',
    need: 'A hard-water test and a meter for salts in water',
    steps: ['Catch a cup of the last rinse water. Let it cool.', 'Test it with both.'],
    care: ['Rinse water is hot and can burn you.'],
    pages: [
      {
        kind: 'pick-one',
        question: 'What do they show?',
        answers: [
          { label: 'Hard: more than 60 mg/L', is: 'hardness-high' },
          { label: 'Soft, below 17 mg/L, but salts above 400 mg/L', is: 'hardness-low-tds-high' },
          { label: 'Soft, below 17 mg/L, and salts below 100 mg/L', is: 'hard-and-tds-low' },
          { label: 'In between', is: null },
        ],
        items: ['hardness-high', 'hardness-low-tds-high', 'hard-and-tds-low'],
      },
    ],
  },
  'new-glass': {
    title: 'Wash new glasses beside old ones',
    effort: 'ten racks',
    need: 'Five new glasses and a marker',
    steps: [
      'Mark five new glasses under the foot.',
      'Wash them ten times beside old ones.',
      'Let them dry in the air. Compare them in the light.',
    ],
    care: [],
    pages: [
      {
        kind: 'pick-one',
        question: 'How do the new glasses look?',
        answers: [
          { label: 'Clear', is: 'new-glass-ok' },
          { label: 'Marked as well', is: 'new-glass-bad' },
          { label: 'Hard to say', is: null },
        ],
        items: ['new-glass-ok', 'new-glass-bad'],
      },
    ],
  },
  measured: {
    title: 'Ask your rep for two numbers',
    effort: 'a call to your rep',
    need: 'A phone',
    steps: ['Call your rep.', 'Ask how the rinse aid and the wash water were measured last.'],
    care: ['Do not change the pumps yourself.'],
    pages: [
      {
        kind: 'pick-one',
        question: 'How is the rinse aid?',
        answers: [
          { label: 'Too low: below 70 % of the target', is: 'ra-dose-low' },
          { label: 'Too high: above 150 % of the target', is: 'ra-dose-high' },
          { label: 'Right: within 15 % of the target', is: 'ra-dose-ok' },
          { label: 'In between', is: null },
        ],
        items: ['ra-dose-low', 'ra-dose-high', 'ra-dose-ok'],
      },
      {
        kind: 'pick-one',
        question: 'How strong is the wash water?',
        answers: [
          { label: 'Too weak: below 70 % of the target', is: 'det-low' },
          { label: 'Too strong: above 140 % of the target', is: 'det-high' },
          { label: 'In between', is: null },
        ],
        items: ['det-low', 'det-high'],
      },
    ],
  },
}
