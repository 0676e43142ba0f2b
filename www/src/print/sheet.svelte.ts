import type { Component } from 'svelte';
import { code } from '../state/code.svelte';
import { photographs } from '../state/photographs.svelte';
import '../styles/print.css';
import JobSheet from './JobSheet.svelte';

/** The record of the job, ready to be printed: with its code and its photographs. */
export async function sheet(): Promise<Component> {
	await Promise.all([code.make(), photographs.fetch()]);
	return JobSheet;
}
