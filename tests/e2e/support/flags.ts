/** How Chromium is started in tests: no network of its own, and no sandbox only where it cannot have one, as root. */
export const LAUNCH_FLAGS: readonly string[] = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
]
