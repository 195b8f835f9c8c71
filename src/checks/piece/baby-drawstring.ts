import { changeStep } from '../../pattern/edits/piece'
import type { PieceRule } from '../rule'
import { forSteps, stepNamed } from './steps'

/** The cautions in print leave no cord at the head or neck: an edge with a running yarn in it is one. */
export const babyDrawstring: PieceRule = {
  id: 'piece-baby-drawstring',
  title: 'Drawstring on a piece for a baby',
  severity: 'warning',
  scope: 'piece',
  check: (work) => {
    if (!work.pattern.making.forBaby) return []
    return forSteps(work, ({ step }, index) =>
      step.kind === 'cast on' && step.how === 'drawstring'
        ? {
            step: index,
            message: `${stepNamed(work, index)} makes a drawstring edge, and this piece is for a baby or child.`,
            advice:
              'Cast on another way, or fasten off the yarn end so that nothing can be pulled. Check your local rules on cords in children’s clothing.',
            tries: [
              {
                label: 'Cast on by e-wrap instead',
                edit: (pattern) => changeStep(pattern, index, { ...step, how: 'e-wrap' }),
              },
            ],
          }
        : null,
    )
  },
}
