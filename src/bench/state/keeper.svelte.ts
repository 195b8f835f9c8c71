import type { Pattern } from '../../pattern/pattern'
import { autosave, flushOn, type Autosave } from '../../shelf/autosave'
import { download } from '../../shelf/download'
import { fileOf, openFile, type FileData } from '../../shelf/file'
import { newId, openShelf, type Listed, type Shelf } from '../../shelf/keep'
import { clearAside, fromAside, putAside } from '../../shelf/rescue'
import { timeOf } from './dates'
import type { Bench } from './bench.svelte'

/** Ties the bench to the shelf: what is made is kept, and is there again after a reload. */
export class Keeper {
  /** One line for the header. */
  status = $state('')
  /** Why a file or kept piece was not opened; shown until it is closed. */
  problem = $state.raw<{ message: string; file: FileData | null } | null>(null)
  kept = $state.raw<readonly Listed[]>([])
  ready = $state(false)

  readonly #bench: Bench
  #id = newId()
  #revision = 0
  #keptRevision = 0
  /** The piece as it was opened from a file or a starter chart. */
  #opened: Pattern | null = null
  #shelf: Shelf | undefined
  #saving: Autosave | undefined

  constructor(bench: Bench) {
    this.#bench = bench
  }

  /** Take up the work that was kept last, then keep every change. Returns how to stop. */
  start(): () => void {
    const shelf = (this.#shelf = openShelf())
    const saving = (this.#saving = autosave(shelf, {
      onStatus: (status) => {
        if (status.state === 'kept' && status.revision === this.#revision) {
          this.#keptRevision = status.revision
          clearAside(localStorage)
        }
        this.status =
          status.state === 'kept'
            ? `Kept in this browser at ${timeOf(status.date)}`
            : status.message
      },
    }))
    const endFlush = flushOn(saving, window, ['pagehide', 'visibilitychange'])
    const putLastAside = () => {
      if (this.#revision !== this.#keptRevision)
        putAside(localStorage, {
          id: this.#id,
          revision: this.#revision,
          pattern: this.#bench.first,
        })
    }
    window.addEventListener('pagehide', putLastAside)
    let opened: Pattern | null = null
    const keep = () => {
      const { first: pattern } = this.#bench
      if (!this.ready || pattern === opened) return
      opened = null
      saving.changed({ id: this.#id, pattern, revision: ++this.#revision })
    }
    // Told by the bench itself, not by the screen: what cannot be shown is kept all the same.
    this.#bench.onVersion = keep
    void shelf.recover().then((found) => {
      const aside = fromAside(localStorage)
      const kept = found.state === 'recovered' ? found : null
      const newer =
        aside && (kept?.id !== aside.id || aside.revision > kept.revision) ? aside : null
      const last = newer ?? kept
      if (last) {
        this.#id = last.id
        this.#revision = last.revision
        this.#keptRevision = newer ? last.revision - 1 : last.revision
        opened = newer ? null : last.pattern
        this.#bench.restart(last.pattern)
        this.status = 'Taken up where it was left'
      }
      if (found.state === 'unreadable') this.problem = { message: found.message, file: found.file }
      else if (found.state === 'no store') this.status = found.message
      if (!last) opened = this.#bench.first
      this.ready = true
      keep()
    })
    return () => {
      this.#bench.onVersion = null
      endFlush()
      window.removeEventListener('pagehide', putLastAside)
      void saving.flush()
      saving.stop()
    }
  }

  /** Another piece comes on the bench; what lay there stays kept under its own id. */
  async open(pattern: Pattern, label: string): Promise<void> {
    await this.#leave()
    this.#opened = pattern
    this.#id = newId()
    this.#revision = 0
    this.#bench.open(pattern, label)
    this.#bench.say(`${label}. Undo brings back the piece before it.`)
  }

  /** Put a piece that was made here on the bench, to be kept beside the one it was made from. */
  async openMade(pattern: Pattern, label: string): Promise<void> {
    await this.open(pattern, label)
    this.#opened = null
  }

  /** Open a file; one that cannot be read leaves the bench as it is. */
  async take(file: File): Promise<void> {
    const result = await openFile(file)
    if (result.ok) await this.open(result.pattern, `Open ${file.name}`)
    else
      this.problem = {
        message: `${file.name} was not opened; your piece is as it was. ${result.message}`,
        file: null,
      }
  }

  /** What was opened and not changed is not worth keeping: it lies where it was opened from. */
  async #leave(): Promise<void> {
    await this.#saving?.flush()
    if (this.#opened === this.#bench.first) await this.#shelf?.remove(this.#id)
  }

  async removeKept(id: string): Promise<void> {
    await this.#shelf?.remove(id)
    await this.refreshKept()
  }

  saveFile(): void {
    const file = fileOf(this.#bench.first)
    download(file)
    this.#bench.say(`Saved as ${file.name}.`)
  }

  save(file: FileData): void {
    download(file)
  }

  async refreshKept(): Promise<void> {
    await this.#saving?.flush()
    this.kept = ((await this.#shelf?.list()) ?? []).filter(({ id }) => id !== this.#id)
  }

  /** Put a kept piece on the bench, under its own id. */
  async openKept(id: string): Promise<void> {
    await this.#leave()
    this.#opened = null
    const found = await this.#shelf?.recover(id)
    if (found?.state === 'recovered') {
      this.#id = found.id
      this.#revision = found.revision
      this.#bench.open(found.pattern, `Take up ${found.pattern.title}`)
      this.#bench.say(`${found.pattern.title} is on the bench.`)
    } else if (found?.state === 'unreadable')
      this.problem = { message: found.message, file: found.file }
    else this.problem = { message: 'This piece is no longer kept here.', file: null }
  }
}
