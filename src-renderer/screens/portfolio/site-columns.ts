import type { SortKey } from '#core/spend/portfolio-order'

/** The columns of the table of all sites, each of which orders it. */
export const COLUMNS: readonly { readonly key: SortKey; readonly label: string; readonly figure: boolean }[] =
  [
    { key: 'name', label: 'Site', figure: false },
    { key: 'attention', label: 'Needs attention', figure: false },
    { key: 'cost', label: 'Cost a month', figure: true },
    { key: 'perRack', label: 'Per 100 racks', figure: true },
    { key: 'racks', label: 'Racks a month', figure: true },
    { key: 'litres', label: 'Litres a month', figure: true },
    { key: 'saved', label: 'Saved in a year', figure: true },
  ]
