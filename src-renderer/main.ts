import './styles/tokens.css'
import './styles/base.css'
import './styles/layout.css'
import './styles/parts.css'
import './styles/fields.css'
import './styles/print.css'
import { mount } from 'svelte'
import App from './App.svelte'

const target = document.getElementById('app')
if (target !== null) mount(App, { target })
