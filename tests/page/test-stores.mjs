// The page of a stores bench, with the whole station behind it: what stores do in a day, by keyboard alone.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { browser, skip } from './browser.mjs';
import { bin } from './station.mjs';
import { end, it } from './told.mjs';
import { source, Whole } from './whole.mjs';

let axe;
try {
	axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
} catch {
	skip('axe-core is not installed: run \'npm ci\' in tests/');
}
const pictures = process.env.BANDTALLY_PICTURES ?? join(bin, '../page');
mkdirSync(pictures, { recursive: true });
const settings = `[site]\nletters = BC\nname = Example Hospital\n[room 1]\nname = Theatre 1\n[room 2]\nname = Theatre 2\n[room 9]\nname = Stores\nkind = stores\n[board]\nstart = yes\nport = 0\n`;
const b = await browser(), parts = ['today', 'stock', 'labels', 'recall', 'trays', 'import'];

async function open(of, options = {}) {
	const page = await b.newPage({ viewport: { width: 1280, height: 800 }, ...options });
	page.faults = [];
	page.on('pageerror', (e) => page.faults.push(String(e)));
	page.on('console', (m) => m.type() === 'error' && page.faults.push(m.text()));
	await page.goto(of.tool('board', 'stores').trim());
	await page.waitForFunction(() => document.getElementById('trouble').hidden && !document.getElementById('type').hidden);
	return page;
}
const words = (page, id) => page.evaluate((i) => document.getElementById(i).innerText.replace(/\s+/g, ' ').trim(), id);
async function reads(page, id, pattern, patience_ms = 4000) {
	for (const until = Date.now() + patience_ms; Date.now() < until; await page.waitForTimeout(40))
		if (pattern.test(await words(page, id)))
			return;
	assert.match(await words(page, id), pattern);
}
// Goes by the tabulator key to what fits, as somebody without a pointer does.
async function tabTo(page, selector) {
	for (let i = 0; i < 80; i++) {
		if (await page.evaluate((s) => document.activeElement?.matches(s), selector))
			return;
		await page.keyboard.press('Tab');
	}
	assert.fail(`no tabulator key reaches ${selector}`);
}
async function type(page, text) {
	await page.waitForTimeout(210); // nobody types five answers in a second, and the station takes no more
	await tabTo(page, '#typed');
	await page.keyboard.type(text);
	await page.keyboard.press('Enter');
}
async function press(page, name) {
	await page.waitForTimeout(210);
	await page.evaluate((n) => [...document.querySelectorAll('button')].find((x) => x.textContent === n && x.checkVisibility())?.setAttribute('data-wanted', ''), name);
	await tabTo(page, '[data-wanted]');
	await page.keyboard.press('Enter');
	await page.evaluate(() => document.querySelector('[data-wanted]')?.removeAttribute('data-wanted'));
}
const show = async (page, part) => {
	await page.click(`#parts [data-part=${part}]`);
	await page.waitForSelector(`#${part}:not([hidden])`);
};

const station = new Whole(settings);
await station.start();
for (const name of ['STORES-1', 'STORES-2'])
	station.tool('staff', 'add', 'practitioner', name);
const catalogue = readFileSync(join(source, 'config/catalogue.csv'), 'utf8');
const wrong = join(station.folder, 'wrong.csv'), right = join(station.folder, 'right.csv');
writeFileSync(wrong, catalogue.replace('09506000134352', '09506000134353'));
writeFileSync(right, catalogue);

