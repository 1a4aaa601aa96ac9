import { createRoot } from 'react-dom/client';
import './look/tokens.css';
import './look/base.css';
import './look/parts.css';
import './look/drawing.css';
import './look/screens.css';
import { App } from './app.tsx';
import { keepOffline } from './offline/register.ts';
import { keepFocus } from './parts/keep-focus.ts';
import { applyLight } from './parts/light.tsx';
import { readyBench } from './worker/bench.ts';

applyLight();
createRoot(document.querySelector('#root')!).render(<App />);
keepFocus();
keepOffline();
readyBench();
