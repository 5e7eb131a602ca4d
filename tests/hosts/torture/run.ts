import { parseArgs } from 'node:util'
import { copyBuild, needBuild } from '../launch/built-program'
import { killAgainAndAgain, troublesHere } from './kills'
import { liveFor } from './long-life'
import { mutateAndImport } from './mutations'

// `npm run torture`: the long form of what npm test does a little of. Takes about half an hour.
const { values } = parseArgs({
  options: {
    kills: { type: 'string', default: '1000' },
    mutations: { type: 'string', default: '100000' },
    hours: { type: 'string', default: '24' },
    seed: { type: 'string', default: '1' },
  },
})
const seed = Number(values.seed)
needBuild()
copyBuild()
const mutations = await mutateAndImport(Number(values.mutations), seed)
console.log('damaged files', JSON.stringify(mutations, null, 2))
const life = await liveFor(Number(values.hours))
console.log('long life', JSON.stringify(life, null, 2))
const kills = await killAgainAndAgain(Number(values.kills), seed, troublesHere())
console.log('kills', JSON.stringify(kills, null, 2))
const grew = life.after.megabytes - life.before.megabytes > 40 || life.after.handles > life.before.handles + 2
const faults = mutations.faults.length + kills.faults.length + Number(grew) + Number(!life.sameAtTheEnd)
process.exit(faults === 0 ? 0 : 1)