await it('without a ticket the page shows, and nothing can be typed or asked', async () => {
	const page = await b.newPage();
	await page.goto(`${station.address}stores?room=9`);
	await reads(page, 'next', /^Stores: a box or pack that came, or a label/);
	assert.ok(await page.isHidden('#type'));
	assert.match(await words(page, 'closed'), /bandtally board stores/);
	assert.equal(await page.evaluate(async () => (await fetch('/stores/ask', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{"room":9,"ask":{"do":"lines"}}' })).status), 403);
	await page.close();
});

await it('a cookie of a theatre asks nothing of stores, and one of stores types in no theatre', async () => {
	const page = await b.newPage();
	await page.goto(station.tool('board', '--room', '1').trim());
	const post = (path, body) => page.evaluate(async ([p, x]) => (await fetch(p, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(x) })).status, [path, body]);
	assert.equal(await post('/stores/ask', { room: 1, ask: { do: 'lines' } }), 403);
	assert.equal(await post('/stores/ask', { room: 9, ask: { do: 'lines' } }), 403);
	await page.context().clearCookies();
	await page.goto(station.tool('board', 'stores').trim());
	assert.match(page.url(), /\/stores\?room=9$/);
	assert.equal(await post('/keyed', { room: 1, code: 'X' }), 403);
	assert.equal(await post('/stores/ask', { room: 9, ask: { do: 'lines' } }), 200);
	for (const what of ['scan', 'staff', 'copy', 'retry', 'settle', 'board', 'label'])
		assert.match(await page.evaluate(async (w) => JSON.stringify(await (await fetch('/stores/ask', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ room: 9, ask: { do: w } }) })).json()), what), /asks for something unknown/);
	await page.context().clearCookies();
	await page.close();
});

const page = await open(station);

await it('a catalogue is looked at before it is taken, and a wrong one is refused at its line and column', async () => {
	await show(page, 'import');
	await page.setInputFiles('#file', wrong);
	await page.click('#ask-import [type=submit]');
	await reads(page, 'changes', /line 3, column D \(codes\): '09506000134353': its check digit is wrong/);
	assert.ok(await page.isDisabled('#take'));
	await page.setInputFiles('#file', right);
	await page.click('#ask-import [type=submit]');
	await reads(page, 'changes', /Nothing is taken yet\. Of 12 lines: added: 12 changed: 0/);
	assert.equal(station.tool('catalogue', 'export').trim().split('\n').length, 1);
	await page.screenshot({ path: `${pictures}/stores-import.png`, fullPage: true });
	await page.click('#take');
	await reads(page, 'changes', /^Taken\. .*Of 12 lines: added: 12/);
	assert.equal(station.tool('catalogue', 'export').trim().split('\n').length, 13);
	assert.ok(await page.isDisabled('#take'));
});

await it('bytes that are no UTF-8 are refused at their place, and nothing of them is taken', async () => {
	const latin = join(station.folder, 'latin.csv');
	writeFileSync(latin, Buffer.from(catalogue.replace('needle', 'n\u00e4del'), 'latin1'));
	await page.setInputFiles('#file', latin);
	await page.click('#ask-import [type=submit]');
	await reads(page, 'changes', /line \d+.*UTF-8/);
	assert.doesNotMatch(station.tool('catalogue', 'export'), /del/);
});

await it('the catalogue is saved as the command exports it', async () => {
	const [saved] = await Promise.all([page.waitForEvent('download'), page.click('#export')]);
	assert.equal(readFileSync(await saved.path(), 'utf8'), station.tool('catalogue', 'export'));
});

await it('by keyboard alone: packs without a code come in, typed by one and confirmed by another', async () => {
	await page.focus('body');
	await tabTo(page, '#other summary');
	await page.keyboard.press('Enter');
	await press(page, 'RECEIVE');
	await reads(page, 'next', /^What came\?/);
	await type(page, 'GREEN-M');
	await reads(page, 'next', /What stands behind LOT/);
	await type(page, 'T26');
	await reads(page, 'next', /Which day stands on it/);
	await type(page, '2028-13-31');
	await reads(page, 'said', /^Refused: '2028-13-31' is no day/);
	await type(page, '2033-03-31');
	await reads(page, 'next', /^How many packs came/);
	await type(page, '40');
	await reads(page, 'next', /Who typed lot or expiry/);
	assert.match(await words(page, 'typed-how'), /A badge is asked for/);
	await type(page, '1');
	await reads(page, 'next', /A second person compares/);
	await type(page, '2');
	await reads(page, 'said', /^Accepted: Received: 40 packs of finger tourniquet, green, M, lot T26/);
	await reads(page, 'person', /^STORES-1 works at this bench$/);
	assert.deepEqual(page.faults.filter((f) => !/403|status of 4/.test(f)), []);
});

