import { EditorView } from '@codemirror/view'

/** How the text is set. Colours are the bench's own; no meaning hangs on colour alone. */
export const look = EditorView.theme({
  '&': {
    blockSize: '100%',
    color: 'var(--ink)',
    backgroundColor: 'transparent',
    fontFamily: 'inherit',
    fontSize: '1rem',
  },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': {
    fontFamily: 'inherit',
    lineHeight: '1.5',
    scrollbarWidth: 'thin',
    overflow: 'auto',
  },
  '.cm-content': { padding: '0.25rem 0', caretColor: 'var(--accent)' },
  // The first words of a line hang out to the left of those that follow.
  '.cm-line': { padding: '0 0.5rem 0 1.5rem', textIndent: '-1.1rem' },
  '.cm-line::selection, .cm-line ::selection': {
    backgroundColor: 'color-mix(in srgb, var(--accent) 28%, transparent)',
  },
  '.cm-line.lit': { backgroundColor: 'var(--accent-wash)', boxShadow: 'inset 3px 0 var(--accent)' },
  '.lit-stitch': { borderBlockEnd: '2px solid var(--accent)' },
  '.cm-gutters': { backgroundColor: 'transparent', color: 'var(--quiet)', border: 'none' },
  '.margin .cm-gutterElement': {
    inlineSize: '1.5rem',
    padding: '0.3rem 0 0 0.4rem',
    cursor: 'pointer',
  },
  '.mark': {
    display: 'block',
    inlineSize: '14px',
    blockSize: '14px',
    fill: 'none',
    stroke: 'currentcolor',
    strokeWidth: '2',
    strokeLinecap: 'round',
    strokeLinejoin: 'round',
  },
  '.error': { color: 'var(--error)' },
  '.warning': { color: 'var(--warning)' },
  '.hint': { color: 'var(--hint)' },
  '.cm-foldGutter .cm-gutterElement': {
    inlineSize: '1.5rem',
    textAlign: 'center',
    cursor: 'pointer',
  },
  '.cm-foldPlaceholder': {
    backgroundColor: 'var(--accent-wash)',
    color: 'var(--ink)',
    border: '1px solid var(--control)',
    borderRadius: '4px',
    paddingInline: '0.4rem',
    marginInlineStart: '0.4rem',
  },

  '.token-heading': { fontWeight: '700' },
  '.token-head': { fontWeight: '700' },
  '.token-repeat': { color: 'var(--accent)' },
  '.token-reference, .token-row': { color: 'var(--accent)' },
  '.token-turn': { color: 'var(--accent)', fontWeight: '700' },
  '.token-count': { color: 'var(--quiet)' },

  // Findings: a wavy, a dashed or a dotted line, as bad as they are.
  '.cm-lintRange': { backgroundImage: 'none', paddingBlockEnd: '0' },
  '.cm-lintRange-error': {
    backgroundImage: 'none',
    textDecoration: 'underline wavy var(--error) 1.5px',
    textUnderlineOffset: '3px',
  },
  '.cm-lintRange-warning': {
    backgroundImage: 'none',
    textDecoration: 'underline dashed var(--warning) 1.5px',
    textUnderlineOffset: '3px',
  },
  '.cm-lintRange-hint': {
    backgroundImage: 'none',
    textDecoration: 'underline dotted var(--hint) 2px',
    textUnderlineOffset: '3px',
  },
  '.cm-lintRange-active': { backgroundColor: 'transparent' },
  '.cm-lintPoint:after': { borderBottomColor: 'var(--error)' },

  '.cm-tooltip': {
    color: 'var(--ink)',
    backgroundColor: 'var(--sheet)',
    border: '1px solid var(--control)',
    borderRadius: '6px',
    boxShadow: 'var(--shadow)',
    fontSize: '0.95rem',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': { fontFamily: 'inherit', maxBlockSize: '14rem' },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': {
    padding: '0.2rem 0.6rem',
    minBlockSize: 'var(--press-close)',
    alignContent: 'center',
    lineHeight: '1.5',
    textIndent: '0',
  },
  '.cm-tooltip-autocomplete ul li[aria-selected]': {
    backgroundColor: 'var(--accent)',
    color: 'var(--accent-ink)',
  },
  '.cm-completionDetail': { fontStyle: 'normal', marginInlineStart: '0.75em' },
  '.cm-completionMatchedText': { textDecoration: 'none', fontWeight: '700' },
  '.cm-tooltip-lint .cm-diagnostic': { maxInlineSize: '22rem' },
  // All of it stands below the text already.
  '.cm-tooltip:has(> .cm-tooltip-lint:empty)': { display: 'none' },
  '.cm-tooltip-lint:empty': { display: 'none' },
  '.cm-diagnostic': { padding: '0.4rem 0.7rem', textIndent: '0' },
  '.cm-diagnostic-error': { borderInlineStart: '4px solid var(--error)' },
  '.cm-diagnostic-warning': { borderInlineStart: '4px double var(--warning)' },
  '.cm-diagnostic-hint': { borderInlineStart: '4px dotted var(--hint)' },
  '.cm-diagnosticAction': {
    font: 'inherit',
    color: 'var(--ink)',
    backgroundColor: 'transparent',
    border: '1px solid var(--control)',
    borderRadius: '6px',
    minBlockSize: 'var(--press-close)',
    margin: '0.35rem 0.4rem 0 0',
    cursor: 'pointer',
  },
})
