import type { Method, Services } from '../contract/contract'
import type { Ports } from '../contract/ports'

/** One use case, waiting for its ports. */
export type Service<M extends Method> = (ports: Ports) => Services[M]