await it('nobody there to confirm: it waits, and stands among what is to be done', async () => {
	await press(page, 'RECEIVE');
	await type(page, 'GREEN-L');
	await reads(page, 'next', /LOT/);
	await type(page, 'L1');
	await reads(page, 'next', /day/);
	await type(page, '2033-03-31');
	await reads(page, 'next', /How many/);
	await type(page, '2');
	await reads(page, 'next', /second person/);
	await press(page, 'NOBODY TO CONFIRM');
	await reads(page, 'said', /Received and not confirmed: 2 packs/);
	await show(page, 'today');
	await reads(page, 'tasks', /Not confirmed: a second person compares.*GREEN-L.*L1.*2/);
	await press(page, 'CONFIRM');
	await type(page, 'GREEN-L');
	await reads(page, 'next', /second person/);
	await type(page, '2');
	await reads(page, 'said', /Confirmed by STORES-2/);
	await page.waitForFunction(() => !/GREEN-L/.test(document.getElementById('tasks').innerText) || /minimum/.test(document.getElementById('tasks').innerText));
});

await it('the stock is filtered by the station, what expires first at the top', async () => {
	await press(page, 'RECEIVE');
	await type(page, '(01)09506000134352(17)330101(10)EARLY');
	await reads(page, 'next', /How many/);
	await type(page, '3');
	await reads(page, 'said', /Received: 3 packs/);
	await show(page, 'stock');
	await reads(page, 'lots', /EARLY 2033-01-01 3 .*T26 2033-03-31 40/);
	await page.fill('#seek-text', 'green-l');
	await page.waitForFunction(() => !/EARLY/.test(document.getElementById('lots').innerText));
	assert.match(await words(page, 'lots'), /GREEN-L L1 2033-03-31 2/);
	await page.fill('#seek-text', '');
	await page.selectOption('#seek-only', 'withheld');
	await reads(page, 'lots', /^Nothing of that kind lies anywhere\.$/);
	await page.selectOption('#seek-only', '');
	await reads(page, 'lots', /EARLY/);
	await page.screenshot({ path: `${pictures}/stores-stock.png`, fullPage: true });
});

await it('a line that the file lacks is not removed without a word of its packs that lie there', async () => {
	const less = join(station.folder, 'less.csv');
	writeFileSync(less, catalogue.split('\n').filter((l) => !l.startsWith('GREEN-M,')).join('\n'));
	await show(page, 'import');
	await page.setInputFiles('#file', less);
	await page.check('#whole');
	await page.click('#ask-import [type=submit]');
	await reads(page, 'changes', /Nothing is taken yet\..*removed: 1.*GREEN-M.*\d+ packs of it lie in stores or in rooms: without its line none is issued; its key finds them/);
	await page.screenshot({ path: `${pictures}/stores-import-less.png`, fullPage: true });
	await page.uncheck('#whole');
});

