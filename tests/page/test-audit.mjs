// The auditor's pages, with the whole station behind them: handed over by the command, shown by the board to whoever has the
// ticket, and to nobody else.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { connect, createServer } from 'node:net';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { browser, skip } from './browser.mjs';
import { bin } from './station.mjs';
import { end, it, sleep } from './told.mjs';
import { source, Whole } from './whole.mjs';

let axe;
try {
	axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
} catch {
	skip('axe-core is not installed: run \'npm ci\' in tests/');
}
const pictures = process.env.BANDTALLY_PICTURES ?? join(bin, '../page');
mkdirSync(pictures, { recursive: true });
// A port of its own: one that a board finds itself is another one when it starts anew.
const free = createServer().listen(0, '127.0.0.1');
await new Promise((done) => free.on('listening', done));
const { port } = free.address();
await new Promise((done) => free.close(done));
const whole = new Whole(`[site]\nletters = BC\nname = Example Hospital\n[board]\nstart = yes\nport = ${port}\n`);
Object.assign(whole.env, { XDG_CACHE_HOME: join(whole.folder, 'cache'), XDG_DATA_HOME: join(whole.folder, 'lists'), BANDTALLY_SOURCE: source });
execFileSync(join(bin, '../tests/half-year'), [whole.folder, '7'], { env: whole.env });
await whole.start();
const b = await browser(), asked = [];

async function open(address) {
	const context = await b.newContext({ viewport: { width: 1280, height: 900 }, bypassCSP: false });
	const page = await context.newPage();
	page.on('request', (r) => asked.push(r));
	const answer = await page.goto(address);
	return { page, context, answer };
}
const at = (path) => new URL(path, whole.address).href;

// A program at the socket, as a member of bandtally-audit could write one.
class Peer {
	constructor() {
		this.socket = connect(join(whole.folder, 'socket'));
		this.lines = createInterface({ input: this.socket })[Symbol.asyncIterator]();
	}
	async ask(o) {
		this.socket.write(`${JSON.stringify({ do: 'report', ...o })}\n`);
		return JSON.parse((await this.lines.next()).value);
	}
	end() {
		this.socket.destroy();
	}
}

await it('without a ticket, and with one for typing in a room, no report is seen', async () => {
	const page = await open(at('/audit'));
	assert.equal(page.answer.status(), 403);
	assert.match(await page.page.innerText('body'), /'bandtally board audit'/);
	const typing = await open(whole.tool('board', '--room', '1').trim());
	assert.equal((await typing.page.goto(at('/audit'))).status(), 403);
});

await it('before any was handed over the page says how to have them', async () => {
	const peer = new Peer(), { answer, page } = await open((await peer.ask({ address: true })).address);
	assert.equal(answer.status(), 404);
	assert.match(await page.innerText('body'), /handed over with 'bandtally board audit'/);
	peer.end();
});

const { page } = await open(whole.tool('board', 'audit', '--year', '2027').trim());

await it('the address leads to all reports of the year: it, its quarters, its months, its rooms', async () => {
	assert.deepEqual(await page.locator('h2').allTextContents(), ['The year', 'Quarters', 'Months', 'The year by room']);
	const said = await page.locator('main a').allTextContents();
	assert.deepEqual(said.slice(0, 8), ['2027', 'Quarter 1 of 2027', 'Quarter 2 of 2027', '2027-01', '2027-02', '2027-03', '2027-04', '2027-05']);
	assert.match(await page.innerText('main'), /the record as it stood at \d{4}-\d\d-\d\d \d\d:\d\d/);
	await page.screenshot({ path: join(pictures, 'audit-all.png') });
});

await it('each of them is there, of its days, and says what the command says of them', async () => {
	for (const link of await page.locator('main a').evaluateAll((all) => all.map((a) => a.href))) {
		const of = (await open(at('/audit'))).answer.status();
		assert.equal(of, 403, 'another browser sees it');
		assert.equal((await page.goto(link)).status(), 200, link);
		assert.match(await page.innerText('header'), /2027-\d\d-\d\d to 2027-\d\d-\d\d/, link);
		assert.equal(await page.locator('nav a').first().getAttribute('href'), '/audit');
	}
	await page.goto(at('/audit/2027-q1'));
	const report = JSON.parse(whole.tool('audit', 'report', '--quarter', '2027-1', '--json'));
	assert.deepEqual(await page.locator('h2').allTextContents(), report.sections.map((s) => s.title));
	const text = await page.innerText('body');
	for (const figure of report.sections.flatMap((s) => s.figures))
		assert.ok(text.includes(figure.value), figure.value);
	const drawn = await page.evaluate(async () => Promise.all([...document.images].map(async (i) => (await i.decode(), i.naturalWidth))));
	assert.equal(drawn.length, report.sections.flatMap((s) => s.charts).filter((c) => c.points.length).length);
	drawn.forEach((width) => assert.ok(width > 200, `${width}`));
	await page.screenshot({ path: join(pictures, 'audit-quarter.png'), fullPage: true });
});

await it('from one to the next and the one before, by keyboard alone', async () => {
	await page.goto(at('/audit/2027-02'));
	const said = await page.locator('nav a').allTextContents();
	assert.deepEqual(said, ['All reports', 'Earlier: 2027-01', 'Later: 2027-03']);
	for (let i = 0; i < 3; i++)
		await page.keyboard.press('Tab');
	await Promise.all([page.waitForURL('**/audit/2027-03'), page.keyboard.press('Enter')]);
	await page.goto(at('/audit/2027-01'));
	assert.deepEqual(await page.locator('nav a').allTextContents(), ['All reports', 'Later: 2027-02']);
	await page.goto(at('/audit/2027-room-1'));
	assert.deepEqual(await page.locator('nav a').allTextContents(), ['All reports']);
});

