/* What Measure shows once something is opened. */

export { default as CoilChoices } from './CoilChoices.svelte';
export { default as DrawingChoices } from './DrawingChoices.svelte';
export { default as NestChoices } from './NestChoices.svelte';
export { default as TapeFields } from './TapeFields.svelte';
