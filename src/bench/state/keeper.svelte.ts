import { untrack } from 'svelte'
import { excerpt } from '../../pattern/excerpt'
import { begin, type History } from '../../pattern/history'
import type { Pattern } from '../../pattern/pattern'
import { autosave, flushOn, type Autosave } from '../../shelf/autosave'
import { nowText } from '../../shelf/dates'
import { download } from '../../shelf/download'
import { writeFile } from '../../shelf/format'
import { openFile, type FileData } from '../../shelf/file'
import { openJournal, type Journal, type Written } from '../../shelf/journal'
import { fromLink } from '../../shelf/link'
import { openKnitting } from '../../shelf/knitting'
import { newId, openShelf, type Recovered, type Shelf } from '../../shelf/keep'
import {
  clearAside,
  fromAside,
  ownPiece,
  putAside,
  putOwnPiece,
  putWhereaboutsAside,
  smallStore,
  whereaboutsAside,
  windowStore,
} from '../../shelf/rescue'
import { openVersions, type PieceVersion } from '../../shelf/versions'
import { hold } from '../../shelf/windows'
import type { Bench } from './bench.svelte'
import type { Keeping } from '../../shelf/keeping'
import type { Panes } from './panes.svelte'
import { savePiece } from './ownFile'
import { goBackTo, whereaboutsOf, type Whereabouts } from './whereabouts'

/** A piece that was never kept has its place aside under this id. */
const unchangedId = ''
/** Milliseconds that the place rests before it is kept. */
const placeRests = 500

/** Milliseconds of work from one version to the next. */
const versionEvery = 600_000

/** What was worked on last. */
interface Last {
  readonly id: string
  readonly revision: number
  readonly history: History
  readonly whereabouts?: unknown
}

const named = ({ title }: Pattern): string => excerpt(title) || 'The piece'

/** Ties the bench to the shelf: what is made is kept, and is there again after a reload. */
export class Keeper {
  keeping: Keeping = $state.raw({ state: 'asked' })
  /** Why a file or kept piece was not opened; a dialog shows it. */
  problem = $state.raw<{ message: string; file: FileData | null } | null>(null)
  ready = $state(false)
  /** Where those are who knit the pieces. */
  readonly knitting = openKnitting()

  readonly #bench: Bench
  readonly #panes: Panes
  readonly #small = smallStore()
  readonly #window = windowStore()
  #id = newId()
  #revision = 0
  /** The version of the history in which the piece came on the bench. */
  #came = 0
  /** The piece as it was opened from a file or a starter chart. */
  #opened: Pattern | null = null
  /** The version that is not to be kept: it is kept already, or is the first chart as it comes. */
  #asItCame: Pattern | null = null
  /** The version that was taken up at the start: of this it is said that it is back. */
  #takenUp: Pattern | null = null
  #shelf: Shelf | undefined
  #journal: Journal | undefined
  /** Lets go of the piece on the bench, so that another window may hold it. */
  #letGo: (() => void) | null = null
  #saving: Autosave | undefined
  /** The file that the piece was opened from, where the browser can write it. */
  #file: FileSystemFileHandle | null = null
  readonly #versions = openVersions()
  /** When a version of the piece on the bench was kept last; milliseconds. */
  #noted = 0

  constructor(bench: Bench, panes: Panes) {
    this.#bench = bench
    this.#panes = panes
  }

