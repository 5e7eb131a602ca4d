import type { Attachment } from 'svelte/attachments'

/** Calls once when the element first comes near the window's view. */
export const whenInView =
  (seen: () => void): Attachment<HTMLElement> =>
  (element) => {
    const observer = new IntersectionObserver(
      (entries) => {
        if (!entries.some((entry) => entry.isIntersecting)) return
        observer.disconnect()
        seen()
      },
      { rootMargin: '200px' },
    )
    observer.observe(element)
    return () => observer.disconnect()
  }
