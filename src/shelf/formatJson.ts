import { inQuotes } from '../pattern/excerpt'

/**
 * Reading JSON so that a mistake can be shown at its place. The engines' own JSON.parse says it in
 * different words, not always with a line, and drops all but the last of keys given twice.
 * Accepts exactly what RFC 8259 does, less keys given twice and nesting beyond `deepest`.
 */
export type JsonResult =
  | { readonly ok: true; readonly value: unknown }
  /** `line` and `column` are 1-based. */
  | { readonly ok: false; readonly reason: string; readonly line: number; readonly column: number }

/** Our own files nest five deep. */
const deepest = 100

class Wrong extends Error {
  constructor(
    readonly at: number,
    reason: string,
  ) {
    super(reason)
  }
}

export function parseJson(text: string): JsonResult {
  try {
    return { ok: true, value: new Reader(text).readAll() }
  } catch (error) {
    if (!(error instanceof Wrong)) throw error
    const before = text.slice(0, error.at).split(/\r\n|\r|\n/)
    const column = Array.from(before.at(-1) ?? '').length + 1
    return { ok: false, reason: error.message, line: before.length, column }
  }
}

const space = /[ \t\r\n]*/y
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const word = /true|false|null/y
const words: Readonly<Record<string, unknown>> = { true: true, false: false, null: null }
const escape = /["\\/bfnrt]|u[0-9a-fA-F]{4}/y

class Reader {
  #at = 0
  #depth = 0

  constructor(private readonly text: string) {}

  readAll(): unknown {
    const value = this.#value('a value')
    if (this.#at < this.text.length) this.#fail('the end of the file')
    return value
  }

  #value(expected: string): unknown {
    this.#take(space)
    const next = this.text[this.#at]
    let value: unknown
    if (next === '{') value = this.#nested(() => this.#object())
    else if (next === '[') value = this.#nested(() => this.#array())
    else if (next === '"') value = this.#string()
    else {
      const plain = this.#take(word)
      const digits = plain ? '' : this.#take(number)
      if (!plain && !digits) this.#fail(expected)
      value = plain ? words[plain] : Number(digits)
    }
    this.#take(space)
    return value
  }

  #nested<T>(read: () => T): T {
    if (++this.#depth > deepest)
      throw new Wrong(this.#at, `the file nests more than ${deepest} levels deep`)
    this.#at++
    this.#take(space)
    const value = read()
    this.#depth--
    return value
  }

  #object(): unknown {
    const entries = new Map<string, unknown>()
    while (!this.#skip('}')) {
      if (entries.size > 0) {
        this.#need(',', '"," or "}"')
        this.#take(space)
      }
      const start = this.#at
      if (this.text[start] !== '"') this.#fail(entries.size > 0 ? 'a name' : 'a name or "}"')
      const key = this.#string()
      if (entries.has(key)) throw new Wrong(start, `${inQuotes(key)} is given twice`)
      this.#take(space)
      this.#need(':', '":"')
      entries.set(key, this.#value('a value'))
    }
    // Makes own properties of all names, also of "__proto__".
    return Object.fromEntries(entries)
  }

  #array(): unknown[] {
    const list: unknown[] = []
    while (!this.#skip(']')) {
      if (list.length > 0) this.#need(',', '"," or "]"')
      list.push(this.#value(list.length > 0 ? 'a value' : 'a value or "]"'))
    }
    return list
  }

  #string(): string {
    const start = this.#at++
    for (;;) {
      const next = this.text[this.#at]
      if (next === undefined) throw new Wrong(start, 'this text has no closing quote')
      if (next < ' ') throw new Wrong(this.#at, 'text may not run over the end of a line')
      this.#at++
      if (next === '"') return JSON.parse(this.text.slice(start, this.#at)) as string
      if (next === '\\' && !this.#take(escape))
        throw new Wrong(this.#at - 1, 'after "\\" stands no character that it can mark')
    }
  }

  #take(pattern: RegExp): string {
    pattern.lastIndex = this.#at
    const found = pattern.exec(this.text)?.[0] ?? ''
    this.#at += found.length
    return found
  }

  #skip(sign: string): boolean {
    if (this.text[this.#at] !== sign) return false
    this.#at++
    return true
  }

  #need(sign: string, expected: string): void {
    if (!this.#skip(sign)) this.#fail(expected)
  }

  #fail(expected: string): never {
    const [found] = this.text.slice(this.#at, this.#at + 2)
    const stands = found === undefined ? 'the file ends' : `${JSON.stringify(found)} stands`
    throw new Wrong(this.#at, `${stands} where ${expected} is expected`)
  }
}
