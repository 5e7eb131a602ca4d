/** A moment after the next frame is on the screen; in a window that paints nothing, soon. */
export const afterPaint = (): Promise<void> =>
  new Promise((go) => {
    const soon = setTimeout(go, 200)
    requestAnimationFrame(() => {
      clearTimeout(soon)
      setTimeout(go, 0)
    })
  })
