import { runLocalWindow } from '#main/launch/local-window'

// What `npm start` does where there is a display, without asking whether there is one.
const [folder = ''] = process.argv.slice(2)
process.exit(await runLocalWindow([`--data=${folder}`], true, console.log))
