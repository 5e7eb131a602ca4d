import { run } from '../hosts/local-host/running'
import { contractSuite } from './suite'

contractSuite('over HTTP on loopback', run)
