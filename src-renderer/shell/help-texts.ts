import type { Screen } from '../state/route'

/** Help for each screen, in the words of the job. Kept in the program: nothing is fetched. */
export const HELP: Readonly<Record<Screen, readonly string[]>> = {
  sites: [
    'All sites kept on this computer. The list says where a visit is open, when each site was last seen, and what needs somebody.',
    'Add a site with the quick set-up: one machine and its pumps take about two minutes. A site file from a colleague is brought in with “Import a file”.',
    'A removed site is kept: Undo brings it back at once, “Removed sites” under the list at any later time. Colleagues who share it through a folder keep theirs.',
  ],
  site: [
    'One page about the site: what state each pump was left in, what was found at the last visit, the water, the stock and what comes next.',
    'Start a visit from here. A visit that was interrupted resumes where it stood.',
  ],
  visit: [
    'Work from top to bottom: conditions on site first, then one pump after another. Time at least three runs, and let the program judge the series before you touch the screw.',
    'Clockwise raises the output. Every turn is in eighths and ends clockwise, so that slack in the thread does not fool you. After a turn, test again.',
    'Every computed number opens its working: the formula, the numbers put in, the source.',
  ],
  report: [
    'What you leave behind: as found and as left, what was checked, what is advised. Print it or save it as PDF.',
  ],
  trend: [
    'Flows, doses and strengths over the visits, with the window as a band. The table below holds the same numbers.',
  ],
  spend: [
    'What the site uses and costs a month at the settings last measured, and what an adjustment changed.',
  ],
  setup: [
    'What stands on the site: machines, their pumps, the water, the days it works. Enter what you know; a result that needs more says what is missing.',
    'The window is the range the dose should be in, on a basis you choose. It comes from the product label or your own programme, never from Dosewright.',
    'Fresh rinse water per rack matters most for strengths. Measure it if you can: catch one rinse, or flow times seconds.',
  ],
  glass: [
    'Hand the glass check over to the kitchen: they pick what they see, do the easy test that is suggested, and find out who should do what. Nothing but their own check can be changed there.',
    'A check they send as a file opens here. Say what it turned out to be: confirmed causes count at the next check of the same machine.',
    'All weights are judgement. Yours can differ; the shipped ones come back with one button.',
  ],
  kitchen: ['The glass check for kitchen staff: nothing else of the program can be reached from it.'],
  portfolio: ['The same figures over all sites, to sort and to export.'],
  products: [
    'Products are shared by all sites. Density turns weights into volumes; strength turns product into active substance.',
    'Prices have dates: add a row when a price changes, so that an old visit keeps the price of its day. Label limits are what the label says; take them from there.',
  ],
  instruments: [
    'Cylinders, cups and scales that readings are made with. Tolerance and graduation decide how far a result can be trusted; for glass cylinders the program fills in the tolerance of the class printed on them.',
    'The bore matters when the pick-up tube stands in the cylinder while you read it.',
  ],
  settings: [
    'How this program writes numbers, which units it offers first, and what your tests usually look like.',
  ],
  nowhere: ['This address leads nowhere. Go back to the list of sites.'],
}
