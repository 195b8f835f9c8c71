/** Files that come from outside: chosen, dropped on the page, pasted; and pieces in the address. */
import { fileOpen, supported } from 'browser-fs-access'
import { isForWriting } from '../widgets/fields'

/** What takes them: the keeper. */
interface Taker {
  readonly take: (file: File, handle?: FileSystemFileHandle) => Promise<void>
  readonly takeLink: (hash: string) => Promise<void>
}

/** Choose a file, so that it can be saved back in its place. False: this browser cannot; ask with a field for files. */
export function chooseFile(keeper: Taker): boolean {
  if (!supported) return false
  void fileOpen({ extensions: ['.json'], mimeTypes: ['application/json'], description: 'Pieces' })
    .then((file) => keeper.take(file, file.handle))
    // Nothing was chosen.
    .catch(() => undefined)
  return true
}

/** A pasted text that is a file of a piece. */
const isPiece = (text: string): boolean => /^\s*\{/.test(text) && text.includes('"pegwright"')

/** Take what is dropped or pasted on the page, and what stands in its address. Returns how to stop. */
export function takeIncoming(keeper: Taker, target: Window = window): () => void {
  const over = (event: DragEvent) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault()
  }
  const drop = (event: DragEvent) => {
    const [item] = [...(event.dataTransfer?.items ?? [])].filter(({ kind }) => kind === 'file')
    const file = item?.getAsFile()
    if (!item || !file) return
    event.preventDefault()
    void handleOf(item).then((handle) => keeper.take(file, handle))
  }
  const paste = (event: ClipboardEvent) => {
    if (event.defaultPrevented || isForWriting(event.target)) return
    const [file] = event.clipboardData?.files ?? []
    const text = event.clipboardData?.getData('text/plain') ?? ''
    const taken = file ?? (isPiece(text) ? new File([text], 'Pasted piece') : null)
    if (!taken) return
    event.preventDefault()
    void keeper.take(taken)
  }
  const address = () => void keeper.takeLink(target.location.hash)
  target.addEventListener('dragover', over)
  target.addEventListener('drop', drop)
  target.addEventListener('paste', paste)
  target.addEventListener('hashchange', address)
  return () => {
    target.removeEventListener('dragover', over)
    target.removeEventListener('drop', drop)
    target.removeEventListener('paste', paste)
    target.removeEventListener('hashchange', address)
  }
}

/** How the dropped file can be saved back, where the browser can. Asked for in the event itself. */
async function handleOf(item: DataTransferItem): Promise<FileSystemFileHandle | undefined> {
  const asked = (
    item as { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> }
  ).getAsFileSystemHandle?.()
  const handle = await asked?.catch(() => null)
  return handle?.kind === 'file' ? (handle as FileSystemFileHandle) : undefined
}
