/**
 * What can be seen or measured about marked glasses. `name` is for the rep; the operator's words stand in `words/`.
 * `countsAs`: another way to learn the same fact; if both are known it counts once.
 */
export const EVIDENCE = [
  {
    id: 'acid-clears',
    name: 'Wipe with vinegar or 5 % citric acid, rinse, dry: mark gone',
    countsAs: null,
  },
  { id: 'acid-no-change', name: 'Acid wipe: no change at all', countsAs: null },
  { id: 'water-clears', name: 'Damp cloth with distilled water removes the mark', countsAs: null },
  { id: 'scratch-removes', name: 'Pin or blade lifts the haze', countsAs: null },
  { id: 'beads', name: 'Rinsed glass beads: water break in the sheeting test', countsAs: null },
  { id: 'sheets', name: 'Rinsed glass sheets in an unbroken film', countsAs: null },
  {
    id: 'ph-high-on-glass',
    name: 'Wetted glass or last drips of rinse above pH 9 on paper, or pink to phenolphthalein',
    countsAs: null,
  },
  {
    id: 'hardness-high',
    name: 'Final-rinse hardness above 60 mg/L as CaCO3 (3.5 grains/US gal)',
    countsAs: null,
  },
  {
    id: 'hardness-low-tds-high',
    name: 'Hardness below 17 mg/L but TDS above 400 mg/L',
    countsAs: null,
  },
  { id: 'hard-and-tds-low', name: 'Hardness below 17 mg/L and TDS below 100 mg/L', countsAs: null },
  {
    id: 'ra-dose-low',
    name: 'Measured rinse-aid dose below 70 % of target',
    countsAs: null,
  },
  { id: 'ra-supply-out', name: 'Rinse-aid container empty, or line not primed', countsAs: 'ra-dose-low' },
  { id: 'ra-dose-high', name: 'Measured rinse-aid dose above 150 % of target', countsAs: null },
  { id: 'ra-dose-ok', name: 'Measured rinse-aid dose within 15 % of target', countsAs: null },
  { id: 'det-low', name: 'Titration below 70 % of target', countsAs: null },
  { id: 'det-high', name: 'Titration above 140 % of target', countsAs: null },
  { id: 'rinse-cool', name: 'Final rinse below the data-plate minimum', countsAs: null },
  {
    id: 'pressure-bad',
    name: 'Flowing final-rinse pressure outside the data-plate range',
    countsAs: null,
  },
  { id: 'jets-blocked', name: 'Blocked or limed rinse jets seen', countsAs: null },
  {
    id: 'racks-many',
    name: 'More racks since drain than site limit, or visibly soiled water',
    countsAs: null,
  },
  {
    id: 'towelled',
    name: 'Glasses hand-dried, stacked wet or stored inverted on a flat surface',
    countsAs: null,
  },
  { id: 'iridescent', name: 'Rainbow or blue sheen', countsAs: null },
  {
    id: 'foam-or-streaks',
    name: 'Foam in tank, or streaks running down the glass',
    countsAs: null,
  },
  {
    id: 'matte-permanent',
    name: 'Haze is permanent, worst on the oldest glasses',
    countsAs: null,
  },
  { id: 'new-glass-ok', name: 'New glasses washed alongside come out clear', countsAs: null },
  { id: 'new-glass-bad', name: 'New glasses washed alongside also mark', countsAs: null },
  {
    id: 'salt-test-fails',
    name: 'Salt sprinkled inside the wet glass leaves bare patches',
    countsAs: null,
  },
  { id: 'rim-marks', name: 'Marks only at the rim or lip line', countsAs: null },
  {
    id: 'softener-empty',
    name: 'Softener out of salt, in bypass or regeneration overdue',
    countsAs: null,
  },
  { id: 'clear-spots', name: 'Clear round spots seen', countsAs: null },
  { id: 'white-film', name: 'White film or haze seen', countsAs: null },
  { id: 'food-soil', name: 'Food left on the ware', countsAs: null },
  { id: 'one-zone', name: 'Marks in one zone of the rack only', countsAs: null },
  { id: 'other-ware-too', name: 'Plates or cutlery marked as well', countsAs: null },
  { id: 'began-suddenly', name: 'Began within days, not over weeks', countsAs: null },
  { id: 'dries-slowly', name: 'Ware comes out wet and dries slowly', countsAs: null },
  { id: 'feels-slippery', name: 'Wet glass feels slippery', countsAs: null },
  { id: 'feels-greasy', name: 'Dry ware feels greasy', countsAs: null },
  { id: 'head-collapses', name: 'Beer loses its head', countsAs: null },
  { id: 'worse-late', name: 'Worse late in the service', countsAs: null },
  { id: 'chalk-crust', name: 'White crust in the machine', countsAs: null },
] as const

export type EvidenceId = (typeof EVIDENCE)[number]['id']

export const EVIDENCE_IDS: readonly EvidenceId[] = EVIDENCE.map((item) => item.id)

export const isEvidence = (text: string): text is EvidenceId => EVIDENCE_IDS.some((id) => id === text)

const facts = new Map<EvidenceId, EvidenceId>(EVIDENCE.map((item) => [item.id, item.countsAs ?? item.id]))

/** The fact an item stands for: itself, or what it counts as. */
export const factOf = (id: EvidenceId): EvidenceId => facts.get(id) ?? id