await it('axe-core finds nothing, wide and narrow, and nothing is wider than its place', async () => {
	const context = await b.newContext({ bypassCSP: true, viewport: { width: 1280, height: 900 } });
	const looked = await context.newPage();
	await looked.goto(whole.tool('board', 'audit', '--year', '2027').trim());
	for (const path of ['/audit', '/audit/2027']) {
		await looked.goto(at(path));
		await looked.addScriptTag({ path: axe });
		for (const width of [1280, 360]) {
			await looked.setViewportSize({ width, height: 800 });
			const r = await looked.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
			assert.deepEqual(r.violations.map((v) => `${v.id}: ${v.help} ${v.nodes[0].html.slice(0, 100)}`), []);
			assert.ok(r.passes.length > 10, `only ${r.passes.length} checks ran`);
			const wide = await looked.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
			assert.ok(wide <= 0, `${path} at ${width}: ${wide} px too wide`);
			if (width === 360)
				await looked.screenshot({ path: join(pictures, `audit-phone${path.replaceAll('/', '-')}.png`), fullPage: true });
		}
	}
	await context.close();
});

await it('it prints on A4 without its links', async () => {
	await page.goto(at('/audit/2027-q2'));
	const pdf = join(whole.folder, 'printed.pdf');
	await page.pdf({ path: pdf, format: 'A4' });
	const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' });
	assert.match(text, /2027-04-01 to 2027-06-30/);
	assert.doesNotMatch(text, /All reports|Earlier:/);
});

await it('whatever somebody hands over at the socket, no script of it runs, and nothing of it is asked for elsewhere', async () => {
	const peer = new Peer(), before = asked.length;
	for (const o of [{ begin: true }, { page: 'x', part: '<!doctype html><title>quiet</title><script>document.title = "ran"</script>' },
		{ page: 'x', part: '<img src="none" onerror="document.title = \'ran\'"><img src="http://127.0.0.1:9/y"><link rel="stylesheet" href="/board.css"><form action="/keyed"><button>go</button></form>' },
		{ page: '', part: '<a href="/audit/x">x</a>' }, { show: true }])
		assert.equal((await peer.ask(o)).taken, true);
	await page.goto(at('/audit/x'));
	await page.waitForTimeout(300);
	assert.equal(await page.title(), 'quiet');
	await page.evaluate(() => document.forms[0].submit());
	await page.waitForTimeout(200);
	assert.equal(page.url(), at('/audit/x'));
	const refused = asked.slice(before).filter((r) => r.failure()?.errorText === 'csp').map((r) => r.url());
	const sent = asked.slice(before).map((r) => r.url()).filter((u) => !refused.includes(u));
	assert.deepEqual([...new Set(sent)], [at('/audit/x')]);
	assert.deepEqual(refused.sort(), ['http://127.0.0.1:9/y', at('/audit/none'), at('/board.css')].sort());
	peer.end();
});

await it('what is shown stays until the next set is whole; who is overtaken, and what is too long, is told', async () => {
	const first = new Peer(), second = new Peer();
	const is = async (status, path) => assert.equal((await page.goto(at(path))).status(), status, path);
	await first.ask({ begin: true });
	await first.ask({ page: 'half', part: 'h' });
	await is(200, '/audit/x');
	await is(404, '/audit/half');
	await second.ask({ begin: true });
	assert.match((await first.ask({ page: 'half', part: 'h' })).error, /not taken whole: somebody else/);
	const part = 'x'.repeat(60000);
	let said;
	for (let i = 0; i < 300 && !said?.error; i++)
		if (!(said = await second.ask({ page: 'long', part })).taken)
			await sleep(20);
	assert.match(said.error, /longer than the 16 MiB/);
	await is(200, '/audit/x');
	assert.match((await second.ask({ show: true })).error, /not taken whole/);
	first.end();
	second.end();
	whole.tool('board', 'audit', '--year', '2027');
	await is(404, '/audit/x');
	await is(200, '/audit/2027');
});

await it('a set with a name that is none of ours, or without the page that leads to the others, leaves the set before', async () => {
	const peer = new Peer();
	for (const o of [{ begin: true }, { page: 'x', part: 'x' }, { show: true }])
		await peer.ask(o);
	assert.equal((await page.goto(at('/audit/2027'))).status(), 200);
	for (const name of ['../x', 'A', 'a'.repeat(25)]) {
		await peer.ask({ begin: true });
		await peer.ask({ page: name, part: 'p' });
		await peer.ask({ page: '', part: 'i' });
		await peer.ask({ show: true });
		assert.equal((await page.goto(at('/audit/2027'))).status(), 200, name);
	}
	peer.end();
});

await it('a board that starts anew has none, lets the same browser in, and says how to have them again', async () => {
	const board = execFileSync('pgrep', ['-P', `${whole.daemon.pid}`, '-f', 'bandtally-board'], { encoding: 'utf8' }).trim();
	const peer = new Peer();
	await peer.ask({ begin: true });
	process.kill(Number(board));
	for (let i = 0; i < 100; i++, await sleep(100))
		if ((await page.goto(at('/audit')).catch(() => null))?.status() === 404)
			break;
	assert.match(await page.innerText('body'), /'bandtally board audit'/);
	assert.match((await peer.ask({ page: '', part: 'x' })).error, /the board started anew/);
	peer.end();
});

await b.close();
await whole.stop();
whole.remove();
end();
