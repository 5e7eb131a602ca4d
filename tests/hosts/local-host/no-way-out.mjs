// Loaded into a process before anything else: whatever tries to reach another place is written down and refused.
import childProcess from 'node:child_process'
import dgram from 'node:dgram'
import dns from 'node:dns'
import { appendFileSync } from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import net from 'node:net'

const refuse = (what) => {
  appendFileSync(process.env.NO_WAY_OUT, `${what}\n`)
  throw new Error(`refused: ${what}`)
}
net.Socket.prototype.connect = (...args) => refuse(`connect ${JSON.stringify(args[0])}`)
const { lookup } = dns
// an address is no name: listening on one asks nobody
dns.lookup = (name, ...rest) => (net.isIP(name) === 0 ? refuse(`lookup ${name}`) : lookup(name, ...rest))
dns.promises.lookup = (name) => refuse(`lookup ${name}`)
dgram.createSocket = () => refuse('datagram')
for (const way of ['spawn', 'spawnSync', 'exec', 'execSync', 'execFile', 'execFileSync', 'fork'])
  childProcess[way] = (command) => refuse(`${way} ${command}`)
syncBuiltinESMExports()