await it('what must not be used: a lot is put apart with its notice, and the recall says where it lies', async () => {
	await press(page, 'QUARANTINE');
	await type(page, 'GREEN-M/T26');
	await reads(page, 'next', /Lot T26 alone/);
	await press(page, 'YES');
	await reads(page, 'next', /Why must it not be used/);
	await type(page, 'Gefäß reißt');
	await reads(page, 'next', /reference of the notice/);
	await type(page, 'FSN 2026-7');
	await reads(page, 'said', /In quarantine: .*lot T26/);
	await show(page, 'recall');
	await reads(page, 'quarantines', /GREEN-M T26 Gefäß reißt FSN 2026-7 40/);
	await page.fill('#recall-key', 'GREEN-M');
	await page.fill('#recall-lot', 'T26');
	await page.keyboard.press('Enter');
	await reads(page, 'recalled', /It is in quarantine\..*Where it lies.*T26.*in quarantine.*40.*Ended cases that used one.*go and ask Theatre 1, nothing ever Theatre 2, nothing ever/);
	await page.screenshot({ path: `${pictures}/stores-recall.png`, fullPage: true });
	await page.fill('#recall-key', 'NO-SUCH');
	await page.keyboard.press('Enter');
	await reads(page, 'recalled', /line 'NO-SUCH' is not in the catalogue, and stores have nothing of it: see '/);
	await press(page, 'RELEASE');
	await type(page, 'GREEN-M/T26');
	await reads(page, 'next', /Released by STORES-1 and a second person/);
	await type(page, '2');
	await reads(page, 'said', /Released by STORES-1 and STORES-2/);
});

await it('labels that were not read back stand there by their numbers', async () => {
	await press(page, 'PRINT LABELS');
	await type(page, 'GREEN-M/T26');
	await reads(page, 'next', /^How many labels/);
	await type(page, '4');
	await reads(page, 'said', /Labels 00000001 to 00000004/);
	await show(page, 'labels');
	await reads(page, 'printings', /GREEN-M T26 2033-03-31 00000001 to 00000004 00000001, 00000002, 00000003, 00000004 film side/);
	await page.screenshot({ path: `${pictures}/stores-labels.png`, fullPage: true });
	await show(page, 'today');
	await reads(page, 'tasks', /Labels not read back.*GREEN-M T26 4/);
});

await it('what the bench numbers is printed at once, and what did not come out is replaced by other numbers', async () => {
	const paper = join(station.folder, 'labels/labels-00000001-00000004.pdf');
	for (let i = 0; i < 100 && !existsSync(paper); i++)
		await page.waitForTimeout(50);
	assert.equal(/^Pages:\s+(\d+)/m.exec(execFileSync('pdfinfo', [paper], { encoding: 'utf8' }))[1], '8');
	await press(page, 'PRINT LABELS');
	await reads(page, 'next', /^4 labels of finger tourniquet, green, M, lot T26, were not read back\. Did they not come out whole/);
	await press(page, 'YES');
	await reads(page, 'said', /Entered as spoilt, since not read back: 4\..*labels 00000005 to 00000008 are printed/);
	await show(page, 'labels');
	await reads(page, 'printings', /00000005 to 00000008 00000005, 00000006, 00000007, 00000008/);
	assert.doesNotMatch(await words(page, 'printings'), /00000001/);
	for (let i = 0; i < 100 && !existsSync(join(station.folder, 'labels/labels-00000005-00000008.pdf')); i++)
		await page.waitForTimeout(50);
	assert.ok(existsSync(join(station.folder, 'labels/labels-00000005-00000008.pdf')));
});

await it('a label is shown as it will be printed, dot for dot and at real size, and one that does not fit says what would', async () => {
	writeFileSync(join(station.folder, 'labels.ini'), '[medium roll]\ndpi = 203\nlabel_mm = 57 x 32\n[medium tiny]\ndpi = 203\nlabel_mm = 30 x 15\n');
	await page.fill('#label-key', 'GREEN-M');
	await page.fill('#label-lot', 'T26');
	await page.fill('#label-expiry', '2033-03-31');
	await page.fill('#label-medium', 'roll');
	await page.keyboard.press('Enter');
	await page.waitForSelector('#label-pictures canvas + figcaption');
	await page.waitForFunction(() => document.querySelectorAll('#label-pictures canvas').length === 2);
	assert.match(await words(page, 'label-pictures'), /^Label for the pack, 57 x 32 mm Label for the paper or return bag, 57 x 32 mm$/);
	const seen = await page.evaluate(() => [...document.querySelectorAll('#label-pictures canvas')].map((c) => {
		const data = c.getContext('2d').getImageData(0, 0, c.width, c.height).data, dark = [];
		for (let i = 0; i < data.length; i += 4)
			dark.push(data[i] < 128 ? 1 : 0);
		return { width: c.width, height: c.height, mm: c.getBoundingClientRect().width / 96 * 25.4, png: c.toDataURL().split(',')[1], dark: dark.reduce((sum, x) => sum + x, 0) };
	}));
	for (const c of seen) {
		assert.deepEqual([c.width, c.height], [456, 256]); // 57 x 32 mm at 203 dots an inch, in whole dots
		assert.ok(Math.abs(c.mm - 57.05) < 0.6, `${c.mm} mm`);
		assert.ok(c.dark > 2000);
	}
	assert.notEqual(seen[0].png, seen[1].png);
	const file = join(station.folder, 'seen.png'); // what is shown can be scanned
	writeFileSync(file, Buffer.from(seen[0].png, 'base64'));
	assert.match(execFileSync(join(bin, 'scan-camera'), ['--image', file], { encoding: 'utf8' }), /91PBC0000000009\d\d"/);
	await page.evaluate(() => { const s = document.getElementById('scale'); s.value = '120'; s.dispatchEvent(new Event('input')); });
	assert.ok(Math.abs(await page.evaluate(() => document.querySelector('#label-pictures canvas').getBoundingClientRect().width / document.getElementById('fifty').getBoundingClientRect().width) - 57.05 / 50) < 0.03);
	await page.screenshot({ path: `${pictures}/stores-label.png`, fullPage: true });
	await page.fill('#label-medium', 'tiny');
	await page.keyboard.press('Enter');
	await reads(page, 'label-said', /do not fit on it: use labels of at least \d+ x \d+ mm/);
	await page.fill('#label-medium', '');
	await page.fill('#label-expiry', '31.3.2033');
	await page.keyboard.press('Enter');
	await reads(page, 'label-said', /^That is no day/);
	assert.match(station.tool('stock', 'list', 'GREEN-M', '--lot', 'T26', '--json'), /"label_open":4/); // nothing was numbered for it
});

await it('an instrument that a case ended without is listed with the trays that it may come from', async () => {
	await show(page, 'trays');
	await reads(page, 'lists', /TRAY-HAND/);
	await reads(page, 'short', /^None that the station knows of\.$/);
});

await it('what comes back in a tray is taken at the page, and where no case misses one none is charged', async () => {
	await press(page, 'FOUND');
	await reads(page, 'next', /FOUND|[Ff]ound/);
	await type(page, 'GREEN-M');
	await reads(page, 'said', /^Accepted: No case misses .*none is charged\./);
	await show(page, 'trays');
	await reads(page, 'came-back', /^Day.*20\d\d-\d\d-\d\d.*GREEN-M.*no case missed one/);
	await page.fill('#had-key', 'GREEN-M');
	await page.fill('#had-since', '2020-01-01');
	await page.click('#ask-had button');
	await reads(page, 'had', /^Ended cases that had GREEN-M\. None of them is charged/);
	await page.fill('#had-key', 'NO-SUCH');
	await page.click('#ask-had button');
	await reads(page, 'had', /not in the catalogue/);
	await page.screenshot({ path: `${pictures}/stores-trays.png`, fullPage: true });
});

await it('what is no question of this page is turned away', async () => {
	assert.equal(await page.evaluate(async () => (await fetch('/stores/ask', { method: 'POST', headers: { 'Content-Type': 'text/plain' }, body: '{}' })).status), 415);
	assert.equal(await page.evaluate(async () => (await fetch('/stores/ask', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ room: 9, ask: { do: 'lines', x: 'x'.repeat(4000) } }) })).status), 413);
	assert.equal(await page.evaluate(async () => (await fetch('/stores/ask', { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: '{"room":9,"ask":7}' })).status), 400);
});

