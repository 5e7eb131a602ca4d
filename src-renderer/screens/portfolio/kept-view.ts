import { NO_FILTER, type Filter, type Sorting } from './sort-rows'

/** How the table was last arranged: whoever looks into a site and comes back finds it as it was left. */
export const keptView: { filter: Filter; sorting: Sorting } = {
  filter: NO_FILTER,
  sorting: { key: 'attention', down: true },
}
