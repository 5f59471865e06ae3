// The ordinary case through the real daemon, the real command and the real board, seen in a real browser.
import assert from 'node:assert/strict';
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { createHmac } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { browser, skip } from './browser.mjs';
import { bin } from './station.mjs';
import { end, it, sleep } from './told.mjs';

for (const program of ['bandtallyd', 'bandtally', 'bandtally-board'])
	if (!existsSync(join(bin, program)))
		skip(`${program} is not built in ${bin}`);
const source = join(dirname(fileURLToPath(import.meta.url)), '../..');
const folder = mkdtempSync(join(tmpdir(), 'board-'));
// The same port again after a restart, as where it is set.
const port = await new Promise((done) => { const s = createServer().listen(0, '127.0.0.1', () => { const p = s.address().port; s.close(() => done(p)); }); });
const settings = `[site]\nletters = BC\nname = Example Hospital\n\n[room 1]\nname = Theatre 1\n\n[board]\nstart = yes\nport = ${port}\n`;
writeFileSync(join(folder, 'station.ini'), settings);
writeFileSync(join(folder, 'policy.ini'), readFileSync(join(source, 'config/policy.ini')));
let daemon, log = '', gone;
async function start() {
	log = '';
	daemon = spawn(join(bin, 'bandtallyd'), ['--data', folder], { stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, PATH: `${bin}:${process.env.PATH}` } });
	daemon.stderr.on('data', (d) => { log += d; });
	gone = new Promise((done) => daemon.on('exit', done));
	for (let i = 0; i < 100; i++) {
		await sleep(100);
		const at = /http:\/\/127\.0\.0\.1:\d+\//.exec(log);
		if (at)
			return at[0];
	}
	return '';
}

const tool = (...words) => execFileSync(join(bin, 'bandtally'), ['--data', folder, ...words], { encoding: 'utf8' });
const scan = (code) => spawnSync(join(bin, 'bandtally'), ['--data', folder, 'scan', code], { encoding: 'utf8' });

// The house's own codes, as station/code/own-codes.h states them.
function code(before) {
	let r = 0;
	for (const c of `${before}00`)
		for (const d of String(parseInt(c, 36)))
			r = (r * 10 + +d) % 97;
	return before + String(98 - r).padStart(2, '0');
}
const pad = (n, width) => String(n).padStart(width, '0');
const card = (n) => code(`BTBC101${pad(n, 3)}`), digit = (n) => code(`BTBC201${pad(n, 2)}`), badge = (n) => code(`BTBC3${pad(n, 6)}`);

let address = await start();
const b = await browser(), page = await b.newPage({ viewport: { width: 1920, height: 1080 } }), faults = [];
page.on('pageerror', (e) => faults.push(String(e)));
const reads = async (id, pattern) => {
	const words = () => page.evaluate((i) => document.getElementById(i).innerText.replace(/\s+/g, ' '), id);
	for (let i = 0; i < 40; i++) {
		if (pattern.test(await words()))
			return;
		await sleep(50);
	}
	assert.match(await words(), pattern);
};
const people = {};
// The six digits of a slip, worked out beside the station from its key: HMAC-SHA256 (RFC 2104) under HMAC-SHA256(key, "slip").
const mac = (key, text) => createHmac('sha256', key).update(text).digest();
const slip = (n) => {
	const key = mac(readFileSync(join(folder, 'station.key')).subarray(0, 32), 'slip');
	const proof = mac(key, `BC|00|${pad(n, 7)}|01`).readBigUInt64BE() % 999999n + 1n;
	return code(`BTBC400${pad(n, 7)}01${pad(proof, 6)}`);
};
const label = (line) => code(`PBC00${pad(/\d+/.exec(tool('label', 'pack', '--line', line, '--lot', 'T26', '--expiry', '2028-03-31', '--count', '1', '--pdf', join(folder, `${line}.pdf`)))[0], 8)}`);

await it('the daemon starts its board, which shows the room and asks for nothing yet', async () => {
	assert.ok(address, log);
	tool('catalogue', 'import', join(source, 'config/catalogue.csv'));
	for (const [name, profession] of [['SCRUB-1', 'practitioner'], ['CIRC-2', 'practitioner'], ['SURG-3', 'surgeon']])
		people[name] = +/badge (\d+)/.exec(tool('staff', 'add', '--registered', profession, name))[1];
	const [file] = tool('board', '--room', '1', '--file', join(folder, 'a page.html')).split('\n');
	assert.equal(file, `file://${folder}/a%20page.html`);
	await page.goto(file);
	await page.waitForURL(`${address}?room=1`);
	await reads('place', /^Theatre 1$/);
	await reads('next', /^Next patient: scan NEW CASE$/);
	await reads('note', /No printer is set/);
});

