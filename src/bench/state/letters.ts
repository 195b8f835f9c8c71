/** The same with a small first letter: a label in the middle of a sentence. */
export const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1)

/** The same with a capital: the beginning of a sentence. */
export const upperFirst = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)
