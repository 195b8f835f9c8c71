import { SvelteMap } from 'svelte/reactivity'
import { counted, listed } from '../../languages/english/forms'
import { excerpt } from '../../pattern/excerpt'
import { setText } from '../../pattern/edits/settings'
import { archiveOf, readArchive, type Archived } from '../../shelf/archive'
import { nowText } from '../../shelf/dates'
import { download } from '../../shelf/download'
import { readFile, writeFile } from '../../shelf/format'
import { newId, openShelf, type OnShelf, type Stage } from '../../shelf/keep'
import { linkOf } from '../../shelf/link'
import { openVersions, type PieceVersion } from '../../shelf/versions'
import type { Bench } from '../state/bench.svelte'
import type { Keeper } from '../state/keeper.svelte'
import {
  byOrder,
  has,
  isIn,
  isPast,
  PieceReader,
  type Group,
  type Order,
  type Piece,
} from './piece'
import { pictureOf } from './picture'

/** Of the larger picture; the cards show its middle. CSS pixels. */
const picture = { width: 344, height: 210 }

/** The shelf as it is shown: all pieces, which of them are looked at, and what can be done with them. */
export class Pieces {
  all = $state.raw<readonly Piece[]>([])
  /** The store does not answer. */
  missing = $state(false)
  group = $state<Group>('All')
  order = $state<Order>('Last worked')
  search = $state('')
  #chosen = $state<string | null>(null)
  versions = $state.raw<readonly PieceVersion[]>([])
  /** What was done last, for the line that says it. */
  said = $state('')
  /** Addresses of pictures by piece and date. */
  readonly pictures = new SvelteMap<string, string>()

  readonly shown: readonly Piece[] = $derived.by(() => {
    const words = this.search.toLowerCase().split(/\s+/).filter(Boolean)
    const found = this.all.filter((piece) => isIn(piece, this.group) && has(piece, words))
    return found.toSorted(byOrder[this.order])
  })
  /** What all of it takes of the browser's room. */
  readonly room: string = $derived.by(() => {
    const kilobytes = this.all.reduce((sum, { text }) => sum + text.length, 0) / 1024
    return kilobytes < 1024 ? `${Math.ceil(kilobytes)} kB` : `${Math.ceil(kilobytes / 1024)} MB`
  })
  readonly chosen: Piece | null = $derived.by(
    () => this.shown.find(({ id }) => id === this.#chosen) ?? this.shown[0] ?? null,
  )

  readonly #bench: Bench
  readonly keeper: Keeper
  readonly #shelf = openShelf()
  readonly #versions = openVersions()
  readonly #reader = new PieceReader()

  constructor(bench: Bench, keeper: Keeper) {
    this.#bench = bench
    this.keeper = keeper
  }

  isOnBench({ id }: OnShelf): boolean {
    return id === this.keeper.id
  }

  count(group: Group): number {
    return this.all.filter((piece) => isIn(piece, group)).length
  }

  choose(id: string): void {
    this.#chosen = id
  }

  async refresh(): Promise<void> {
    await this.keeper.settle()
    const all = await this.#shelf.all()
    this.missing = all === null
    for (const piece of all ?? []) if (isPast(piece)) await this.keeper.removeForGood(piece.id)
    const there = (all ?? []).filter((piece) => !isPast(piece))
    this.all = there.map((piece) => this.#reader.read(piece))
    void this.#draw()
  }

  pictureOf({ id, date }: OnShelf): string | undefined {
    return this.pictures.get(`${id} ${date}`)
  }

  /** Pictures are drawn one by one, so that hands are not kept waiting. */
  async #draw(): Promise<void> {
    const { all } = this
    for (const piece of all) {
      if (this.all !== all) return
      const key = `${piece.id} ${piece.date}`
      if (!piece.pattern || this.pictures.has(key)) continue
      await new Promise((resolve) => setTimeout(resolve))
      const svg = new Blob([pictureOf(piece.pattern, picture)], { type: 'image/svg+xml' })
      this.pictures.set(key, URL.createObjectURL(svg))
    }
  }

  /** Let the pictures go. */
  end(): void {
    for (const address of this.pictures.values()) URL.revokeObjectURL(address)
    this.pictures.clear()
  }

  async lookUpVersions(id: string): Promise<void> {
    const versions = await this.#versions.list(id)
    if (this.chosen?.id === id) this.versions = versions
  }

  open({ id }: OnShelf): void {
    this.#bench.close('pieces')
    if (id !== this.keeper.id) void this.keeper.openKept(id)
  }

  async #say(done: boolean, text: string): Promise<void> {
    await this.refresh()
    this.said = done ? text : 'This was not kept: the browser’s store does not take it.'
  }

