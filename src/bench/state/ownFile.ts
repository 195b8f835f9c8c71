import { fileSave } from 'browser-fs-access'
import { excerpt } from '../../pattern/excerpt'
import type { Pattern } from '../../pattern/pattern'
import { download } from '../../shelf/download'
import { fileOf } from '../../shelf/file'

/**
 * Save a piece as a file: in its place, where it was opened from one that the browser can write. Gives what
 * is said of it.
 */
export async function savePiece(
  pattern: Pattern,
  place: FileSystemFileHandle | null,
): Promise<string> {
  const file = fileOf(pattern)
  const blob = new Blob([file.text], { type: file.type })
  if (place && (await fileSave(blob, {}, place, true).catch(() => null)))
    return `Saved in ${excerpt(place.name)}.`
  download(file)
  return place
    ? `${excerpt(place.name)} could not be written: saved as ${file.name}.`
    : `Saved as ${file.name}.`
}
