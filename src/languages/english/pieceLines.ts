import { template } from './template'

const pegs = String.raw`pegs? \d{1,4}(?: to \d{1,4})?`

/** The lines of a piece that the program writes and reads back, in any dialect. */
export const pieceLines = {
  workChart: template('Work {name}{again}, {rows}{often}{end}', {
    name: '.{1,80}?',
    again: '(?: again)?',
    rows: String.raw`(?:Rnds?|Rows?) \d{1,4}(?:-\d{1,4})?`,
    often: String.raw`(?:, (?:once|twice|\d{1,9} times))?`,
    end: '[:.]',
  }),
  noChart: template('Work {name}: there is no chart of this name yet.', { name: '.{1,80}' }),
  whichTimes: template('{which} time{many}:', {
    which: String.raw`[Tt]he (?:\d{1,4}(?:st|nd|rd|th)(?:, | and )?)+`,
    many: 's?',
  }),
  castOn: template('{castOn} {count} {how}{where}.', {
    castOn: 'Cast on',
    count: String.raw`\d{1,4} pegs?`,
    how: '(?:by|with) [^.:]{1,60}',
    where: `: ${pegs}|,.*`,
  }),
  bindOff: template('{bindOff} {which}{how}.', {
    bindOff: '(?:Bind|Cast) off',
    which: String.raw`all \d{1,4} loops?|the \d{1,4} loops? on ${pegs}`,
    how: String.raw`\b.*`,
  }),
}
