import { timeOf } from './dates'

/** How it stands with keeping the piece on the bench. All that is said of it comes from here. */
export type Keeping =
  /** The browser has not answered yet. */
  | { readonly state: 'asked' }
  /** It is as it was opened. */
  | { readonly state: 'unchanged' }
  /** It was kept last time. */
  | { readonly state: 'taken up'; readonly atItsPlace: boolean }
  | { readonly state: 'kept'; readonly date: string }
  /** It changed since it was kept, and is kept at once; `date` is of what was kept before. */
  | { readonly state: 'changed'; readonly date: string | null }
  | { readonly state: 'not kept'; readonly message: string }

/** One line for the head; empty where there is nothing to say. */
export function keepingLine(keeping: Keeping): string {
  switch (keeping.state) {
    case 'taken up':
      return keeping.atItsPlace ? 'Back where you left it' : 'Your piece as you left it'
    case 'kept':
      return `Kept in this browser at ${timeOf(keeping.date)}`
    case 'changed':
      return keeping.date === null
        ? 'Being kept'
        : `Kept in this browser at ${timeOf(keeping.date)}`
    case 'unchanged':
      return 'Kept here once you change it'
    case 'not kept':
      return 'Not kept in this browser'
    case 'asked':
      return ''
  }
}

/** What is known of the piece when something else goes wrong; empty where nothing is. */
export function keepingSentence({ state }: Keeping): string {
  switch (state) {
    case 'kept':
    case 'taken up':
      return 'Your piece is kept in this browser.'
    case 'changed':
      return 'Your last change is not kept yet: save your piece as a file.'
    case 'not kept':
      return 'Your piece is not kept: save it as a file.'
    default:
      return ''
  }
}
