import { NO_FILTER, type Filter, type Sorting } from '#core/spend/portfolio-order'

/** How the table was last arranged: whoever looks into a site and comes back finds it as it was left. */
export const keptView: { filter: Filter; sorting: Sorting } = {
  filter: NO_FILTER,
  sorting: { key: 'attention', down: true },
}
