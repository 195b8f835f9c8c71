import type { Pattern } from '../pattern/pattern'
import lampRoomCuff from '../../seeds/lamp-room-cuff.json'
import { readFile } from './format'

/** A chart that ships with the app, from the light of Tarrow Skerry. */
export interface StarterChart {
  /** The name of its file in seeds/. */
  readonly id: string
  readonly title: string
  /** One line for the list: what it is, on which loom. */
  readonly about: string
  /** Reads the file; the same pattern each time. */
  readonly pattern: () => Pattern
}

export function starter(id: string, file: { title: string }, about: string): StarterChart {
  let known: Pattern | undefined
  const pattern = (): Pattern => {
    if (known) return known
    const result = readFile(JSON.stringify(file))
    if (!result.ok) throw new Error(`seeds/${id}.json: ${result.message}`)
    return (known = result.pattern)
  }
  return { id, title: file.title, about, pattern }
}

/** What the app opens with; the others are fetched when somebody asks for them. */
export const firstStarter = starter(
  'lamp-room-cuff',
  lampRoomCuff,
  'Wrist cuff of rib and ropes; round loom of 36 pegs',
)
