/** The point of a drawing, in its own mm, that is under the pointer; null where it is not shown. */
export function pointUnder(event: MouseEvent, svg: SVGSVGElement): DOMPoint | null {
  const matrix = svg.getScreenCTM()?.inverse()
  return matrix ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix) : null
}
