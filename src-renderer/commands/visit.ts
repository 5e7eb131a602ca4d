/** Every edit of a visit: pure functions from a site to a site. An edit of a closed visit changes nothing. */
export * from './visit/conditions'
export * from './visit/screw-and-tube'
export * from './visit/start-and-close'
export * from './visit/stock-count'
export * from './visit/tests-and-runs'
export * from './visit/verification'
export * from './visit/words'
export type { AtPump, AtVisit, Stamp } from './visit/open-visit'
