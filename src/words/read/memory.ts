import type { Definitions } from './terms/definitions'
import { shapeOf, type LineShape } from './lines/outline'
import { parseBody } from './parse/parser'
import type { Body } from './nodes'
import { Places, type LoomThen } from './loops/place'
import type { ReadRow, ReadSettings, Reading } from './reading'
import type { Resolved, Worked } from './loops/work'

/**
 * What one reading remembers for the next, by the text of lines and words: an edit of a line costs
 * that line. Only what this reading has used is handed on, so that nothing gathers for ever.
 */
export class Memory {
  readonly shapes = new Map<string, LineShape>()
  readonly bodies = new Map<string, Body>()
  readonly works = new WeakMap<Body, Map<LoomThen, Map<string, Resolved>>>()
  readonly places: Places
  /** Of each row made: what it was made of. */
  readonly rows = new WeakMap<ReadRow, { readonly stretch: Worked; readonly offset: number }>()

  constructor(
    readonly settings: ReadSettings,
    readonly definitions: Definitions,
    private readonly before: Memory | null,
    readonly previous: Reading | null,
  ) {
    this.places = before?.places ?? new Places(settings)
    if (before) {
      this.works = before.works
      this.rows = before.rows
    }
  }

  body(words: string): Body {
    let body = this.bodies.get(words)
    if (!body) {
      const { size, terms } = this.settings
      const { spellings } = this.definitions
      body = this.before?.bodies.get(words) ?? parseBody(words, { size, spellings, terms })
      this.bodies.set(words, body)
    }
    return body
  }

  /** What a body comes to at a place; made anew if it is not remembered. */
  resolved(body: Body, place: LoomThen, key: string, make: () => Resolved): Resolved {
    let places = this.works.get(body)
    if (!places) this.works.set(body, (places = new Map<LoomThen, Map<string, Resolved>>()))
    let keys = places.get(place)
    if (!keys) places.set(place, (keys = new Map<string, Resolved>()))
    let resolved = keys.get(key)
    if (!resolved) keys.set(key, (resolved = make()))
    return resolved
  }

  /** The last reading was for something else: nothing of it but the shapes of lines is of use. */
  static readonly of = new WeakMap<Reading, Memory>()
}

/** The shape of a line, remembered from reading to reading. */
export function shapesFrom(before: Memory | null, into: Map<string, LineShape>) {
  return (line: string): LineShape => {
    let shape = into.get(line)
    if (!shape) into.set(line, (shape = before?.shapes.get(line) ?? shapeOf(line)))
    return shape
  }
}

const sameSettings = (a: ReadSettings, b: ReadSettings): boolean =>
  (Object.keys(a) as (keyof ReadSettings)[]).every((name) => a[name] === b[name])

/** The memory of an earlier reading, if it was read for the same loom and the same definitions. */
export function usable(
  previous: Reading | undefined,
  settings: ReadSettings,
  key: string,
): Memory | null {
  const memory = previous && Memory.of.get(previous)
  return memory && sameSettings(memory.settings, settings) && memory.definitions.key === key
    ? memory
    : null
}
