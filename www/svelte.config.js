/** The class that keeps a component's styles to itself, by file: short, and the same in each build. */
const taken = new Map();

/** @type {import('@sveltejs/vite-plugin-svelte').SvelteConfig} */
export default {
	compilerOptions: {
		runes: true,
		discloseVersion: false,
		cssHash: ({ hash, filename }) => {
			const name = `s${hash(filename).slice(0, 3)}`;
			if ((taken.get(name) ?? filename) !== filename)
				throw new Error(`${filename}: the class ${name} is taken`);
			taken.set(name, filename);
			return name;
		},
	},
};
