/** What stands before the document's name in the window title; a running stopwatch puts its time here. */
class WindowTitle {
  prefix = $state('')
}

export const windowTitle = new WindowTitle()
