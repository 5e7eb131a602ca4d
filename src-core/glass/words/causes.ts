import type { CauseId } from '../causes'

/** What a cause is called in a sentence for kitchen staff, and what is done about it by whom. */
export interface CauseWords {
  /** as a heading */
  readonly title: string
  /** inside a sentence: "it tells … from …" */
  readonly short: string
  readonly why: string
  readonly operator: readonly string[]
  readonly rep: readonly string[]
  readonly technician: readonly string[]
  readonly never: readonly string[]
  readonly expect: string
  /** the one thing that comes next, and who does it */
  readonly next: { readonly who: 'kitchen' | 'rep' | 'technician'; readonly text: string }
}

/**
 * Texts for kitchen staff, held to reading grade 6.5, sentence by sentence, by test. Temperatures and pressures come from the data plate, doses
 * from the rep; nothing here opens a panel, mixes products or puts acid into a machine. Cures are common practice, no
 * source, but where `weights.ts` or a test says otherwise.
 */
export const CAUSE_WORDS: Readonly<Record<CauseId, CauseWords>> = {
  'rinse-aid-low': {
    title: 'Too little rinse aid',
    short: 'too little rinse aid',
    why: 'Without rinse aid, the last water stays on the glass as drops. Each drop dries to a ring.',
    operator: [
      'Look at the rinse aid bottle. If it is empty, put in a full one of the same product.',
      'Press the prime button the way you were shown. Stop when no more bubbles pass.',
      'Wash five racks. Then look at the glasses again.',
    ],
    rep: ['Test the dose of rinse aid and set it.', 'Look at the pump tube and the line.'],
    technician: [],
    never: [
      'Do not pour rinse aid into the tank by hand.',
      'Do not pour one product into the bottle of another. Acid and chlorine make a gas that can kill.',
    ],
    expect: 'Water runs off in a thin sheet. Glasses dry fast and clear. You see it after about five racks.',
    next: { who: 'kitchen', text: 'Fill and prime the rinse aid. If it is full, call your rep.' },
  },
  'rinse-aid-high': {
    title: 'Too much rinse aid',
    short: 'too much rinse aid',
    why: 'Too much rinse aid stays on the glass as a thin film. It shines blue or leaves streaks.',
    operator: [
      'Call your rep and say what you saw.',
      'Rinse one glass by hand with plain water and dry it. If it is clear, show it to your rep.',
    ],
    rep: ['Test the dose of rinse aid and bring it down to the target.'],
    technician: [],
    never: ['Do not turn any screw on the pump.'],
    expect: 'The shine and the streaks go. The head on a beer stays up.',
    next: { who: 'rep', text: 'Call your rep to test the rinse aid.' },
  },
  'hard-rinse': {
    title: 'Hard rinse water',
    short: 'hard water',
    why: 'Hard water leaves chalk when it dries. It looks like a white film or white rings.',
    operator: [
      'Look at the water softener, if there is one. If the salt is low, fill it up with softener salt.',
      'Look for an alarm light on the softener. If it is lit, call your service firm.',
    ],
    rep: [
      'Test how hard the last rinse water is.',
      'Plan to remove the scale, with the right product and the way its label says.',
    ],
    technician: ['Check the softener, its bypass valve and when it last cleaned itself.'],
    never: [
      'Keep vinegar and all acids out of the machine.',
      'Never let scale remover or acid meet bleach or chlorine. The two make a gas that can kill.',
    ],
    expect:
      'Glasses washed with soft water dry clear. Old film does not go by itself: it has to be taken off.',
    next: {
      who: 'kitchen',
      text: 'Fill the softener with salt. If it is full, call your service firm. If there is none, call your rep.',
    },
  },
  'high-tds': {
    title: 'A lot of salt in the water',
    short: 'salty water',
    why: 'The water is soft but holds a lot of salt. What dries on the glass wipes off with a damp cloth.',
    operator: [
      'Tilt cups and glasses in the rack, so that water runs off.',
      'Let the rack stand and drain before you unload it.',
    ],
    rep: ['Test the water and the rinse aid.', 'Say what water treatment would do here.'],
    technician: ['Fit water treatment, if the owner wants it.'],
    never: ['Do not add more salt than the softener needs.'],
    expect: 'Fewer and smaller spots when racks drain well. All gone only with treated water.',
    next: { who: 'rep', text: 'Ask your rep to test the water at the next visit.' },
  },
  'detergent-low': {
    title: 'Too little detergent',
    short: 'too little detergent',
    why: 'With too little detergent, food and starch stay on. They dry to a milky or greasy coat.',
    operator: [
      'Look at the detergent. If the can is empty, put in a full one of the same product.',
      'Press the prime button the way you were shown.',
      'Scrape plates well before they go in.',
    ],
    rep: ['Test how strong the wash water is and set the feed.'],
    technician: [],
    never: [
      'Do not pour detergent into the tank by hand, unless your rep told you how much.',
      'Keep detergent off skin and eyes: it burns. Wear gloves and goggles.',
      'Do not pour one product into the can of another. Acid and chlorine make a gas that can kill.',
    ],
    expect: 'Plates and glasses feel clean and squeak. You see it after a fresh fill and a few racks.',
    next: { who: 'kitchen', text: 'Fill and prime the detergent. If it is full, call your rep.' },
  },
  carryover: {
    title: 'Wash water left on the glass',
    short: 'detergent left on the glass',
    why: 'The rinse does not take all the detergent off. It dries to a grey haze and feels slippery.',
    operator: [
      'Rinse slippery glasses by hand before use.',
      'Switch the machine off and let it cool. Then clean the rinse jets the way you were shown.',
      'Call your rep today.',
    ],
    rep: ['Test how strong the wash water is and bring it down.', 'Check the rinse with paper strips.'],
    technician: ['Check the pressure of the rinse and the rinse arms.'],
    never: ['Do not serve from glasses that feel slippery.'],
    expect: 'The haze goes with the next racks. Wet glass no longer feels slippery.',
    next: { who: 'rep', text: 'Call your rep today. Rinse by hand until then.' },
  },
  'rinse-temp-low': {
    title: 'The last rinse is too cool',
    short: 'a cool rinse',
    why: 'Hot glass dries by itself. Cool glass stays wet and dries with spots.',
    operator: [
      'Watch the rinse gauge while it rinses. Write the number down.',
      'Is it below the number on the plate of the machine? Tell your manager and call your service firm.',
      'A machine that kills germs with heat needs that heat. Ask your manager before you wash on.',
    ],
    rep: ['Do not make up for a cool rinse with more rinse aid.'],
    technician: ['Check the rinse heater and its switches.'],
    never: ['Do not change the heat yourself.', 'Keep hands out of the rinse: it is hot enough to burn.'],
    expect: 'Glasses come out hot and dry within a minute or two.',
    next: { who: 'technician', text: 'Tell your manager. Have the service firm check the heat.' },
  },
  'rinse-flow-poor': {
    title: 'The rinse is weak or blocked',
    short: 'a weak rinse',
    why: 'Where the rinse does not reach, wash water stays on. Often one part of the rack is bad.',
    operator: [
      'Switch the machine off and let it cool. Then look at the rinse jets.',
      'Clean the jets the way you were shown. If nobody has shown you, ask your rep.',
      'Load racks so that water reaches every glass.',
    ],
    rep: ['Catch the rinse water of one rack and compare it with the plate.'],
    technician: ['Set the pressure of the rinse. Remove scale from the arms.'],
    never: ['Do not touch the pressure valve.', 'Do not take off any panel.'],
    expect: 'The bad part of the rack looks like the rest.',
    next: {
      who: 'kitchen',
      text: 'Switch off, let it cool, and clean the jets. If that does not help, call the service firm.',
    },
  },
  'tank-dirty': {
    title: 'The wash water is old or dirty',
    short: 'dirty wash water',
    why: 'Dirt in the tank lands on the glasses again. It gets worse through the day.',
    operator: [
      'Switch the machine off and let the water cool.',
      'Drain the tank. Wash the filters. Fill it with fresh water.',
      'Scrape and rinse plates before they go in.',
      'Change the water more often on busy days.',
    ],
    rep: ['Say how many racks one fill should last.'],
    technician: [],
    never: ['Do not reach into hot water.'],
    expect: 'The first racks in fresh water come out clear.',
    next: { who: 'kitchen', text: 'Switch off, let it cool, and change the water now.' },
  },
  handling: {
    title: 'How glasses are dried and kept',
    short: 'how glasses are dried',
    why: 'Towels leave lint and smears. Wet glasses that touch or stand on a flat mat keep their marks.',
    operator: [
      'Put the towel away. Let glasses dry in the air.',
      'Use a tilted rack. Keep glasses apart.',
      'Do not stack glasses while they are wet.',
    ],
    rep: [],
    technician: [],
    never: [],
    expect: 'The next rack that dries in the air is clear.',
    next: { who: 'kitchen', text: 'Let the next rack dry in the air.' },
  },
  grease: {
    title: 'Grease or lipstick',
    short: 'grease or lipstick',
    why: 'Fat and lipstick need more heat than a glass washer has. They stay at the rim.',
    operator: [
      'Wipe lipstick off by hand before the wash.',
      'Wash glasses apart from milk jugs and greasy plates.',
    ],
    rep: ['Test how strong the wash water is.'],
    technician: [],
    never: [],
    expect: 'Rims are clear. Beer keeps its head. Water runs off the clean glass without a break.',
    next: { who: 'kitchen', text: 'Wipe rims by hand before the next rack.' },
  },
  etched: {
    title: 'The glass itself is worn',
    short: 'worn glass',
    why: 'After many washes the glass is worn at its face. It stays grey. No wipe can clear it.',
    operator: [
      'Put the grey glasses aside. They cannot be made clear again.',
      'Use new glasses and mark a few of them to watch.',
    ],
    rep: [
      'Check that the wash is not too strong for glass.',
      'Choose a detergent that is kinder to glass. Very soft water makes it worse.',
    ],
    technician: [],
    never: ['Do not scrub with wire or powder.'],
    expect: 'New glasses stay clear. The old ones stay grey.',
    next: { who: 'rep', text: 'Show a grey glass to your rep. Ask for a kinder wash.' },
  },
  silica: {
    title: 'A hard glassy film',
    short: 'a hard glassy film',
    why: 'A hard film from the water or the detergent sits on the glass. Vinegar does not move it.',
    operator: ['Keep two marked glasses for your rep.'],
    rep: ['Change the detergent.', 'Get a silica test of the water.'],
    technician: ['Treat the water, if the test says so.'],
    never: ['Do not scrub with wire or powder.'],
    expect: 'New glasses stay clear. The film on old ones stays.',
    next: { who: 'rep', text: 'Show two marked glasses to your rep.' },
  },
}
