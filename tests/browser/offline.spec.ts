import { preview } from 'vite';
import { button, coil, expect, field, test } from './page';

test.use({ serviceWorkers: 'allow' });

test('after the first visit the page opens with its server gone', async ({ page, context }) => {
	const server = await preview({ preview: { port: 0, strictPort: false }, logLevel: 'silent' });
	const address = server.resolvedUrls?.local[0] ?? '';
	await page.goto(address);
	await expect(page.getByText('saved, works offline')).toBeVisible();
	await field(page, 'Place 1, Outer, A left').fill('13 3/4');

	await server.close();
	await expect(fetch(address)).rejects.toThrow();

	const later = await context.newPage();
	await later.goto(address);
	await expect(field(later, 'Place 1, Outer, A left')).toHaveValue('13 3/4');
	await field(later, 'Place 1, Outer, A left').fill('13 7/8');
	await expect(button(coil(later, 'Outer, A left'), 'Good')).toBeVisible();
	await later.goto(`${address}index.html#nest`);
	await expect(later.getByRole('img', { name: /^Section through the nest/ })).toBeVisible();
	await later.goto(`${address}index.html#replace`);
	await button(later, 'Try an invented replacement').click();
	await expect(later.getByRole('table', { name: 'What is asked, and what is offered' })).toBeVisible();
	await button(later, 'Undo').click();
	await later.close();
	await page.reload();
	await expect(field(page, 'Place 1, Outer, A left')).toHaveValue('13 7/8');
});
