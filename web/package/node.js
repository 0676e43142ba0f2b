import { readFileSync } from 'node:fs';
import { initSync } from './engine/coilnest_web.js';

initSync({ module: readFileSync(new URL('./engine/coilnest_web_bg.wasm', import.meta.url)) });

export * from './functions.js';