  async copy({ pattern }: Piece): Promise<void> {
    if (!pattern) return
    const copy = setText(pattern, { title: `${pattern.title}, copy` })
    const id = newId()
    const status = await this.#shelf.keep({ id, pattern: copy, revision: 1 })
    this.#chosen = id
    await this.#say(status.state === 'kept', `Copied as ${excerpt(copy.title)}.`)
  }

  /** Put a link that carries the whole piece on the clipboard. */
  async copyLink({ pattern }: Piece): Promise<void> {
    if (!pattern) return
    const made = await linkOf(pattern, location.href)
    if (!made.ok) {
      this.said = made.message
      return
    }
    this.said = await navigator.clipboard.writeText(made.link).then(
      () => 'The link is copied. It holds the whole piece: whoever opens it gets a copy.',
      () => 'The browser did not let the link be copied.',
    )
  }

  async rename(piece: Piece, title: string): Promise<void> {
    if (!piece.pattern || title === piece.title) return
    if (this.isOnBench(piece)) {
      this.#bench.apply('Change the title', (pattern) => setText(pattern, { title }))
      await this.#say(true, `Renamed to ${excerpt(title)}.`)
      return
    }
    const found = await this.#shelf.recover(piece.id)
    if (found.state !== 'recovered') return this.#say(false, '')
    const renamed = setText(found.pattern, { title })
    const revision = found.revision + 1
    const status = await this.#shelf.keep({ ...found, pattern: renamed, revision })
    await this.#shelf.say(piece.id, { stage: piece.stage })
    await this.#say(status.state === 'kept', `Renamed to ${excerpt(title)}.`)
  }

  async setStage({ id }: OnShelf, stage: Stage): Promise<void> {
    await this.#say(await this.#shelf.say(id, { stage }), `Now ${stage}.`)
  }

  async remove({ id, title }: OnShelf): Promise<void> {
    const removed = nowText()
    await this.#say(
      await this.#shelf.say(id, { removed }),
      `${excerpt(title)} is removed. It can be brought back for 60 days.`,
    )
  }

  async bringBack({ id, title }: OnShelf): Promise<void> {
    await this.#say(await this.#shelf.say(id, { removed: null }), `${excerpt(title)} is back.`)
  }

  /** Keep the piece as it is now as a version of this name. */
  async nameVersion(piece: Piece, name: string): Promise<void> {
    const { id, text } = piece
    const date = nowText()
    const label = 'Named'
    const done = this.isOnBench(piece)
      ? await this.keeper.nameVersion(name)
      : await this.#versions.add(id, { date, name, label, text })
    await this.#say(done, `Kept as version ${excerpt(name)}.`)
    await this.lookUpVersions(id)
  }

  async removeVersion({ id }: OnShelf, version: PieceVersion): Promise<void> {
    await this.#versions.remove(id, version.date)
    await this.lookUpVersions(id)
    this.said = 'The version is removed.'
  }

  /** All pieces and their versions as one file. */
  async saveAll(): Promise<void> {
    await this.refresh()
    const pieces: Archived[] = []
    for (const piece of this.all)
      pieces.push({ ...piece, versions: await this.#versions.list(piece.id) })
    const file = archiveOf(pieces, nowText())
    download(file)
    this.said = `${counted(pieces.length, 'piece')} saved as ${file.name}.`
  }

  /** Bring pieces back from such a file. What is here already stays as it is. */
  async bringAllBack(file: File): Promise<void> {
    const read = await readArchive(file)
    if (!read.ok) {
      this.said = `${excerpt(file.name)} was not read. ${read.message}`
      return
    }
    let [back, same] = [0, 0]
    for (const piece of read.pieces) {
      const known = this.all.find(({ id }) => id === piece.id)
      if (known?.pattern && writeFile(known.pattern) === piece.text) {
        same++
        continue
      }
      const pattern = readFile(piece.text)
      if (!pattern.ok) continue
      // Another state of a piece that is here comes as a second piece.
      const id = known ? newId() : piece.id
      const status = await this.#shelf.keep({ id, pattern: pattern.pattern, revision: 1 })
      if (status.state === 'not kept') {
        this.said = status.message
        return
      }
      await this.#shelf.say(id, { stage: piece.stage, removed: piece.removed })
      for (const version of piece.versions) await this.#versions.add(id, version)
      back++
    }
    await this.refresh()
    const parts = [
      `${counted(back, 'piece')} brought back`,
      ...(same > 0 ? [`${same} here already`] : []),
      ...(read.unread > 0 ? [`${read.unread} that cannot be read`] : []),
    ]
    this.said = `${listed(parts)}.`
  }
}
