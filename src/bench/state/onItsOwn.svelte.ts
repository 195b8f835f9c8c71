/**
 * Make a state that outlives the part of the screen that asks for it first: what it derives stays
 * alive when that part is taken away.
 */
export function onItsOwn<State>(make: () => State): State {
  let made: { readonly state: State } | undefined
  $effect.root(() => {
    made = { state: make() }
  })
  if (!made) throw new Error('The state was not made')
  return made.state
}
