import { contractSuite } from './suite'
import { removeFolder, startProgram, tempFolder } from './program'

contractSuite('in its own process', async () => {
  const folder = tempFolder()
  const { call, program } = startProgram(folder)
  return {
    call,
    raw: program.dispatch,
    stop: async () => {
      program.close()
      removeFolder(folder)
    },
  }
})