await it('each part can be printed: the bench and all that is pressed stay off the paper', async () => {
	for (const part of ['today', 'stock', 'recall']) {
		await show(page, part);
		await page.evaluate(() => { window.print = () => { window.printedOnce = true; }; });
		await page.click(`#${part} .print`);
		assert.ok(await page.evaluate(() => window.printedOnce));
		await page.emulateMedia({ media: 'print' });
		assert.ok(await page.isHidden('#bench'));
		assert.equal(await page.evaluate(() => [...document.querySelectorAll('button, input, select')].filter((e) => e.checkVisibility()).length), 0);
		assert.match(await words(page, 'printed'), /^Printed 20\d\d-\d\d-\d\d \d\d:\d\d\. What changes later/);
		await page.pdf({ path: `${pictures}/stores-${part}.pdf`, format: 'A4', landscape: part === 'stock' });
		await page.emulateMedia({ media: 'screen' });
	}
});

await it('axe-core finds nothing in any part, in light and dark, wide and enlarged, and nothing is wider than its place', async () => {
	const found = [];
	for (const [name, options] of [['1280x800', {}], ['1920x1080 dark', { viewport: { width: 1920, height: 1080 }, colorScheme: 'dark' }], ['enlarged', { viewport: { width: 640, height: 400 } }], ['phone', { viewport: { width: 390, height: 844 } }]]) {
		const at = await open(station, { ...options, bypassCSP: true });
		await at.addScriptTag({ path: axe });
		await at.click('#other summary');
		for (const part of parts) {
			await show(at, part);
			if (part === 'recall') {
				await at.fill('#recall-key', 'GREEN-M');
				await at.keyboard.press('Enter');
				await reads(at, 'recalled', /Where it lies/);
			}
			await at.waitForTimeout(200);
			const r = await at.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
			assert.ok(r.passes.length > 10);
			r.violations.forEach((v) => found.push(`${name} ${part}: ${v.id}: ${v.help} (${v.nodes[0].html.slice(0, 120)})`));
			const over = await at.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
			if (over > 1)
				found.push(`${name} ${part}: ${over} px wider than the screen`);
			const narrow = await at.evaluate((p) => Math.min(...[...document.querySelectorAll(`#${p} td`)].filter((e) => e.checkVisibility() && e.innerText.trim().length > 12).map((e) => e.clientWidth)), part);
			if (narrow < 60)
				found.push(`${name} ${part}: a cell of many letters is ${narrow} px wide`);
			await at.screenshot({ path: `${pictures}/stores-${part}-${name.replace(' ', '-')}.png`, fullPage: true });
		}
		await at.close();
	}
	assert.deepEqual(found, []);
});

await it('no word of the page says that anything is safe, clear or OK', async () => {
	for (const part of parts) {
		await show(page, part);
		assert.doesNotMatch(await page.evaluate(() => document.body.innerText), /\bsafe|all clear|\bOK\b|\bokay\b/i);
	}
	assert.deepEqual(page.faults.filter((f) => !/status of 4/.test(f)), []);
});

await it('when the station is gone the page says so', async () => {
	station.daemon.kill('SIGSTOP');
	await reads(page, 'trouble', /No word from the station for \d+ s/, 6000);
	station.daemon.kill('SIGCONT');
	await page.waitForSelector('#trouble', { state: 'hidden' });
});
await page.close();
await station.stop();

await it('what was typed at the page is marked as keyed in the record', async () => {
	const rows = execFileSync('sqlite3', [join(station.folder, 'record.db'), 'SELECT payload FROM event WHERE kind IN (\'received\', \'quarantined\', \'confirmed\')'], { encoding: 'utf8' }).trim().split('\n');
	assert.ok(rows.length >= 4, `${rows.length}`);
	rows.forEach((row) => assert.match(row, /keyed/));
});
station.remove();

await b.close();
end();
