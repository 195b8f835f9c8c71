import { mount } from 'svelte'
import Bench from './Bench.svelte'
import { takeNewVersion } from './offline/newVersion'
import { loadReader } from './words/reader.svelte'

const target = document.getElementById('bench')
if (!target) throw new Error('The page has no #bench to mount the app in')

if (!(await takeNewVersion())) {
  mount(Bench, { target })
  void loadReader()
}
