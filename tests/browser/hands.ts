import type { CDPSession } from 'playwright-core'
import type { BenchPage } from './bench'

export interface Finger {
  readonly x: number
  readonly y: number
}

/** Real fingers: the browser may take them over to scroll, as it does under a hand. */
export async function hands({ page }: BenchPage) {
  const session: CDPSession = await page.context().newCDPSession(page)
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: fingers.map(({ x, y }, id) => ({ x, y, id })),
    })
  return {
    /** Set fingers down one after the other, move them in steps, lift them. */
    draw: async (from: readonly Finger[], to: readonly Finger[]) => {
      for (let count = 1; count <= from.length; count++)
        await send('touchStart', from.slice(0, count))
      for (let step = 1; step <= 12; step++) {
        const part = step / 12
        const between = from.map((finger, at) => ({
          x: finger.x + ((to[at]?.x ?? finger.x) - finger.x) * part,
          y: finger.y + ((to[at]?.y ?? finger.y) - finger.y) * part,
        }))
        await send('touchMove', between)
      }
      await send('touchEnd', [])
    },
    /** Let a finger rest until something is seen of it, then draw it on. */
    rest: async (from: Finger, until: () => Promise<unknown>, to: Finger) => {
      await send('touchStart', [from])
      await until()
      await send('touchMove', [{ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }])
      await send('touchMove', [to])
      await send('touchEnd', [])
    },
    tap: async (finger: Finger) => {
      await send('touchStart', [finger])
      await send('touchEnd', [])
    },
  }
}
