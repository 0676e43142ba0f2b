/*
 * Writes WORDS.md from the glossary of the page. `--check` writes nothing and fails where the file differs.
 */
import { readFile, writeFile } from 'node:fs/promises';
import process from 'node:process';

const TARGET = new URL('../WORDS.md', import.meta.url);
const GLOSSARY = new URL('../src/learn/glossary.json', import.meta.url);
const HEAD = `# Words

The words of the page, each with what it means, the letters that stand for it in formulas, other words for it that the
page does not use, and how it is known. Written by \`npm run words\` from \`src/learn/glossary.json\`.

`;

/** @typedef {{ word: string, says: string, source: string, signs?: string[], not?: string[] }} Entry */

/** @param {Entry} entry */
function paragraph({ word, says, source, signs, not }) {
	const letters = signs ? ` Letters: ${signs.map((sign) => `\`${sign}\``).join(', ')}.` : '';
	const others = not ? ` Elsewhere also: ${not.join(', ')}.` : '';
	return `**${word}**: ${says}${letters}${others} *${source}.*\n`;
}

const { words } = /** @type {{ words: Entry[] }} */ (JSON.parse(await readFile(GLOSSARY, 'utf8')));
const text = HEAD + words.map(paragraph).join('\n');

if (process.argv.includes('--check')) {
	if ((await readFile(TARGET, 'utf8')) !== text) {
		process.stderr.write('WORDS.md differs from the glossary: run `npm run words`\n');
		process.exitCode = 1;
	}
} else {
	await writeFile(TARGET, text);
}
