/** What the nest of the invented demo has to do, as a need: no tramway or figures of the kind exist. */
export const DUTY = {
	load: '3 300 lb',
	height: '11 1/2 in',
	rate: '1 450 lb/in',
	pocket: '8 in',
	solid: '8 in',
	stress: '60 000 psi',
	stress_factor: 'uncorrected',
	ends: 'tapered-ground',
	steel: 'unknown-hot-wound',
	bars: [
		'1/2 in',
		'9/16 in',
		'5/8 in',
		'11/16 in',
		'3/4 in',
		'13/16 in',
		'7/8 in',
		'15/16 in',
		'1 in',
		'1 1/16 in',
		'1 1/8 in',
		'1 3/16 in',
		'1 1/4 in',
	],
};

/** Stresses at solid that may be allowed, from little to much. At the second, one coil does not do and a pair does. */
export const STRESSES: readonly string[] = [
	'95 000 psi',
	'100 000 psi',
	'105 000 psi',
	'110 000 psi',
	'115 000 psi',
];
