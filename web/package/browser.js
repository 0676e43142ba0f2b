import init from './engine/coilnest_web.js';

await init({ module_or_path: new URL('./engine/coilnest_web_bg.wasm', import.meta.url) });

export * from './functions.js';
