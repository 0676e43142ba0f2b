import type { Lesson } from './lesson';
import CloseCall from './lessons/CloseCall.svelte';
import FourthPower from './lessons/FourthPower.svelte';
import Heights from './lessons/Heights.svelte';
import OtherHand from './lessons/OtherHand.svelte';
import Rate from './lessons/Rate.svelte';
import SetTaken from './lessons/SetTaken.svelte';
import Sixteenth from './lessons/Sixteenth.svelte';
import SolidFirst from './lessons/SolidFirst.svelte';
import ThreeLegs from './lessons/ThreeLegs.svelte';
import TwoCoils from './lessons/TwoCoils.svelte';

/** The lessons, in their order. */
export const LESSONS: readonly Lesson[] = [
	{ id: 'heights', title: 'The words', part: Heights, nest: true },
	{ id: 'set', title: 'Free height and set', part: SetTaken, nest: true },
	{
		id: 'sixteenth',
		title: 'What a sixteenth costs',
		metric: 'What a millimetre costs',
		part: Sixteenth,
		nest: true,
	},
	{ id: 'rate', title: 'Rate', part: Rate, nest: true },
	{ id: 'fourth', title: 'The fourth power', part: FourthPower, nest: true },
	{ id: 'two', title: 'Why two coils', part: TwoCoils, nest: false },
	{ id: 'hand', title: 'Thinner, shorter, the other hand', part: OtherHand, nest: true },
	{ id: 'solid', title: 'Which goes solid first', part: SolidFirst, nest: true },
	{
		id: 'close',
		title: 'Why a tape cannot settle a close call',
		part: CloseCall,
		nest: true,
	},
	{ id: 'legs', title: 'Three legs', part: ThreeLegs, nest: false },
];
