export interface Download {
  readonly name: string
  readonly type: string
  readonly text: string | Uint8Array<ArrayBuffer>
}

/** Hand a file to the user through the browser's own way of saving. */
export function download({ name, type, text }: Download): void {
  const address = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = name
  document.body.append(link)
  link.click()
  link.remove()
  // The browser takes the file up after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}
