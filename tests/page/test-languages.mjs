// The page in languages of the tests: one that is longer and has an accent on each vowel (words-pot --pseudo), and one that
// is read from right to left.
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { bin } from './station.mjs';
import { end, it } from './told.mjs';

process.env.BANDTALLY_WORDS = process.env.BANDTALLY_WORDS_OF_TESTS ?? join(bin, '../tests/words');
const { measure } = await import('./measure.mjs');
const { b, open, pictures, show, station, text, walls } = await import('./page.mjs');
const { scenes, status } = await import('./scenes.mjs');
const { spoken } = await import('./spoken.mjs');
const { wrongs } = await import('./wrongs.mjs');

async function speak(page, language) {
	await show(page, { ...scenes.on, language });
	await page.waitForFunction((l) => document.documentElement.lang === l, language);
}

// What the page does last, before it would cut a sentence (board.css): the type is smaller, and is read from nearer by.
const least = / is (9|10|11)\.\d+ mm high, under 11\.64$/;
for (const [code, how] of [['xx', 'that is longer'], ['he', 'from right to left']])
	for (const [screen, viewport] of Object.entries(walls))
		await it(`${screen}: in a language ${how} nothing is cut and nothing lies on anything else`, async () => {
			const page = await open(viewport), out = [];
			await speak(page, code);
			for (const [name, v] of Object.entries(scenes)) {
				await show(page, spoken(v, code), 60);
				const smaller = (await page.evaluate(() => document.documentElement.dataset.gone)).includes('type');
				out.push(...wrongs(await page.evaluate(measure), name).filter((w) => !(smaller && least.test(w))));
				await page.screenshot({ path: `${pictures}/${name}-${screen}-${code}.png` });
			}
			assert.deepEqual(page.faults, []);
			await page.close();
			assert.deepEqual(out, []);
		});

// Words without one letter that is not English.
const english = (texts) => texts.filter((t) => /[a-z]{2}/i.test(t) && !/[\u00c0-\u024f]/.test(t));
const inside = (page, ...places) => page.evaluate((all) => all.flatMap((p) => [...document.querySelectorAll(p)].map((e) => e.textContent)), places);

await it('no word of the board, its dialogs and the desk stays in English where the room has another language', async () => {
	const page = await open(walls['1280x800']), seen = [];
	await speak(page, 'xx');
	seen.push(...await inside(page, 'title', '#since', '#said > b', '.side', '#sheet thead th', '#foot button', '#on b'));
	seen.push(...await page.evaluate(() => [...document.querySelectorAll('[data-label]')].map((e) => e.getAttribute('aria-label'))));
	await page.click('#settings');
	seen.push(...await inside(page, '#choices h2, #choices button, #choices p'));
	await page.click('#choices .close');
	await page.click('#type');
	await page.fill('#code', 'BTBC10104051');
	seen.push(...await inside(page, '#keyed h2, #keyed .hint, #keyed .send, #keyed .close, #judged'));
	await page.click('#keyed .close');
	await show(page, { ...scenes['discrepancy-two'], language: 'xx' });
	seen.push(...await inside(page, '#shout .word', '#team'));
	await page.close();
	station.tell({ status: status({ language: 'xx' }) });
	const desk = await b.newPage({ viewport: walls['1280x800'] });
	await desk.goto(`${station.address}desk`);
	await desk.waitForFunction(() => document.documentElement.lang === 'xx');
	seen.push(...await inside(desk, 'title', 'h2', 'th', '#cases td:first-child', '#cases td:last-child', '#intended', '#faults'));
	await desk.screenshot({ path: `${pictures}/desk-xx.png`, fullPage: true });
	await desk.close();
	assert.ok(seen.length > 60, `${seen.length}`);
	assert.deepEqual(english(seen), []);
});

await it('hands, feet and the order of digits stand as they are where words go from right to left, and numbers keep their direction', async () => {
	const page = await open();
	const places = () => page.evaluate(() => [...document.querySelectorAll('#figure .band-gone, #figure .band.on, #figure .edge')].map((e) => Math.round(e.getBoundingClientRect().left - document.getElementById('figure').getBoundingClientRect().left)));
	await speak(page, 'he');
	await show(page, { ...scenes['many-digits'], language: 'he' }, 400);
	assert.equal(await page.evaluate(() => document.documentElement.dir), 'rtl');
	const turned = await places();
	await page.evaluate(() => { document.documentElement.dir = 'ltr'; });
	await page.waitForTimeout(400);
	assert.ok(turned.length > 20);
	const straight = await places();
	assert.equal(turned.length, straight.length);
	turned.forEach((at, i) => assert.ok(Math.abs(at - straight[i]) <= 2, `${at} and ${straight[i]}`)); // whole points
	await page.evaluate(() => { document.documentElement.dir = 'rtl'; });
	await page.waitForTimeout(400);
	assert.match(await text(page, 'place'), /\u2068Theatre 1\u2069.*\u206841\u2069/);
	await page.screenshot({ path: `${pictures}/many-digits-he.png` });
	await show(page, spoken(scenes['final-count'], 'he'));
	const points = (dir) => page.evaluate((d) => {
		document.documentElement.dir = d;
		return new DOMMatrix(getComputedStyle(document.querySelector('.asked .shape.here')).transform).a;
	}, dir);
	assert.deepEqual([await points('ltr'), await points('rtl')], [1, -1]); // at the words, wherever they begin
	await page.close();
});

await b.close();
await station.end();
end();
