/* What Measure shows once something is opened, or where a job has it. */

export { default as CoilChoices } from './CoilChoices.svelte';
export { default as DrawingChoices } from './DrawingChoices.svelte';
export { default as NestChoices } from './NestChoices.svelte';
export { default as SetAside } from './SetAside.svelte';
export { default as TapeFields } from './TapeFields.svelte';
