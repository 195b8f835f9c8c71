import { mount } from 'svelte'
import Bench from './Bench.svelte'

const target = document.getElementById('bench')
if (!target) throw new Error('The page has no #bench to mount the app in')

mount(Bench, { target })
