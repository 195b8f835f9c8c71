/**
 * What stands in a section: `key` explains stitches, `prose` tells no rows, `work` does.
 * `open`: before the first section.
 */
export type SectionKind = 'open' | 'key' | 'prose' | 'work'

const names: readonly (readonly [SectionKind, RegExp])[] = [
  [
    'key',
    /^(?:special |stitch(?:es)? )?(?:abbreviations?|key|stitch(?:es)? (?:used|guide|key|abbreviations)|special stitch(?:es)?|terms|stitches|glossary)$/i,
  ],
  [
    'prose',
    /^(?:how it is worked|notes?|designer'?s notes|pattern notes|materials?|you will need|yarn|loom|tools?|notions|gauge|tension|sizes?|finished (?:size|sizes|measurements)|measurements|skill level|finishing|to finish|making up|to make up|cautions?|about|difficulty|equipment|cast[- ]on|bind[- ]off|cast[- ]off)$/i,
  ],
  [
    'work',
    /^(?:instructions|directions|pattern|the pattern|to make|method|cuff|heel|heel turn|turn heel|heel flap|gusset|toe|foot|leg|body|crown|brim|ribbing|rib|band|border|edging|hand|thumb|sleeves?|back|front|yoke|collar|main part|hat|sock|mitt|mitten|wristlet|panel|scarf|top|bottom|sole|instep)s?$/i,
  ],
]

/** The kind of section that a line begins, if it is one of the headings that everyone uses. */
export function sectionKind(line: string): SectionKind | null {
  const whole = line.trim()
  const text = (whole.endsWith(':') ? whole.slice(0, -1) : whole).trimEnd()
  if (text.length > 40) return null
  return names.find(([, pattern]) => pattern.test(text))?.[0] ?? null
}
