// Reminders on the page: one is no scan, one that nobody answers stands in every other room and at the desk, and through
// a power cut the minutes are those of the longer clock.
import assert from 'node:assert/strict';
import { b, open, pictures, show, station, text, walls } from './page.mjs';
import { min, scenes, status } from './scenes.mjs';
import { end, it } from './told.mjs';

// What the page sounds, as [name, level in thousandths].
const listen = (page) => page.evaluate(() => {
	window.heard = [];
	document.addEventListener('sounded', (e) => window.heard.push([e.detail.name, Math.round(e.detail.level * 1000)]));
});
const heard = (page) => page.evaluate(() => window.heard);

await it('a reminder is no scan: the age of the last scan goes on, and no reply is said that no scan had', async () => {
	const page = await open();
	await show(page, { ...scenes.on, last_scan_ms: 67000 });
	await listen(page);
	await show(page, { ...scenes.reminder, last_scan_ms: 67000, recent: [] });
	assert.match(await text(page, 'since'), /^last scan 1 min ago$/);
	assert.equal(await text(page, 'said'), '');
	assert.deepEqual((await heard(page)).map(([name]) => name), ['reminder']);
	await show(page, { ...scenes.idle, last_scan_ms: null });
	assert.equal(await text(page, 'since'), 'no scan yet');
	await page.close();
});

await it('a reminder that nobody answers stands in a band of its own, asks nothing here, and is heard', async () => {
	for (const screen of Object.values(walls)) {
		const page = await open(screen);
		assert.equal(await page.isVisible('#elsewhere'), false);
		await listen(page);
		await show(page, scenes.elsewhere);
		assert.equal(await text(page, 'elsewhere'), 'Nobody answers: Bay 3: left ring finger 41 min, no scan since 02:10');
		assert.match(await text(page, 'next'), /^When the tourniquet is off the right index finger/);
		assert.equal(await page.getAttribute('#now', 'data-kind'), 'do');
		assert.deepEqual((await heard(page)).filter(([name]) => name === 'reminder').length, 1);
		const [band, now] = await page.evaluate(() => ['elsewhere', 'now'].map((i) => document.getElementById(i).getBoundingClientRect().toJSON()));
		assert.ok(band.top >= 0 && band.height > 10 && band.bottom <= now.top + 1, JSON.stringify([band, now]));
		await show(page, scenes.off);
		assert.equal(await page.isVisible('#elsewhere'), false);
		await page.close();
	}
});

await it('a tourniquet that is on in the suspended case of this room stands there whatever is shown, and is heard where it falls due', async () => {
	const waits = { room: 1, text: 'Theatre 1: left thumb 12 min, TOURNIQUET ON, case 40, suspended', case: 40, reminded: false, nobody: false };
	for (const screen of Object.values(walls)) {
		const page = await open(screen);
		await listen(page);
		for (const scene of [scenes.idle, scenes.on, scenes['debts-faults']]) {
			await show(page, { ...scene, suspended_case: 40, elsewhere: [waits] });
			assert.equal(await text(page, 'elsewhere'), waits.text);
			const [band, now] = await page.evaluate(() => ['elsewhere', 'now'].map((i) => document.getElementById(i).getBoundingClientRect().toJSON()));
			assert.ok(band.top >= 0 && band.height > 10 && band.bottom <= now.top + 1, JSON.stringify([band, now]));
		}
		assert.deepEqual((await heard(page)).filter(([name]) => name === 'reminder'), []);
		await show(page, { ...scenes.on, elsewhere: [{ ...waits, reminded: true }] });
		assert.equal((await heard(page)).filter(([name]) => name === 'reminder').length, 1);
		await page.close();
	}
});

await it('the quiet hours soften every sound but that one', async () => {
	const page = await open(), sound = { volume: 50, quiet: true, speech: false };
	await listen(page);
	await show(page, { ...scenes.elsewhere, sound });
	assert.deepEqual((await heard(page)).filter(([name]) => name === 'reminder'), [['reminder', 500]]);
	await show(page, { ...scenes.reminder, sound });
	assert.deepEqual((await heard(page)).filter(([name]) => name === 'reminder'), [['reminder', 500], ['reminder', 100]]);
	await page.close();
});

await it('the desk shows and sounds it too', async () => {
	station.view({ ...scenes.off, sound: { volume: 70, quiet: true, speech: false } });
	station.tell({ status: status() });
	const page = await b.newPage({ viewport: walls['1280x800'] });
	await page.goto(`${station.address}desk`);
	await page.waitForSelector('#rooms td');
	await listen(page);
	assert.equal(await page.isVisible('#elsewhere'), false);
	station.tell({ status: status({ elsewhere: scenes.elsewhere.elsewhere, clock: scenes.elsewhere.clock }) });
	await page.waitForFunction(() => /Nobody answers: Bay 3: left ring finger 41 min/.test(document.getElementById('elsewhere').innerText));
	assert.match(await text(page, 'faults'), /The wall clock is wrong/);
	await page.waitForTimeout(600);
	assert.deepEqual(await heard(page), [['reminder', 700]]);
	await page.screenshot({ path: `${pictures}/desk-elsewhere.png`, fullPage: true });
	station.tell({ status: status() });
	await page.waitForFunction(() => document.getElementById('elsewhere').hidden);
	await page.close();
});

await it('through a power cut the minutes are those of the longer clock, and a clock that cannot be trusted says none', async () => {
	const page = await open(), digit = { ...scenes.on.digits[0], stretch_ms: min(15), gap: true };
	await show(page, { ...scenes.on, digits: [{ ...digit, by_wall_ms: min(75) }] });
	const words = () => page.evaluate(() => [...document.querySelectorAll('.clock p')].filter((t) => t.offsetHeight).map((t) => t.innerText.replace(/\s+/g, ' ')));
	assert.deepEqual(await words(), ['75 min', 'by wall clock']);
	assert.match(await text(page, 'note'), /Clock gap: right index finger on since 10:12 by the wall clock; at least 15 min are known\./);
	await show(page, { ...scenes.on, next: 'as it is now', digits: [{ ...digit, by_wall_ms: 0 }] });
	assert.deepEqual(await words(), ['15 min', 'at least']);
	assert.match(await text(page, 'note'), /Clock gap: right index finger on for at least 15 min; the wall clock cannot be trusted\./);
	await show(page, { ...scenes.elsewhere, next: 'and the clock' });
	assert.match(await text(page, 'note'), /The wall clock is wrong: 25 Nov 2026 07:16/);
	await page.close();
});

await b.close();
await station.end();
end();
