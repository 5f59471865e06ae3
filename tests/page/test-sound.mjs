// What is heard: volume and quiet hours from station.ini to the page, and replies that are spoken, by a real voice too.
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browser } from './browser.mjs';
import { bin, Station } from './station.mjs';
import { scenes, status } from './scenes.mjs';
import { end, it, sleep } from './told.mjs';

const folder = mkdtempSync(join(tmpdir(), 'board-sound-')), started = [];
process.on('exit', () => {
	started.forEach((c) => c.kill('SIGKILL'));
	rmSync(folder, { recursive: true, force: true });
});
const b = await browser();

// A daemon with this [board]; its page notes how loud each sound is.
async function daemon(name, settings) {
	const data = join(folder, name), d = { log: '' };
	mkdirSync(data);
	writeFileSync(join(data, 'station.ini'), `[room 1]\nname = Theatre 1\n\n[board]\nstart = yes\nport = 0\n${settings}`);
	d.child = spawn(join(bin, 'bandtallyd'), ['--data', data], { stdio: ['ignore', 'ignore', 'pipe'] });
	started.push(d.child);
	d.gone = new Promise((done) => d.child.on('exit', done));
	d.child.stderr.on('data', (t) => { d.log += t; });
	for (let i = 0; i < 100 && !d.address; i++) {
		await sleep(50);
		d.address = /http:\/\/127\.0\.0\.1:\d+\//.exec(d.log)?.[0];
	}
	assert.ok(d.address, d.log);
	d.page = await b.newPage();
	await d.page.addInitScript(() => {
		window.heard = [];
		document.addEventListener('sounded', (e) => window.heard.push([e.detail.name, Math.round(e.detail.level * 1000)]));
	});
	await d.page.goto(d.address);
	await d.page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	d.tool = (...words) => spawnSync(join(bin, 'bandtally'), ['--data', data, ...words], { encoding: 'utf8', timeout: 10_000 });
	d.card = (words) => d.tool('label', 'cards', '--list').stdout.split('\n').map((l) => l.split('\t')).find((l) => l[2] === words)[0];
	// The sound of one scan.
	d.hears = async (code) => {
		const before = await d.page.evaluate(() => window.heard.length);
		d.tool('scan', code);
		await d.page.waitForFunction((n) => window.heard.length > n, before, { timeout: 5000 });
		return (await d.page.evaluate(() => window.heard)).slice(before);
	};
	d.end = async () => {
		await d.page.close();
		d.child.kill('SIGTERM');
		assert.equal(await d.gone, 0, d.log);
	};
	return d;
}
const hm = (minutes) => `${String(Math.floor(minutes / 60) % 24).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
const minute = () => new Date().getHours() * 60 + new Date().getMinutes();

// Quiet until the next minute begins; looked at again at the end, without any scan meanwhile.
while (new Date().getSeconds() > 50)
	await sleep(500);
const m = minute(), soon = await daemon('soon', `volume = 50\nquiet = ${hm(m + 1439)}-${hm(m + 1)}\n`), soonFirst = await soon.hears(soon.card('NEW CASE'));

await it('the volume of station.ini is what the page sounds with; 0 is silent', async () => {
	const d = await daemon('volume', 'volume = 35\n');
	assert.deepEqual(await d.hears(d.card('NEW CASE')), [['accepted', 350]]);
	await d.end();
	const none = await daemon('none', 'volume = 0\n');
	assert.deepEqual(await none.hears('BTBC10100100'), [['refused', 0]]);
	await none.end();
	const plain = await daemon('plain', '');
	assert.deepEqual(await plain.hears('BTBC10100100'), [['refused', 600]]);
	await plain.end();
});

await it('within the quiet hours, and with a patient who is awake, each sound is soft', async () => {
	const t = minute(), d = await daemon('quiet', `volume = 50\nquiet = ${hm(t + 1320)}-${hm(t + 120)}\n`);
	assert.deepEqual(await d.hears(d.card('NEW CASE')), [['accepted', 100]]);
	await d.end();
	const other = await daemon('other', `volume = 50\nquiet = ${hm(t + 120)}-${hm(t + 1320)}\n`);
	assert.deepEqual(await other.hears(other.card('NEW CASE')), [['accepted', 500]]);
	assert.deepEqual(await other.hears(other.card('AWAKE PATIENT')), [['accepted', 100]]);
	await other.end();
});

// Replies spoken: what the page asks of the browser's voice.
const station = await Station.start();
station.beat();
station.tell({ status: status() });
const reply = (verdict, said, more = {}) => ({ ...scenes.on, next: `${said} Next.`, recent: [{ ago_ms: 0, verdict, said }], sound: { volume: 80, quiet: false, speech: true }, ...more });
async function listener(first = {}) {
	station.view(reply('accepted', 'Before.', first));
	const page = await b.newPage();
	page.warnings = [];
	page.on('console', (c) => c.type() === 'warning' && page.warnings.push(c.text()));
	await page.addInitScript(() => {
		window.asked = [];
		speechSynthesis.speak = (u) => { window.last = u; window.asked.push([u.text, u.lang, Math.round(u.volume * 100)]); };
		speechSynthesis.cancel = () => window.asked.push('cancel');
	});
	await page.goto(station.address);
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	page.says = async (v, ms = 1300) => {
		await page.evaluate(() => { window.asked = []; });
		station.view(v);
		await sleep(ms);
		return page.evaluate(() => window.asked);
	};
	return page;
}

await it('replies are not spoken unless station.ini says so', async () => {
	const page = await listener({ sound: { volume: 80, quiet: false, speech: false } });
	assert.deepEqual(await page.says(reply('refused', 'Not in the catalogue.', { sound: { volume: 80, quiet: false, speech: false } })), ['cancel']);
	assert.deepEqual(await page.says(reply('accepted', 'Noted.', { sound: undefined })), ['cancel']);
	await page.close();
});

await it('a reply is spoken once, in its words, after its sound; a question with what is asked', async () => {
	const page = await listener();
	assert.deepEqual(await page.evaluate(() => window.asked), [], 'what was said before the page came is not news');
	assert.deepEqual(await page.says(reply('accepted', 'Right index finger: tourniquet on.')), ['cancel', ['Right index finger: tourniquet on.', 'en-GB', 80]]);
	assert.deepEqual(await page.says(reply('refused', 'Not in the catalogue.')), ['cancel', ['Refused. Not in the catalogue.', 'en-GB', 80]]);
	assert.deepEqual(await page.says(reply('question', '12 minutes.', { question: 'off', next: 'Is it off?' })), ['cancel', ['Question. 12 minutes. Is it off?', 'en-GB', 80]]);
	assert.deepEqual(await page.says(reply('question', '12 minutes.', { question: 'off', next: 'Is it off?' })), [], 'nothing is new');
	assert.deepEqual(await page.says(reply('accepted', 'Softly.', { sound: { volume: 80, quiet: true, speech: true } })), ['cancel', ['Softly.', 'en-GB', 16]]);
	assert.deepEqual(await page.says(reply('accepted', 'Silent.', { sound: { volume: 0, quiet: false, speech: true } })), ['cancel']);
	await page.close();
});

await it('a newer reply ends the older one, and of a burst only the last is spoken', async () => {
	const page = await listener();
	for (let i = 1; i < 10; i++)
		station.view(reply('refused', `Code ${i}.`));
	const asked = await page.says(reply('refused', 'Code 10.'));
	assert.deepEqual(asked.filter((a) => a !== 'cancel'), [['Refused. Code 10.', 'en-GB', 80]]);
	assert.equal(asked.at(-2), 'cancel');
	await page.close();
});

await it('nothing is spoken while the patient is awake, and what is being said ends', async () => {
	const page = await listener();
	assert.deepEqual(await page.says(reply('refused', 'One count is open.'), 200), ['cancel'], 'it waits for its sound');
	assert.deepEqual(await page.says(reply('accepted', 'Patient awake.', { awake: true })), ['cancel']);
	assert.deepEqual(await page.says(reply('refused', 'A tourniquet is missing.', { awake: true })), ['cancel']);
	await page.close();
});

await it('a browser without a voice says so once, in its log and under Light and sound, and not among the faults', async () => {
	const page = await listener(), fail = (error) => page.evaluate((e) => window.last.onerror({ error: e }), error);
	const voice = async () => {
		await page.click('#settings');
		const text = await page.textContent('#voice');
		await page.click('#choices .close');
		return text;
	};
	await page.says(reply('accepted', 'One.'), 500);
	await fail('canceled');
	assert.equal(await voice(), 'Replies are spoken, unless the patient is awake.');
	assert.deepEqual(page.warnings, []);
	await fail('synthesis-failed');
	await page.says(reply('accepted', 'Two.'), 500);
	await fail('synthesis-failed');
	assert.equal(page.warnings.length, 1);
	assert.match(page.warnings[0], /^Replies are not spoken: this browser has no voice \(synthesis-failed\): install speech-dispatcher with a voice and start the browser with it, or set speech = no in station\.ini$/);
	assert.equal(await voice(), 'Replies are to be spoken, but this browser has no voice.');
	assert.doesNotMatch(await page.textContent('#note'), /voice|spoken/);
	await page.close();
});

// A speech-dispatcher of our own: its socket, its log, the espeak-ng voice, and sound that goes nowhere.
async function dispatcher() {
	const at = join(folder, 'speech'), socket = join(at, 'socket'), d = { log: () => readFileSync(join(at, 'speech-dispatcher.log'), 'utf8') };
	mkdirSync(join(at, 'modules'), { recursive: true });
	writeFileSync(join(at, 'sound.conf'), 'pcm.!default { type null }\n');
	writeFileSync(join(at, 'speechd.conf'), `LogLevel 5\nLogDir "${at}"\nCommunicationMethod "unix_socket"\nSocketPath "${socket}"\nTimeout 0\nAudioOutputMethod "alsa"\nAddModule "espeak-ng" "sd_espeak-ng" "espeak-ng.conf"\nDefaultModule espeak-ng\nDisableAutoSpawn\n`);
	copyFileSync('/etc/speech-dispatcher/modules/espeak-ng.conf', join(at, 'modules/espeak-ng.conf'));
	started.push(spawn('speech-dispatcher', ['-s', '-C', at, '-S', socket, '-P', join(at, 'pid'), '-L', at], { stdio: 'ignore', env: { ...process.env, ALSA_CONFIG_PATH: join(at, 'sound.conf') } }));
	for (let i = 0; i < 100 && !existsSync(socket); i++)
		await sleep(50);
	assert.ok(existsSync(socket), 'speech-dispatcher does not start');
	d.address = `unix_socket:${socket}`;
	return d;
}

if (!existsSync('/usr/bin/speech-dispatcher') || !existsSync('/etc/speech-dispatcher/modules/espeak-ng.conf'))
	console.log('skipped: a real voice: speech-dispatcher or its espeak-ng voice is not installed: run config/setup --test');
else
	await it('a real voice (speech-dispatcher, espeak-ng) is given the reply, and is stopped by a newer one', async () => {
		const d = await dispatcher();
		process.env.SPEECHD_ADDRESS = d.address;
		const speaks = await browser('--enable-speech-dispatcher'), page = await speaks.newPage();
		delete process.env.SPEECHD_ADDRESS;
		const warnings = [];
		page.on('console', (c) => c.type() === 'warning' && warnings.push(c.text()));
		const long = `Refused here because ${'this reply is long and goes on and on, '.repeat(8)}to its end.`;
		station.view(reply('accepted', 'Before.'));
		await page.goto(station.address);
		await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
		const told = async (pattern) => {
			for (let i = 0; i < 100 && !pattern.test(d.log()); i++)
				await sleep(50);
			assert.match(d.log(), pattern);
		};
		station.view(reply('refused', long));
		await told(/DATA:\|Refused\. Refused here because this reply is long/);
		const before = d.log().length;
		station.view(reply('accepted', 'Right index finger: tourniquet on.'));
		await told(/DATA:\|Right index finger: tourniquet on\./);
		assert.match(d.log().slice(before).split('Right index finger')[0], /while speaking: \|703 STOP/, 'the older one was not stopped');
		assert.doesNotMatch(d.log(), /Before\./);
		station.view(reply('accepted', 'Nothing of this aloud.', { awake: true }));
		await sleep(1500);
		assert.doesNotMatch(d.log(), /Nothing of this aloud/);
		assert.deepEqual(warnings, []);
		await speaks.close();
	});

await it('when the quiet hours end, the board is told at once', async () => {
	assert.deepEqual(soonFirst, [['accepted', 100]]);
	while (minute() === m)
		await sleep(200);
	await sleep(1600);
	// The fault is sounded by what the page was last told.
	soon.child.kill('SIGSTOP');
	await soon.page.waitForFunction(() => window.heard.at(-1)[0] === 'fault', null, { timeout: 6000 });
	assert.deepEqual((await soon.page.evaluate(() => window.heard)).at(-1), ['fault', 500]);
	soon.child.kill('SIGCONT');
	await soon.end();
});
await b.close();
await station.end();
end();
