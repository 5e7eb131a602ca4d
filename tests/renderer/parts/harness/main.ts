import { mount } from 'svelte'
import { backCloses } from '../../../../src-renderer/state/back-closes'
import { Router } from '../../../../src-renderer/state/router.svelte'
import Harness from './Harness.svelte'

const router = new Router(window)
backCloses.follow(window)
const target = document.getElementById('app')
if (target !== null) mount(Harness, { target, props: { router } })
