import '../../../../src-renderer/styles/tokens.css'
import '../../../../src-renderer/styles/base.css'
import '../../../../src-renderer/styles/layout.css'
import '../../../../src-renderer/styles/parts.css'
import '../../../../src-renderer/styles/fields.css'
import { mount } from 'svelte'
import Harness from './Harness.svelte'

const target = document.getElementById('app')
if (target !== null)
  mount(Harness, {
    target,
    props: { comma: new URLSearchParams(location.search).get('sign') === 'comma' },
  })
