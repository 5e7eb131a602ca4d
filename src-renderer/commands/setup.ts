/** Every edit of what stands on a site: pure functions from a site to a site. What is not there stays untouched. */
export * from './setup/calendar'
export * from './setup/machines'
export * from './setup/new-site'
export * from './setup/pumps'
export * from './setup/usual-machine'
export * from './setup/site'
export * from './setup/window-around'