await it('an ordinary case of 16 scans, each answered on the page', async () => {
	const green = label('GREEN-M'), forceps = label('FORCEPS'), steps = [
		[card(1), 'next', /badge of the one at the field/], [badge(people['SCRUB-1']), 'next', /Who circulates: scan the circulating badge/],
		[badge(people['CIRC-2']), 'next', /scan each pack/], [green, 'sheet', /counted in accounted for finger tourniquet, green, M 1/],
		[forceps, 'sheet', /finger tourniquet, green, M 1 artery forceps, curved 1/], [badge(people['CIRC-2']), 'next', /When the tourniquet is on: scan the digit card/],
		[digit(2), 'sheet', /tourniquet, green, M · on 1 artery forceps, curved · on 1/], [digit(2), 'next', /Is it off\? Scan OFF/],
		['typed', 'sheet', /tourniquet, green, M · off, not yet accounted for 1 .*right index finger was on 0 min, not yet seen bare/], [card(50), 'next', /Show the finger tourniquet/],
		[card(41), 'sheet', /tourniquet, green, M, intact 1 1 artery forceps, curved 1 0/], [card(10), 'next', /Agree the final count aloud/],
		[badge(people['CIRC-2']), 'next', /Look at the bare right index finger/], [digit(2), 'sheet', /Sign-out: read aloud 2 of 2 accounted for/],
		[badge(people['SURG-3']), 'next', /The paper: scan the code on the slip when it is in your hand/], [slip(1), 'next', /^Next patient: scan NEW CASE$/],
	];
	const agreed = [];
	for (const [what, where, pattern] of steps) {
		if (what === 'typed') {
			await page.click('#type');
			await page.fill('#code', card(40));
			await reads('judged', /^card OFF: check digits agree$/);
			await page.click('#keyed .send');
		} else {
			if (where === 'next' && /slip/.test(String(pattern)) === false && /BTBC4/.test(what))
				await sleep(1500);
			const r = scan(what);
			assert.ok([0, 4].includes(r.status), `${what}: ${r.stdout}${r.stderr}`);
		}
		await reads(where, pattern);
		if (/When the tourniquet is on|bare right index/.test(String(pattern)))
			agreed.push(await page.evaluate(() => document.getElementById('agreed').textContent));
		if (/M · on 1/.test(String(pattern)))
			assert.match(await page.evaluate(() => document.querySelector('#figure title').textContent), /right index finger: tourniquet on, 0 min, forceps on it/);
	}
	assert.deepEqual(faults, []);
	assert.match(agreed[0], /^initial count agreed aloud \d\d:\d\d by SCRUB-1 and CIRC-2, recorded by CIRC-2$/i);
	assert.match(agreed[1], /^final count agreed aloud \d\d:\d\d by SCRUB-1 and CIRC-2, recorded by CIRC-2$/i);
});

await it('at the desk it is a case of the day, with its outcome', async () => {
	const desk = await b.newPage();
	await desk.goto(`${address}desk`);
	await desk.waitForFunction(() => /Theatre 1\s+case 1\s+\d\d:\d\d\s+\d\d:\d\d\s+reconciled/.test(document.getElementById('cases').innerText), null, { timeout: 5000 });
	await desk.close();
});

await it('what was typed on the page is marked as keyed in the record', async () => {
	assert.match(tool('case', 'show', '1', '--json'), /"label":"Typed","says":"All \d+ entries of this case were typed, /);
});

await it('the board is started anew: the same browser types on, without a new ticket', async () => {
	process.kill(+/^\d+/.exec(execFileSync('pgrep', ['-P', String(daemon.pid), '-f', 'bandtally-board'], { encoding: 'utf8' }))[0], 'SIGKILL');
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'yes');
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no', null, { timeout: 10000 });
	await page.click('#type');
	await page.fill('#code', card(40));
	await page.click('#keyed .send');
	await reads('judged', /^No case is open/);
	await page.click('#keyed .close');
});

await it('when the daemon is gone, the page says so and says count by hand', async () => {
	daemon.kill('SIGTERM');
	await gone;
	await page.waitForFunction(() => /^No word from the station for \d+ s\. Count by hand/.test(document.getElementById('next').textContent), null, { timeout: 4000 });
});

await it('a printer that does not answer is said on the board, with what to do, and a code that was typed proves no paper', async () => {
	writeFileSync(join(folder, 'station.ini'), `${settings}\n[printer]\nqueue = ipp://127.0.0.1:9/ipp/print\n`);
	address = await start();
	await page.reload();
	for (const what of [card(1), badge(people['SCRUB-1']), badge(people['CIRC-2']), label('GREEN-M'), badge(people['CIRC-2']), card(50), card(11)])
		assert.ok([0, 4].includes(scan(what).status), what);
	await reads('note', /Printing slip 0000002: the printer does not answer: check power, cable and network/);
	assert.match(scan(slip(2)).stdout, /refused: Slip 0000002, copy 1, was not printed yet/);
	assert.match(await page.evaluate(() => document.getElementById('note').textContent), /does not answer/);
	await page.click('#type'); // the station was started anew, in the same boot
	await page.waitForSelector('#code', { state: 'visible', timeout: 8000 }); // as soon as the page has asked whether it may
});

await it('stopped with a case open, the page says that and no other word, as long as the station is away', async () => {
	daemon.kill('SIGTERM');
	await gone;
	await sleep(4000);
	await reads('next', /^The station was stopped by its administrator with a case open\. Count by hand on the paper sheet\.$/);
	address = await start();
	await reads('said', /The station was away between \d\d:\d\d and \d\d:\d\d\. Look at each tourniquet now/);
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no', null, { timeout: 10000 });
});

await b.close();
daemon.kill('SIGKILL');
rmSync(folder, { recursive: true });
end();
