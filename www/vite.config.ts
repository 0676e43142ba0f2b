import { fileURLToPath } from 'node:url';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig, type HtmlTagDescriptor, type Plugin, type Rolldown } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Folder with the built engine; a check or a trial build can point elsewhere. */
const engineFolder = process.env['COILNEST_ENGINE'] ?? here('../target/engine');

/** The built page loads nothing from elsewhere and runs nothing that is not a file of its own. */
const contentPolicy: Plugin = {
	name: 'content-policy',
	apply: 'build',
	transformIndexHtml: () => [
		{
			tag: 'meta',
			injectTo: 'head-prepend',
			attrs: {
				'http-equiv': 'Content-Security-Policy',
				content: [
					"default-src 'none'",
					"script-src 'self' 'wasm-unsafe-eval'",
					"style-src 'self'",
					// Photographs of the record are kept as `data:` addresses.
					"img-src 'self' data:",
					"connect-src 'self'",
					"manifest-src 'self'",
					"worker-src 'self'",
					"base-uri 'none'",
					"form-action 'none'",
					"require-trusted-types-for 'script'",
					'trusted-types svelte-trusted-html default search',
				].join('; '),
			},
		},
	],
};

/**
 * What the first script will ask for is fetched with the document, not after that script; asked for as the script will
 * ask, or it would be sent twice.
 */
const askedAhead: Plugin = {
	name: 'asked-ahead',
	apply: 'build',
	transformIndexHtml: {
		order: 'post',
		handler: (_, { bundle, chunk }) => {
			const engine = Object.keys(bundle ?? {}).find((file) => /\/coilnest_measure.*\.wasm$/.test(file));
			if (engine === undefined || chunk === undefined)
				throw new Error('the bundle has no engine of a first look');
			const link = (attrs: Record<string, string>): HtmlTagDescriptor => ({
				tag: 'link',
				injectTo: 'head',
				attrs: { ...attrs, crossorigin: true },
			});
			return [
				link({ rel: 'preload', href: `./${engine}`, as: 'fetch', type: 'application/wasm' }),
				...chunk.imports.map((file) => link({ rel: 'modulepreload', href: `./${file}` })),
			];
		},
	},
};

/** Leaves the builder a list of the npm packages of which there is code in the page. */
const packagesInside: Plugin = {
	name: 'packages-inside',
	apply: 'build',
	generateBundle(_, bundle) {
		const chunks = Object.values(bundle).filter((file) => file.type === 'chunk');
		const modules = chunks.flatMap(({ modules }) => Object.entries(modules));
		const used = modules.filter(([, { renderedLength }]) => renderedLength > 0);
		const folders = new Set(used.flatMap(([id]) => folderOf(id) ?? []));
		const source = JSON.stringify([...folders].sort());
		this.emitFile({ type: 'asset', fileName: '.vite/packages.json', source });
	},
};

/** The folder of a module's package, as the lock has it; a module that a tool makes up begins with a zero and its name. */
function folderOf(id: string): string | undefined {
	const [, tool] = /^\0(vite|rolldown)\//.exec(id) ?? [];
	if (tool !== undefined) return `node_modules/${tool}`;
	return /node_modules\/(?:.*\/node_modules\/)?(?:@[^/]+\/)?[^/]+/.exec(id)?.[0];
}

/** Whether the document needs a module, and not only what it may fetch later. */
function isNeededAtFirst(id: string, graph: Pick<Rolldown.PluginContext, 'getModuleInfo'>): boolean {
	if (OF_LATER_FIELDS.test(id)) return false;
	const seen = new Set([id]);
	for (const each of seen) {
		const module = graph.getModuleInfo(each);
		if (module?.isEntry) return true;
		for (const importer of module?.importers ?? []) seen.add(importer);
	}
	return false;
}

/** What Svelte brings for fields that stand in later sections alone; its index names it to all. */
const OF_LATER_FIELDS = /\/internal\/client\/dom\/elements\/bindings\/(input|select)\.js$/;

/** What Svelte brings for pages that a server has rendered, or that define custom elements, never runs here. */
const clientOnly: Plugin = {
	name: 'client-only',
	apply: 'build',
	transform(code, id) {
		if (OF_LATER_FIELDS.test(id) || id.endsWith('/svelte/src/internal/client/dom/elements/custom-element.js'))
			return { code, moduleSideEffects: false };
		if (!id.endsWith('/svelte/src/internal/client/dom/hydration.js')) return undefined;
		const constant = code
			.replace('export let hydrating = false;', 'export const hydrating = false;')
			.replace('\thydrating = value;\n', '');
		if (constant.length !== code.length + 2 - '\thydrating = value;\n'.length)
			throw new Error('Svelte keeps the state of hydration elsewhere now');
		return { code: constant, map: null };
	},
};

export default defineConfig({
	base: './',
	appType: 'mpa',
	resolve: { alias: { $engine: engineFolder } },
	build: {
		outDir: 'dist',
		emptyOutDir: true,
		assetsInlineLimit: 0,
		target: 'es2022',
		modulePreload: false,
		// The builder tells from it what a first look fetches.
		manifest: true,
		// One script for a first look: what it shares with the sections would else be cut into many, each with its own
		// ways in and out, and each packed without the words of the others.
		rolldownOptions: {
			output: {
				codeSplitting: {
					includeDependenciesRecursively: false,
					groups: [{ name: (id, graph) => (isNeededAtFirst(id, graph) ? 'first' : null) }],
				},
			},
		},
	},
	server: { host: '127.0.0.1', fs: { allow: ['..', engineFolder] } },
	preview: { host: '127.0.0.1', port: 4173, strictPort: true },
	plugins: [
		svelte(),
		clientOnly,
		contentPolicy,
		askedAhead,
		packagesInside,
		VitePWA({
			strategies: 'injectManifest',
			srcDir: 'src',
			filename: 'sw.ts',
			injectRegister: null,
			injectManifest: { globPatterns: ['**/*.{html,js,css,wasm}'] },
			manifest: {
				name: 'coilnest',
				short_name: 'coilnest',
				description: 'Measure the coils of a spring nest, and see what the nest does',
				lang: 'en-GB',
				display: 'standalone',
				start_url: './',
				scope: './',
				theme_color: '#f4f1e8',
				background_color: '#f4f1e8',
				icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
			},
		}),
	],
});
