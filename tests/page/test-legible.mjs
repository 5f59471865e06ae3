// Can the page be read from the table, in every state, on every screen, in a light and a dark room?
import assert from 'node:assert/strict';
import { createRequire } from 'node:module';
import { skip } from './browser.mjs';
import { measure } from './measure.mjs';
import { b, open, others, pictures, show, station, walls } from './page.mjs';
import { scenes } from './scenes.mjs';
import { end, it } from './told.mjs';
import { wrongs } from './wrongs.mjs';

let axe;
try {
	axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
} catch {
	skip('axe-core is not installed: run \'npm ci\' in tests/');
}

// States that together show each kind of thing: they are looked at in the dark room too.
const telling = ['on', 'reminder', 'question', 'refused', 'maybe-on', 'two-beside', 'debts-faults', 'discrepancy-two', 'full-sheet', 'distrust', 'sign-out', 'idle'];

for (const [screen, viewport] of Object.entries({ ...walls, ...others }))
	for (const light of ['light', 'dark'])
		await it(`${screen}, ${light} room: every state can be read from its distance, with contrast, nothing cut or overlapping`, async () => {
			const page = await open(viewport, { colorScheme: light, deviceScaleFactor: screen in others ? 2 : 1 }), out = [];
			for (const [name, v] of Object.entries(scenes).filter(([n]) => light === 'light' || telling.includes(n))) {
				await show(page, v, 40);
				out.push(...wrongs(await page.evaluate(measure), name));
				await page.screenshot({ path: `${pictures}/${name}-${screen}-${light}.png`, fullPage: screen in others });
			}
			assert.deepEqual(page.faults, []);
			await page.close();
			assert.deepEqual(out, []);
		});

await it('enlarged to 200 %, letters are at least twice as high', async () => {
	const sizes = [];
	for (const viewport of [walls['1920x1080'], others['zoom-200']]) {
		const page = await open(viewport);
		await show(page, scenes.on);
		sizes.push(await page.evaluate(() => ['next', 'sheet', 'since'].map((i) => parseFloat(getComputedStyle(document.getElementById(i)).fontSize))));
		await page.close();
	}
	sizes[0].forEach((px, i) => assert.ok(sizes[1][i] * 2 >= px * 1.99, `${sizes}`));
});

await it('axe-core finds nothing in any state, in the typing and the choices, or on the desk', async () => {
	const found = [];
	const look = async (page, name) => {
		const r = await page.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
		r.violations.forEach((v) => found.push(`${name}: ${v.id}: ${v.help} (${v.nodes[0].html.slice(0, 120)})`));
		assert.ok(r.passes.length > 10, `${name}: only ${r.passes.length} checks ran`);
	};
	for (const light of ['light', 'dark']) {
		const page = await open(walls['1920x1080'], { colorScheme: light, bypassCSP: true });
		await page.addScriptTag({ path: axe });
		for (const [name, v] of Object.entries(scenes).filter(([n]) => light === 'light' || telling.includes(n))) {
			await show(page, v, 40);
			await look(page, `${name} ${light}`);
		}
		await show(page, scenes.on);
		await page.click('#type');
		await look(page, `typing ${light}`);
		station.cookies = [];
		station.letIn();
		await page.waitForFunction(() => /closed/.test(document.getElementById('keyed-title').textContent));
		await look(page, `typing closed ${light}`);
		await page.click('#keyed .close');
		await page.click('#settings');
		await look(page, `choices ${light}`);
		await page.close();
		const desk = await b.newPage({ colorScheme: light, bypassCSP: true, viewport: walls['1280x800'] });
		await desk.goto(`${station.address}desk`);
		await desk.waitForSelector('#rooms td');
		await desk.addScriptTag({ path: axe });
		await look(desk, `desk ${light}`);
		await desk.close();
	}
	assert.deepEqual(found, []);
});

await b.close();
await station.end();
end();
