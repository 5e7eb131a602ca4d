import type { EvidenceId } from '../evidence'

/** What was seen, and what was looked for and not seen, as whole sentences for kitchen staff. */
export const EVIDENCE_WORDS: Readonly<Record<EvidenceId, { readonly yes: string; readonly no: string }>> = {
  'acid-clears': { yes: 'Vinegar took the mark off.', no: 'Vinegar did not take the mark off.' },
  'acid-no-change': { yes: 'Vinegar did nothing.', no: 'Vinegar made some change.' },
  'water-clears': { yes: 'Plain water took the mark off.', no: 'Plain water did not take the mark off.' },
  'scratch-removes': { yes: 'A pin lifts the haze.', no: 'A pin does not lift the haze.' },
  beads: { yes: 'Water breaks into drops on the glass.', no: 'Water does not break into drops.' },
  sheets: { yes: 'Water runs off as one sheet.', no: 'Water does not run off as one sheet.' },
  'ph-high-on-glass': {
    yes: 'The last drops still hold detergent (pH above 9).',
    no: 'The last drops hold no detergent (pH 9 or less).',
  },
  'hardness-high': { yes: 'The rinse water is hard.', no: 'The rinse water is not hard.' },
  'hardness-low-tds-high': {
    yes: 'The rinse water is soft but holds a lot of salt.',
    no: 'The rinse water is not both soft and salty.',
  },
  'hard-and-tds-low': {
    yes: 'The rinse water is soft and holds little salt.',
    no: 'The rinse water is not nearly pure.',
  },
  'ra-dose-low': {
    yes: 'The rinse aid was measured too low.',
    no: 'The rinse aid was not measured too low.',
  },
  'ra-supply-out': {
    yes: 'The rinse aid bottle is empty, or there is air in its tube.',
    no: 'The rinse aid bottle and its tube are full.',
  },
  'ra-dose-high': {
    yes: 'The rinse aid was measured too high.',
    no: 'The rinse aid was not measured too high.',
  },
  'ra-dose-ok': { yes: 'The rinse aid was measured right.', no: 'The rinse aid was not quite right.' },
  'det-low': { yes: 'The wash water was measured too weak.', no: 'The wash water is not too weak.' },
  'det-high': { yes: 'The wash water was measured too strong.', no: 'The wash water is not too strong.' },
  'rinse-cool': { yes: 'The last rinse is too cool.', no: 'The last rinse is hot enough.' },
  'pressure-bad': { yes: 'The rinse pressure is off.', no: 'The rinse pressure is right.' },
  'jets-blocked': { yes: 'Rinse jets are blocked or crusted.', no: 'The rinse jets are clean.' },
  'racks-many': { yes: 'The wash water is old or dirty.', no: 'The wash water is fresh.' },
  towelled: {
    yes: 'Glasses are dried by towel, stacked wet or kept on a flat mat.',
    no: 'Glasses dry in the air.',
  },
  iridescent: { yes: 'There is a rainbow or a blue shine.', no: 'There is no rainbow or blue shine.' },
  'foam-or-streaks': { yes: 'There are streaks or foam.', no: 'There are no streaks and no foam.' },
  'matte-permanent': { yes: 'The haze stays and is worst on old glasses.', no: 'There is no lasting haze.' },
  'new-glass-ok': { yes: 'New glasses stay clear.', no: 'New glasses do not stay clear.' },
  'new-glass-bad': { yes: 'New glasses get marks too.', no: 'New glasses do not get marks.' },
  'salt-test-fails': { yes: 'Salt leaves bare patches on the wet glass.', no: 'Salt sticks all over.' },
  'rim-marks': { yes: 'There are marks at the rim.', no: 'There are no marks at the rim.' },
  'softener-empty': {
    yes: 'The softener is out of salt, or its alarm is on.',
    no: 'The softener has salt and no alarm.',
  },
  'clear-spots': { yes: 'You see clear spots.', no: 'You see no clear spots.' },
  'white-film': { yes: 'You see a white film.', no: 'You see no white film.' },
  'food-soil': { yes: 'Food is left on.', no: 'No food is left on.' },
  'one-zone': { yes: 'One part of the rack is worse.', no: 'The whole rack is alike.' },
  'other-ware-too': { yes: 'Plates or forks show it too.', no: 'Only glasses show it.' },
  'began-suddenly': { yes: 'It began in the last few days.', no: 'It came on over weeks.' },
}
