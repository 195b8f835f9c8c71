/**
 * The app on this machine, for use without a network. A new version is fetched whole and waits; it is
 * taken when the app starts and no other window works with the old one, so that no window ever has
 * parts of both.
 */
import { hold } from '../../shelf/windows'

const lockName = 'app'
/** Milliseconds that a new version has to take over. */
const takesOver = 4000
/** Milliseconds after the start in which nothing is fetched that the start does not need. */
const startTakes = 1500
/** Milliseconds between two questions for a new version, when the window is looked at again. */
const askAgain = 3_600_000

const workers = (): ServiceWorkerContainer | undefined =>
  'serviceWorker' in navigator ? navigator.serviceWorker : undefined

const after = (time: number) => new Promise<'late'>((resolve) => setTimeout(resolve, time, 'late'))

/** At the start, before anything is shown: a version that waits is taken. True: the page starts anew with it. */
export async function takeNewVersion(): Promise<boolean> {
  try {
    const container = workers()
    if (!container?.controller) return false
    const waiting = (await container.getRegistration())?.waiting
    const letGo = waiting && (await hold(lockName))
    if (!letGo) return false
    const taken = new Promise((resolve) =>
      container.addEventListener('controllerchange', resolve, { once: true }),
    )
    waiting.postMessage({ type: 'SKIP_WAITING' })
    if ((await Promise.race([taken, after(takesOver)])) === 'late') {
      letGo()
      return false
    }
    location.reload()
    return true
  } catch {
    // A browser that keeps no app: it starts as it was fetched.
    return false
  }
}

/** Keep the app for use without a network; `waits` is told when a new version waits for the next start. */
export function keepApp(waits: () => void): void {
  void hold(lockName, { shared: true })
  void after(startTakes)
    .then(() => workers()?.register('worker.js'))
    .then((registration) => {
      if (registration) follow(registration, waits)
    })
    // A browser that keeps no app works as long as there is a network.
    .catch(() => undefined)
}

function follow(registration: ServiceWorkerRegistration, waits: () => void): void {
  if (registration.waiting) waits()
  registration.addEventListener('updatefound', () => {
    const fetched = registration.installing
    fetched?.addEventListener('statechange', () => {
      // The very first version waits for nothing.
      if (fetched.state === 'installed' && registration.active) waits()
    })
  })
  let asked = Date.now()
  document.addEventListener('visibilitychange', () => {
    if (document.hidden || Date.now() - asked < askAgain) return
    asked = Date.now()
    void registration.update().catch(() => undefined)
  })
}

/** Is the app kept here, so that it starts without a network? */
export async function isAppKept(): Promise<boolean> {
  try {
    return Boolean((await workers()?.getRegistration())?.active)
  } catch {
    return false
  }
}
