// The page in languages of the tests, one that is longer and has an accent on each vowel (words-pot --pseudo) and one that is read
// from right to left, and in German.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bin } from './station.mjs';
import { end, it } from './told.mjs';

// Those of the tests, and German as it is installed.
const ofTests = process.env.BANDTALLY_WORDS_OF_TESTS ?? join(bin, '../tests/words'), installed = join(bin, '../words');
const folder = mkdtempSync(join(tmpdir(), 'bandtally-languages-'));
for (const from of [ofTests, installed])
	for (const file of readdirSync(from).filter((f) => f.endsWith('.mo')))
		copyFileSync(join(from, file), join(folder, file));
process.env.BANDTALLY_WORDS = folder;
const { measure } = await import('./measure.mjs');
const { b, open, pictures, show, station, text, walls } = await import('./page.mjs');
const { scenes, status } = await import('./scenes.mjs');
const { spoken } = await import('./spoken.mjs');
const { stands } = await import('./stands.mjs');
const { source, Whole } = await import('./whole.mjs');
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

// In German what stands there is the station's own: what its scripts show behind each scan (tests/replay).
const german = join(folder, 'boards');
mkdirSync(german);
const scripts = readdirSync(join(source, 'tests/replay')).filter((f) => f.endsWith('.t')).map((f) => join(source, 'tests/replay', f));
execFileSync(join(bin, '../tests/replay-scripts'), ['--spoken', 'de', german, ...scripts]);

// One of those that say the same but for numbers, by what is asked for alone or with the reply before it.
function shown(...fields) {
	const all = new Map();
	for (const script of scripts.map((f) => f.split('/').pop()))
		JSON.parse(readFileSync(join(german, `${script}.boards`))).forEach((v, i) => {
			const said = fields.map((f) => f(v)).join('\n').replace(/\d+/g, '0');
			all.set(said, all.get(said) ?? [`${script} ${i + 1}`, { ...v, room: { ...v.room, number: 1 } }]); // the one that the page shows
		});
	return all.values();
}
const next = (v) => v.next, reply = (v) => v.recent[0].said;
for (const [screen, viewport] of Object.entries(walls))
	await it(`${screen}: in German nothing that the station says is cut, and nothing lies on anything else`, async () => {
		const page = await open(viewport), out = [];
		for (const [name, v] of screen === '1024x600' ? shown(next, reply) : shown(next)) {
			await show(page, v, 30);
			const smaller = (await page.evaluate(() => document.documentElement.dataset.gone)).includes('type');
			const found = wrongs(await page.evaluate(measure), name).filter((w) => !(smaller && least.test(w)));
			if (await page.evaluate(() => [...document.getElementById('next').childNodes].some((n) => n.nodeType === Node.TEXT_NODE && /^[,;:.)]/.test(n.data))))
				found.push(`${name}: a line may begin with the stop behind a card`);
			out.push(...found);
			if (found.length)
				await page.screenshot({ path: `${pictures}/${name.replace(/\W+/g, '-')}-${screen}-de.png` });
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
	seen.push(...await inside(desk, 'title', 'h2', 'th', '#cases td:nth-child(2)', '#cases td:last-child', '#intended', '#faults'));
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

// The whole station behind the page: what it says to stores and at an auditor's desk comes in its language as well.
const settings = (language) => `[site]\nletters = BC\nname = Example Hospital\nlanguage = ${language}\n[room 1]\nname = Theatre 1\n[room 8]\nname = Desk 8\nkind = audit\n[room 9]\nname = Stores 9\nkind = stores\n[board]\nstart = yes\nport = 0\n`;
async function speaking(language) {
	const whole = new Whole(settings(language));
	await whole.start();
	whole.tool('catalogue', 'import', join(source, 'config/catalogue.csv'));
	whole.tool('staff', 'add', 'practitioner', 'STORES-1');
	whole.tool('stock', 'receive', 'GREEN-M', '--lot', 'T26', '--expiry', '2027-01-01', '--packs', '2', '--by', '1');
	return whole;
}
const directions = { xx: 'ltr', he: 'rtl', de: 'ltr' }, parts = ['today', 'stock', 'labels', 'recall', 'trays', 'import'];
async function shows(page, language) {
	await page.waitForFunction((l) => document.documentElement.lang === l, language);
	assert.equal(await page.evaluate(() => document.documentElement.dir), directions[language]);
}
for (const language of Object.keys(directions)) {
	const whole = await speaking(language);
	for (const [size, viewport] of Object.entries({ '1280x800': walls['1280x800'], phone: { width: 390, height: 844 } }))
		await it(`${size}: the page of stores in '${language}' says nothing in English, cuts nothing, and nothing lies on anything else`, async () => {
			const at = await b.newPage({ viewport }), seen = [], out = [];
			await at.goto(whole.tool('board', 'stores').trim());
			await at.waitForFunction(() => document.getElementById('trouble').hidden && !document.getElementById('type').hidden);
			await shows(at, language);
			await at.click('#other summary');
			for (const part of parts) {
				await at.click(`#parts [data-part=${part}]`);
				await at.waitForSelector(`#${part}:not([hidden])`);
				await at.waitForTimeout(300);
				seen.push(...await inside(at, `#${part} :is(h2, h3, th, label, button, option)`, '#parts button', 'title', '#typed-how', '#other summary', '#bench-head', '#next'));
				out.push(...(await at.evaluate(stands)).out.map((w) => `${part}: ${w}`));
				if (!/[.?]$/.test((await at.innerText('#next')).trim()))
					out.push(`${part}: what comes next breaks off: ${await at.innerText('#next')}`);
				if (await at.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth) > 1)
					out.push(`${part} is wider than the screen`);
				await at.screenshot({ path: `${pictures}/stores-${part}-${size}-${language}.png`, fullPage: true });
			}
			await at.close();
			assert.ok(seen.length > 60, `${seen.length}`);
			assert.deepEqual(language === 'xx' ? english(seen.filter((x) => x.trim())) : [], []);
			assert.ok(language !== 'de' || (seen.includes('Etiketten') && !seen.includes('Labels')));
			assert.deepEqual(out, []);
		});
	await it(`the board of an auditor's desk in '${language}': nothing is cut, and nothing lies on anything else`, async () => {
		const at = await b.newPage({ viewport: walls['1280x800'] });
		await at.goto(`${whole.address}?room=8`);
		await shows(at, language);
		await at.waitForFunction(() => document.body.innerText.includes('Desk 8')); // its view has come
		const { out, texts } = await at.evaluate(stands);
		await at.screenshot({ path: `${pictures}/audit-desk-${language}.png` });
		await at.close();
		assert.deepEqual(language === 'xx' ? english(texts.filter((x) => !/Desk 8/.test(x))) : [], []);
		assert.deepEqual(out, []);
	});
	await whole.stop();
	whole.remove();
}

await b.close();
await station.end();
rmSync(folder, { recursive: true });
end();
