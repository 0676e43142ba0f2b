import type { Component } from 'svelte';
import type { Ground } from './ground';

/** An answer to a question, and why it is right or wrong. */
export interface Option {
	text: string;
	right?: boolean;
	why: string;
}

/** What each lesson is given. */
export interface LessonProps {
	id: string;
	ground: Ground;
}

export interface Lesson {
	id: string;
	title: string;
	/** Its title where the job is in millimetres, if it is another. */
	metric?: string;
	part: Component<LessonProps>;
	/** Whether it works on the copy of a nest. */
	nest: boolean;
}