  /** Take up the work that was kept last, then keep every change. Returns how to stop. */
  start(): () => void {
    const shelf = (this.#shelf = openShelf())
    const saving = (this.#saving = autosave(shelf, {
      onStatus: (status, { pattern }) => {
        if (status.state === 'not kept') this.keeping = status
        else if (pattern === this.#bench.first) {
          clearAside(this.#small)
          this.#noteVersion()
          if (pattern !== this.#takenUp) this.keeping = status
        }
      },
    }))
    const endFlush = flushOn(saving, window, ['pagehide', 'visibilitychange'])
    const leave = () => {
      this.#putLastAside()
      putWhereaboutsAside(this.#small, this.#revision > 0 ? this.#id : unchangedId, this.#here())
    }
    const ask = (event: BeforeUnloadEvent) => {
      if (this.#wouldBeLost()) event.preventDefault()
    }
    window.addEventListener('pagehide', leave)
    window.addEventListener('beforeunload', ask)
    this.#asItCame = this.#bench.first
    // Told by the bench itself, not by the screen: what cannot be shown is kept all the same.
    this.#bench.onVersion = () => this.#keep()
    const endPlaces = this.#keepPlaces()
    const journal = (this.#journal = openJournal())
    const lookFor = (id?: string) => Promise.all([shelf.recover(id), journal.read(id)])
    const id = ownPiece(this.#window)
    void lookFor(id).then(async (own) => {
      const [found, written] = own[0].state === 'nothing' && !own[1] ? await lookFor() : own
      const last = this.#newest(found, written, id)
      this.#takeUp(found, last, await this.#hold(last?.id ?? this.#id))
      await this.takeLink(window.location.hash)
    })
    return () => {
      this.#bench.onVersion = null
      endFlush()
      endPlaces()
      window.removeEventListener('pagehide', leave)
      window.removeEventListener('beforeunload', ask)
      void saving.flush()
      saving.stop()
    }
  }

  #here(): Whereabouts {
    return whereaboutsOf(this.#bench, this.#panes)
  }

  #keep(): void {
    const { first: pattern } = this.#bench
    if (!this.ready || pattern === this.#asItCame) return
    this.#asItCame = null
    if (pattern !== this.#takenUp) this.#takenUp = null
    const whereabouts = untrack(() => this.#here())
    this.#revision++
    putOwnPiece(this.#window, this.#id)
    void this.#journal?.note(
      this.#id,
      this.#revision,
      untrack(() => this.#bench.history),
      this.#came,
    )
    this.#saving?.changed({ id: this.#id, pattern, revision: this.#revision, whereabouts })
    const { keeping } = this
    if (keeping.state !== 'not kept')
      this.keeping = { state: 'changed', date: 'date' in keeping ? keeping.date : null }
  }

  /** Under which the piece on the bench is kept. */
  get id(): string {
    return this.#id
  }

  /** The piece on the bench is worked on, though it is not changed: it is kept from now on. */
  keepThis(): void {
    this.#opened = null
    if (this.#revision > 0) return
    this.#asItCame = null
    this.#keep()
  }

  /** Of what was kept and put aside, by this window if it had a piece of its own, the last; with what can be taken back. */
  #newest(found: Recovered, written: Written | null, own?: string): Last | null {
    const kept = found.state === 'recovered' ? found : null
    const isWrittenLast =
      written &&
      (kept?.id === written.id
        ? written.revision >= kept.revision
        : !kept || written.date > kept.date)
    const last: Last | null = isWrittenLast
      ? { ...written, whereabouts: kept?.id === written.id ? kept.whereabouts : undefined }
      : kept && { ...kept, history: begin(kept.pattern) }
    const aside = fromAside(this.#small)
    const isOwn = own === undefined || own === aside?.id
    return aside && isOwn && (last?.id !== aside.id || aside.revision > last.revision)
      ? { ...aside, history: begin(aside.pattern) }
      : last
  }

  /** Hold the piece that comes on the bench, in place of the one before. False: another window does. */
  async #hold(id: string): Promise<boolean> {
    this.#letGo?.()
    this.#letGo = await hold(id)
    return this.#letGo !== null
  }

  /** What the shelf found, or said, when the page began. */
  #takeUp(found: Recovered, last: Last | null, isHeld: boolean): void {
    // Who has begun to work before the browser answered goes on with that.
    const begun = this.#bench.first !== this.#asItCame
    if (last && !begun) {
      const { pattern } = last.history.present
      this.#id = isHeld ? last.id : newId()
      this.#revision = isHeld ? last.revision : 0
      const isKept = found.state === 'recovered' && found.id === last.id
      this.#asItCame = isKept && found.revision === last.revision ? pattern : null
      this.#takenUp = pattern
      this.#bench.restart(isHeld ? last.history : begin(pattern))
      if (!isHeld) {
        this.#asItCame = pattern
        this.#bench.say(
          `${named(pattern)} is open in another window. What you change here is kept as a second piece.`,
        )
      }
    }
    const place = whereaboutsAside(this.#small, last ? last.id : unchangedId) ?? last?.whereabouts
    const atItsPlace = !begun && goBackTo(place, this.#bench, this.#panes)
    if (found.state === 'unreadable') this.#refuse(found.message, found.file)
    this.ready = true
    this.#keep()
    if (found.state === 'no store') this.keeping = { state: 'not kept', message: found.message }
    else if (!begun)
      this.keeping = last ? { state: 'taken up', atItsPlace } : { state: 'unchanged' }
  }

  /** The place is kept beside the piece when it has rested for a moment. */
  #keepPlaces(): () => void {
    let clock: ReturnType<typeof setTimeout> | undefined
    const end = $effect.root(() => {
      $effect(() => {
        const here = this.#here()
        if (!this.ready) return
        clearTimeout(clock)
        clock = setTimeout(() => void this.#shelf?.keepWhereabouts(this.#id, here), placeRests)
      })
    })
    return () => {
      clearTimeout(clock)
      end()
    }
  }

  /** Put aside what the database has not taken yet. False: it could not be put there. */
  #putLastAside(): boolean {
    const { first: pattern } = this.#bench
    const last = this.#saving?.unkept().findLast((piece) => piece.pattern === pattern)
    return !last || putAside(this.#small, last)
  }

  /** Would leaving the page lose something? Then the browser asks. */
  #wouldBeLost(): boolean {
    const unkept = this.#saving?.unkept() ?? []
    if (unkept.length === 0) return false
    const others = unkept.some(({ id }) => id !== this.#id)
    return this.keeping.state === 'not kept' || others || !this.#putLastAside()
  }

  /** Another piece comes on the bench; what lay there stays kept under its own id. */
  open(pattern: Pattern, label: string): void {
    this.#leave()
    this.#file = null
    this.#opened = pattern
    this.#id = newId()
    this.#noted = 0
    this.#revision = 0
    void this.#hold(this.#id)
    this.#came = this.#bench.history.past.length + 1
    this.#bench.open(pattern, label)
    this.#bench.say(`${named(pattern)} is on the bench. Undo brings back the piece before it.`)
  }

  /** Put a piece that was made here on the bench, to be kept beside the one it was made from. */
  openMade(pattern: Pattern, label: string): void {
    this.open(pattern, label)
    this.#opened = null
  }

  /** Open a file; one that cannot be read leaves the bench as it is. With a handle it is saved back in its place. */
  async take(file: File, handle?: FileSystemFileHandle): Promise<void> {
    const result = await openFile(file)
    const name = excerpt(file.name)
    if (!result.ok) return this.#refuse(`${name} was not opened. ${result.message}`)
    this.open(result.pattern, `Open ${name}`)
    this.#file = handle ?? null
  }

  /** Open the piece that the address of the page carries, as a copy, and take it out of the address. */
  async takeLink(hash: string): Promise<void> {
    const result = await fromLink(hash)
    if (!result) return
    window.history.replaceState(null, '', window.location.pathname + window.location.search)
    if (result.ok) this.openMade(result.pattern, 'Open a link')
    else this.#refuse(`The link was not opened. ${result.message}`)
  }

  /** What was opened and not changed is not worth keeping: it lies where it was opened from. */
  #leave(): void {
    const id = this.#id
    const isUntouched = this.#opened === this.#bench.first
    const here = this.#here()
    void this.#saving?.flush().then(async () => {
      if (isUntouched) await this.removeForGood(id)
      else await this.#shelf?.keepWhereabouts(id, here)
    })
  }

  /** A piece is gone for good, with all that is kept of it. */
  async removeForGood(id: string): Promise<void> {
    await Promise.all([
      this.#shelf?.remove(id),
      this.#journal?.remove(id),
      this.#versions.removeAll(id),
      this.knitting.remove(id),
    ])
  }

  async saveFile(): Promise<void> {
    // Undo may have brought back the piece before the one of the file.
    const isOfFile = this.#bench.history.past.length >= this.#came
    this.#bench.say(await savePiece(this.#bench.first, isOfFile ? this.#file : null))
  }

  save(file: FileData): void {
    download(file)
  }

  /** Keep what is not kept yet, before the shelf is looked at. */
  async settle(): Promise<void> {
    await this.#saving?.flush()
  }

  /** The piece on the bench, as a version of now. */
  #now(name: string | null): PieceVersion {
    const { pattern, label } = this.#bench.history.present
    return { date: nowText(), name, label, text: writeFile(pattern) }
  }

  /** While it is worked on, a version is kept every some minutes. */
  #noteVersion(): void {
    const now = Date.now()
    if (Math.abs(now - this.#noted) < versionEvery) return
    this.#noted = now
    void this.#versions.add(this.#id, this.#now(null))
  }

  /** Keep the piece on the bench as a version of this name. */
  nameVersion(name: string): Promise<boolean> {
    return this.#versions.add(this.#id, this.#now(name))
  }

  /** Make the piece on the bench what it was: a step like any other. What it is now is kept as a version. */
  async goBackTo(version: { readonly pattern: Pattern; readonly name: string }): Promise<void> {
    await this.#versions.add(this.#id, this.#now(null))
    this.#bench.lookBack(null)
    this.#bench.apply(`Go back to ${version.name}`, () => version.pattern)
    this.#bench.say(`The piece is as it was at ${version.name}.`, { undo: true })
  }

  /** Put a kept piece on the bench, under its own id. */
  async openKept(id: string): Promise<void> {
    this.#leave()
    this.#file = null
    this.#opened = null
    const found = await this.#shelf?.recover(id)
    if (found?.state === 'recovered') {
      const name = named(found.pattern)
      const isHeld = await this.#hold(found.id)
      this.#id = isHeld ? found.id : newId()
      this.#revision = isHeld ? found.revision : 0
      this.#came = this.#bench.history.past.length + 1
      this.#bench.open(found.pattern, `Open ${name}`)
      this.#noted = 0
      void this.#versions.add(this.#id, {
        ...{ date: found.date, name: null, label: 'As it was left' },
        text: writeFile(found.pattern),
      })
      goBackTo(found.whereabouts, this.#bench, null)
      this.#bench.say(
        isHeld
          ? `${name} is on the bench.`
          : `${name} is open in another window. What you change here is kept as a second piece.`,
      )
    } else if (found?.state === 'unreadable') this.#refuse(found.message, found.file)
    else if (found?.state === 'no store') this.#refuse(found.message)
    else this.#refuse('This piece was removed in another window.')
  }

  #refuse(message: string, file: FileData | null = null): void {
    this.problem = { message, file }
    this.#bench.ask('problem')
  }
}
