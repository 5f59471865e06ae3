// The board elsewhere, asked by hand: who is admitted, who is not, and what it costs those at the board here.
import assert from 'node:assert/strict';
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { connect } from 'node:net';
import { dirname, join } from 'node:path';
import { connect as connectTls } from 'node:tls';
import { fileURLToPath } from 'node:url';
import { browser } from './browser.mjs';
import { Certificates } from './certificates.mjs';
import { bin, Station } from './station.mjs';
import { scenes, status } from './scenes.mjs';
import { end, it, sleep } from './told.mjs';

const source = join(dirname(fileURLToPath(import.meta.url)), '../..'), program = join(bin, 'bandtally-board'), c = new Certificates();
process.on('exit', () => c.remove());
c.authority('ours');
c.authority('foreign');
c.make('server', 'ours', 'serverAuth');
c.make('client', 'ours', 'clientAuth');
c.make('lost', 'ours', 'clientAuth');
c.make('ward', 'ours', 'authority');
c.make('bed', 'ward', 'clientAuth');
c.revoke('ours', 'revoked.pem', ['lost']);
c.revoke('foreign', 'foreign-list.pem');
c.make('stranger', 'foreign', 'clientAuth');
c.make('late', 'ours', 'clientAuth', ['20240101000000Z', '20240201000000Z']);
c.make('early', 'ours', 'clientAuth', ['20990101000000Z', '20990201000000Z']);

const words = (more = {}) => {
	const w = { elsewhere: '127.0.0.1', 'elsewhere-port': '0', host: ['localhost', 'board.example.org'], certificate: c.path('server.pem'), key: c.path('server.key'), clients: c.path('ours.pem'), ...more };
	return Object.entries(w).flatMap(([k, v]) => (v === true ? [`--${k}`] : [v].flat().flatMap((x) => [`--${k}`, x])));
};
const start = async (more) => {
	const s = await Station.start(...words(more));
	s.elsewhere = s.lines[0].listening.elsewhere;
	s.beat();
	s.tell({ status: status() });
	s.view(scenes.on);
	return s;
};
const station = await start();
const watched = readFileSync(program).includes('__asan_init'); // its memory says nothing
const kB = (s = station) => +/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${s.child.pid}/status`, 'utf8'))[1];
const identity = (name) => (name ? { cert: c.read(`${name}.pem`), key: c.read(`${name}.key`) } : {});
const address = (s = station) => ({ host: '127.0.0.1', port: s.elsewhere, servername: 'localhost', ca: c.read('ours.pem') });

// `promise`, or a failure in its place.
const within = (ms, promise) => Promise.race([promise, new Promise((_, fail) => setTimeout(() => fail(new Error(`not within ${ms} ms`)), ms).unref())]);

// What a program says may come later than what it does.
const says = async (said, sentence) => {
	for (let n = 0; n < 100 && !sentence.test(said()); n++)
		await sleep(50);
	assert.match(said(), sentence);
};

// One request; what went wrong is told as `error`.
function ask(path, { who = 'client', method = 'GET', headers = {}, body = '', on = station, ...more } = {}) {
	return new Promise((done) => {
		const q = request({ ...address(on), ...identity(who), path, method, agent: false, headers: { Host: `localhost:${on.elsewhere}`, ...headers }, ...more }, (r) => {
			let text = '';
			r.on('data', (d) => { text += d; });
			r.on('end', () => done({ state: r.statusCode, headers: r.headers, text }));
			r.on('error', (error) => done({ error: error.code ?? String(error), text }));
		});
		q.on('error', (error) => done({ error: error.code ?? String(error), text: '' }));
		q.end(body);
	});
}
function follow(query, on = station, who = 'client', localAddress = '127.0.0.1', headers = '') {
	const f = { text: '', closed: false };
	f.socket = connectTls({ ...address(on), ...identity(who), localAddress }, () => f.socket.write(`GET /events${query} HTTP/1.1\r\nHost: localhost:${on.elsewhere}\r\n${headers}\r\n`));
	f.socket.on('data', (d) => { f.text += d; });
	f.socket.on('error', () => {});
	f.socket.on('close', () => { f.closed = true; });
	return f;
}
// Bytes over plain TCP; what came, and after how long the other side closed.
function bare(bytes, port = station.elsewhere, localAddress = '127.0.0.1') {
	const began = Date.now(), b = { text: '', closed: null };
	b.done = new Promise((done) => {
		b.socket = connect({ port, host: '127.0.0.1', localAddress }, () => bytes && b.socket.write(bytes));
		b.socket.on('data', (d) => { b.text += d.toString('latin1'); });
		b.socket.on('error', () => {});
		b.socket.on('close', () => { b.closed = Date.now() - began; done(b); });
	});
	return b;
}
// The first bytes that a browser sends, to be stopped in the middle.
async function clientHello() {
	return new Promise((done) => {
		const { Duplex } = streams, taken = [];
		const pipe = new Duplex({ read() {}, write(d, _, next) { taken.push(d); next(); done(Buffer.concat(taken)); } });
		connectTls({ socket: pipe, servername: 'localhost' }).on('error', () => {});
	});
}
const streams = await import('node:stream');

await it('without a certificate of its own no browser is told anything', async () => {
	const r = await ask('/', { who: null });
	assert.match(r.error, /CERTIFICATE_REQUIRED|HANDSHAKE_FAILURE/);
	assert.equal(r.text, '');
	const two = await ask('/', { who: null, maxVersion: 'TLSv1.2' });
	assert.match(two.error, /HANDSHAKE_FAILURE|ECONNRESET|EPROTO/);
});

await it('what a camera sees never goes to a board elsewhere, whatever ticket it was opened with', async () => {
	const s = await start(), ticket = await ask(new URL(s.ticket()).pathname, { on: s });
	assert.equal(ticket.state, 303);
	const elsewhere = follow('?room=1', s, 'client', '127.0.0.1', `Cookie: ${ticket.headers['set-cookie'][0].split(';')[0]}\r\n`);
	await sleep(400);
	s.tell({ picture: { room: 1, jpeg: 'AAAA', codes: [] } });
	s.view(scenes.on);
	await sleep(400);
	assert.match(elsewhere.text, /event: view/);
	assert.doesNotMatch(elsewhere.text, /picture|AAAA/);
	elsewhere.socket.destroy();
	assert.equal(await s.end(), 0, s.errors);
});

await it('a certificate of another authority, one whose time is over, not begun, or that is for servers is not admitted', async () => {
	assert.match((await ask('/', { who: 'stranger' })).error, /UNKNOWN_CA/);
	assert.match((await ask('/', { who: 'late' })).error, /CERTIFICATE_EXPIRED/);
	assert.ok((await ask('/', { who: 'early' })).error);
	assert.match((await ask('/', { who: 'server' })).error, /UNSUPPORTED_CERTIFICATE|BAD_CERTIFICATE/);
});

await it('a certificate that its authority revoked is not admitted, and the log says so; others are', async () => {
	const s = await start({ revoked: c.path('revoked.pem') });
	assert.match((await ask('/', { on: s, who: 'lost' })).error, /CERTIFICATE_REVOKED/);
	assert.match((await ask('/', { on: s, who: 'lost', maxVersion: 'TLSv1.2' })).error, /CERTIFICATE_REVOKED|EPROTO|ECONNRESET/);
	assert.equal((await ask('/', { on: s })).state, 200);
	await says(() => s.errors, /board elsewhere: a browser at 127\.0\.0\.1 is turned away: certificate revoked: if it is one of yours, have another certificate made for it/);
	assert.equal(s.errors.match(/turned away/g).length, 1, 'it says so too often');
	assert.equal(await s.end(), 0, s.errors);
	assert.equal((await ask('/', { who: 'lost' })).state, 200, 'without a list it is');
});

await it('a list whose time is over while the board runs goes on to be honoured, and shuts out nobody else', async () => {
	c.revoke('ours', 'soon-over.pem', [], 3);
	const s = await start({ revoked: c.path('soon-over.pem') });
	await sleep(4000);
	assert.match((await ask('/', { on: s, who: 'lost' })).error, /CERTIFICATE_REVOKED/);
	assert.equal((await ask('/', { on: s })).state, 200);
	assert.equal(await s.end(), 0, s.errors);
});

await it('an authority within the other has a list of its own, and can be revoked itself', async () => {
	writeFileSync(c.path('bed.chain'), Buffer.concat([c.read('bed.pem'), c.read('ward.pem')]));
	const bed = { who: null, cert: c.read('bed.chain'), key: c.read('bed.key') };
	assert.equal((await ask('/', bed)).state, 200);
	c.revoke('ward', 'of-ward.pem');
	writeFileSync(c.path('both.pem'), Buffer.concat([c.read('revoked.pem'), c.read('of-ward.pem')]));
	c.revoke('ours', 'without-ward.pem', ['ward']);
	writeFileSync(c.path('neither.pem'), Buffer.concat([c.read('without-ward.pem'), c.read('of-ward.pem')]));
	for (const [revoked, admitted, why] of [['revoked.pem', false, /unable to get certificate CRL/], ['both.pem', true, /^$/], ['neither.pem', false, /certificate revoked/]]) {
		const s = await start({ revoked: c.path(revoked) }), r = await ask('/', { ...bed, on: s });
		assert.equal(r.state === 200, admitted, `${revoked} ${r.error}`);
		assert.equal((await ask('/', { on: s })).state, 200, revoked);
		await says(() => s.errors, why);
		assert.equal(await s.end(), 0, s.errors);
	}
});

await it('with a certificate of ours the page and each file it names come, as at the board here', async () => {
	const seen = new Set(), wanted = ['/', '/desk'];
	for (const path of wanted) {
		if (seen.has(path))
			continue;
		seen.add(path);
		const r = await ask(path), here = await fetch(new URL(path, station.address));
		assert.equal(r.state, 200, `${path} ${r.error}`);
		assert.equal(r.text, await here.text(), path);
		assert.match(r.headers['content-security-policy'], /^default-src 'none'; script-src 'self'; style-src 'self';/);
		assert.equal(r.headers['set-cookie'], undefined);
		for (const [, , name] of r.text.matchAll(/(src|href)="(\/[^"]+)"/g))
			wanted.push(name);
		for (const [, name] of r.text.matchAll(/from '\.(\/[^']+)'/g))
			wanted.push(name);
	}
	assert.ok(seen.size >= 14, `only ${[...seen]}`);
});

await it('each room has its board elsewhere too, with every change and the heartbeat', async () => {
	station.view({ ...scenes.idle, room: { number: 2, name: 'Theatre 2', single: false } });
	const one = follow('?room=1'), two = follow('?room=2'), desk = follow('?desk=1');
	await sleep(400);
	station.view(scenes.question);
	await sleep(1300);
	assert.match(one.text, /Is it off/);
	assert.match(one.text, /event: alive/);
	assert.doesNotMatch(one.text, /"room":\{"name":"Theatre 2"/);
	assert.match(two.text, /"room":\{"name":"Theatre 2"/);
	assert.doesNotMatch(two.text, /Is it off/);
	assert.match(desk.text, /Is it off/);
	assert.match(desk.text, /"room":\{"name":"Theatre 2"/);
	[one, two, desk].forEach((f) => f.socket.destroy());
});

await it('it answers only to the names that were given, and to pages of its own', async () => {
	for (const name of ['localhost', 'board.example.org', 'BOARD.example.org'])
		assert.equal((await ask('/', { headers: { Host: `${name}:${station.elsewhere}` } })).state, 200, name);
	for (const Host of ['evil.example', `evil.example:${station.elsewhere}`, 'localhost', `127.0.0.1:${station.elsewhere}`, `localhost:${station.port}`, `localhost:${station.elsewhere}.evil.example`])
		assert.equal((await ask('/', { headers: { Host } })).state, 403, Host);
	for (const Origin of [`http://localhost:${station.elsewhere}`, `http://127.0.0.1:${station.port}`, 'https://evil.example', 'null', `https:${station.elsewhere}`, `httpx://localhost:${station.elsewhere}`])
		assert.equal((await ask('/', { headers: { Origin } })).state, 403, Origin);
});

await it('elsewhere nothing can be typed, and its page is told so; here it can', async () => {
	const post = (origin) => ask('/keyed', { method: 'POST', headers: { Origin: origin, 'Content-Type': 'application/json' }, body: '{"room":1,"code":"X"}' });
	assert.equal((await post(`https://localhost:${station.elsewhere}`)).state, 403);
	const f = follow('');
	await sleep(300);
	assert.match(f.text, /event: hello\r?\ndata: \{"typing":"off"\}/);
	f.socket.destroy();
	station.replies = () => ({ verdict: 'accepted', said: 'Taken.' });
	const entry = await fetch(station.ticket(), { redirect: 'manual' }), Cookie = entry.headers.get('set-cookie').split(';')[0];
	const here = await fetch(`${station.address}keyed`, { method: 'POST', headers: { Cookie, Origin: station.address.slice(0, -1), 'Content-Type': 'application/json' }, body: '{"room":1,"code":"HERE"}' });
	assert.equal(here.status, 200);
	assert.equal(station.lines.find((l) => l.keyed).keyed.code, 'HERE');
	assert.equal(station.lines.filter((l) => l.keyed).length, 1);
});

await it('where typing elsewhere is switched on, it comes from a page of its own only, and with a ticket, as here', async () => {
	const s = await start({ 'elsewhere-keyed': true, host: 'localhost' });
	s.replies = () => ({ verdict: 'accepted', said: 'Taken.' });
	const entry = await ask(new URL(s.ticket()).pathname, { on: s });
	assert.equal(entry.state, 303);
	const [set] = entry.headers['set-cookie'], Cookie = set.split(';')[0];
	assert.match(set, new RegExp(`^bandtally-${s.elsewhere}-1=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict; Secure$`));
	const post = (origin, more = { Cookie }) => ask('/keyed', { on: s, method: 'POST', headers: { ...more, Origin: origin, 'Content-Type': 'application/json' }, body: '{"room":1,"code":"X"}' });
	assert.equal((await post(`https://localhost:${s.elsewhere}`, {})).state, 403);
	for (const origin of [`http://127.0.0.1:${s.port}`, `http://localhost:${s.elsewhere}`, 'https://evil.example'])
		assert.equal((await post(origin)).state, 403, origin);
	const r = await post(`https://localhost:${s.elsewhere}`);
	assert.equal(r.state, 200);
	assert.equal(s.lines.filter((l) => l.keyed).length, 1);
	assert.equal(await s.end(), 0, s.errors);
});

await it('TLS 1.2 and 1.3 are spoken, 1.1 is not; nothing is negotiated again, and no session is kept', async () => {
	const s_client = (...more) => spawnSync('openssl', ['s_client', '-connect', `127.0.0.1:${station.elsewhere}`, '-servername', 'localhost', '-CAfile', c.path('ours.pem'), '-cert', c.path('client.pem'), '-key', c.path('client.key'), ...more], { input: '', encoding: 'utf8', timeout: 8000 });
	assert.match(s_client('-tls1_2').stdout, /New, TLSv1.2, Cipher is ECDHE-ECDSA-AES/);
	assert.match(s_client('-tls1_3').stdout, /New, TLSv1.3, Cipher is TLS_/);
	const old = s_client('-tls1_1', '-cipher', 'ALL@SECLEVEL=0');
	assert.match(old.stderr, /alert protocol version/, old.stderr);
	assert.notEqual(old.status, 0);
	const sessions = [];
	const again = await within(3000, new Promise((done) => {
		const s = connectTls({ ...address(), ...identity('client'), maxVersion: 'TLSv1.2' }, () => s.renegotiate({}, (e) => { s.destroy(); done(!e); }));
		s.on('session', (t) => sessions.push(t));
		s.on('error', () => done(false));
		s.on('close', () => done(false));
	}));
	assert.equal(again, false, 'it was negotiated again');
	const f = follow('');
	f.socket.on('session', (t) => sessions.push(t));
	await sleep(400);
	f.socket.destroy();
	const twice = [];
	for (const session of [undefined, 'of the one before']) {
		const t = connectTls({ ...address(), ...identity('client'), maxVersion: 'TLSv1.2', session: session && twice[0].getSession() });
		t.on('error', () => {});
		await within(3000, new Promise((done) => t.on('secureConnect', done)));
		twice.push(t);
	}
	assert.equal(twice[1].isSessionReused(), false);
	twice.forEach((t) => t.destroy());
	assert.equal(sessions.length, 0);
});

await it('plain HTTP at its port gets no answer, and TLS at the board here neither', async () => {
	const b = await bare(`GET / HTTP/1.1\r\nHost: localhost:${station.elsewhere}\r\n\r\n`).done;
	assert.equal(/HTTP|html/i.test(b.text), false, b.text);
	assert.ok(b.closed < 6000, `${b.closed} ms`);
	assert.doesNotMatch((await bare(await clientHello(), station.port).done).text, /200 OK|Count board/);
});

await it('two thousand broken handshakes do not end it, and it still answers', async () => {
	let seed = 11;
	const random = (n) => { seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; return Math.floor(seed / 4294967296 * n); };
	const hello = await clientHello();
	let before = 0;
	assert.ok(hello.length > 100);
	const one = () => {
		const bytes = Buffer.from(random(8) ? hello : Array.from({ length: random(400) }, () => random(256)));
		for (let i = random(6); i > 0; i--)
			bytes[random(bytes.length)] = random(256);
		return bytes.subarray(0, random(3) ? bytes.length : random(bytes.length));
	};
	for (let i = 0; i < 2500; i += 25) {
		if (i === 500)
			before = kB(); // what so many at a time need it has by now
		await Promise.all(Array.from({ length: 25 }, () => new Promise((done) => {
			const s = connect(station.elsewhere, '127.0.0.1', () => { s.write(one()); setTimeout(() => s.destroy(), 15); });
			s.on('error', () => {});
			s.on('close', done);
			s.resume();
		})));
	}
	assert.equal(station.child.exitCode, null, station.errors);
	assert.equal((await ask('/')).state, 200);
	assert.ok(watched || kB() - before < 4096, `${before} kB before, ${kB()} after`);
});

await it('who opens a connection and says nothing, stops within the handshake or speaks a byte now and then has three seconds; then ten for its request', async () => {
	const hello = await clientHello();
	const silent = bare(''), half = bare(hello.subarray(0, 80)), whole = bare(hello), drip = bare('');
	let n = 0;
	const dripping = setInterval(() => drip.socket.write(hello.subarray(n, ++n)), 700);
	const slow = connectTls({ ...address(), ...identity('client') }, () => slow.write('GET / HTTP/1.1\r\nX: '));
	const slowly = setInterval(() => slow.write('x'), 700), began = Date.now();
	slow.on('error', () => {});
	const slowEnd = new Promise((done) => slow.on('close', () => done(Date.now() - began)));
	await sleep(300);
	const asked = Date.now();
	assert.equal((await ask('/')).state, 200);
	assert.ok(Date.now() - asked < 1500, 'the others wait for them');
	const times = (await within(15_000, Promise.all([silent.done, half.done, whole.done, drip.done]))).map((b) => b.closed), last = await within(12_500, slowEnd);
	clearInterval(dripping);
	clearInterval(slowly);
	assert.ok(times.every((t) => t >= 2500 && t < 4500), `${times} ms`);
	assert.ok(last < 12_500, `${last} ms`);
});

await it('one address has eight unfinished handshakes: for a ninth the oldest is dropped, and the ninth is served', async () => {
	await sleep(300);
	const silent = [];
	for (let i = 0; i < 8; i++) {
		silent.push(bare(''));
		await sleep(20);
	}
	await sleep(200);
	assert.ok(silent.every((b) => b.closed === null), 'eight are too many');
	const late = bare('');
	await silent[0].done;
	assert.ok(silent[0].closed < 2000, `${silent[0].closed} ms`);
	assert.ok([...silent.slice(1), late].every((b) => b.closed === null), 'not the oldest alone was dropped');
	assert.equal((await ask('/')).state, 200);
	await within(3000, silent[1].done);
	silent.concat(late).forEach((b) => b.socket.destroy());
	// Who has shown its certificate is not counted.
	const known = [];
	for (let i = 0; i < 12; i++) {
		known.push(follow('?room=1'));
		for (let n = 0; n < 100 && !/event: view/.test(known.at(-1).text); n++)
			await sleep(20);
	}
	assert.equal(known.filter((f) => /event: view/.test(f.text)).length, 12);
	known.forEach((f) => f.socket.destroy());
});

await it('thirty-two walls that come at the same moment, as after a start, are all let in', async () => {
	await sleep(300);
	const walls = Array.from({ length: 32 }, (_, i) => follow('?room=1', station, 'client', `127.0.0.${i + 2}`));
	for (let n = 0; n < 100 && !walls.every((f) => f.closed || /event: view/.test(f.text)); n++)
		await sleep(50);
	assert.equal(walls.filter((f) => !f.closed && /event: view/.test(f.text)).length, 32);
	walls.forEach((f) => f.socket.destroy());
});

await it('two hundred stalled connections of another machine, made again as they are dropped, keep no board out', async () => {
	let attacking = true, made = 0;
	const again = () => {
		if (!attacking)
			return;
		made++;
		bare('', station.elsewhere, '127.0.0.2').done.then(() => setTimeout(again, 5));
	};
	for (let i = 0; i < 200; i++)
		again();
	await sleep(1000);
	try {
		for (let i = 0; i < 4; i++) {
			const asked = Date.now(), r = await ask('/');
			assert.equal(r.state, 200, r.error);
			assert.ok(Date.now() - asked < 2000, `${Date.now() - asked} ms`);
		}
		const asked = Date.now();
		assert.equal((await fetch(station.address)).status, 200);
		assert.ok(Date.now() - asked < 1000, `here it took ${Date.now() - asked} ms`);
	} finally {
		attacking = false;
	}
	assert.ok(made > 400, `only ${made} were made`);
	await sleep(4000);
	const sockets = execFileSync('sh', ['-c', `ls -l /proc/${station.child.pid}/fd | grep -c socket`], { encoding: 'utf8' });
	assert.ok(+sockets < 12, `${sockets} sockets stay open`);
});

await it('two hundred who say nothing do not shut out the board here, nor the pages that follow elsewhere', async () => {
	const f = follow('?room=1');
	await sleep(300);
	const many = Array.from({ length: 200 }, () => bare(''));
	await sleep(800);
	const sockets = execFileSync('sh', ['-c', `ls -l /proc/${station.child.pid}/fd | grep -c socket`], { encoding: 'utf8' });
	assert.ok(+sockets < 80, `${sockets} sockets are open`);
	const asked = Date.now();
	assert.equal((await fetch(station.address)).status, 200);
	assert.ok(Date.now() - asked < 500, `${Date.now() - asked} ms`);
	const length = f.text.length;
	station.view(scenes.off);
	await sleep(500);
	assert.match(f.text.slice(length), /event: view/);
	many.forEach((b) => b.socket.destroy());
	await Promise.all(many.map((b) => b.done));
	await sleep(500);
	assert.equal((await ask('/')).state, 200, 'the door does not open again');
	f.socket.destroy();
});

await it('thirty-two pages follow elsewhere, one more is told why not, and 128 follow here at the same time', async () => {
	await sleep(300);
	const many = [];
	for (let i = 0; i < 32; i++) {
		many.push(follow('?room=1'));
		for (let n = 0; i % 8 === 7 && n < 100 && !many.every((f) => /event: view/.test(f.text)); n++)
			await sleep(50);
	}
	assert.equal(many.filter((f) => /event: view/.test(f.text)).length, 32);
	const more = await ask('/events?room=1');
	assert.equal(more.state, 503);
	assert.match(more.text, /Too many pages follow this board: close one of them/);
	const here = Array.from({ length: 128 }, () => {
		const s = connect(station.port, '127.0.0.1', () => s.write(`GET /events HTTP/1.1\r\nHost: 127.0.0.1:${station.port}\r\n\r\n`));
		s.on('data', (d) => { s.text = (s.text ?? '') + d; });
		s.on('error', () => {});
		return s;
	});
	await sleep(600);
	assert.equal(here.filter((s) => /event: view/.test(s.text)).length, 128);
	if (!watched)
		assert.ok(kB() <= 16 * 1024, `${kB()} kB resident`);
	console.log(`        ${kB()} kB resident with 32 pages elsewhere and 128 here`);
	here.forEach((s) => s.destroy());
	many.forEach((f) => f.socket.destroy());
});

await it('a page elsewhere that does not read is dropped, and the others do not wait for it', async () => {
	await sleep(300);
	const s = await start(), stuck = follow('?room=1', s), reads = follow('?room=1', s);
	await sleep(400);
	stuck.socket.pause();
	stuck.socket._handle?.readStop?.();
	const big = { ...scenes['full-sheet'], debts: Array.from({ length: 300 }, (_, i) => `a debt that fills the line, number ${i}`) };
	let sent = 0;
	while (!/does not take/.test(s.errors) && sent < 20_000) {
		s.view({ ...big, next: `step ${++sent}` });
		if (sent % 2 === 0)
			await sleep(4);
	}
	assert.match(s.errors, /a page does not take what it is sent: it is dropped/);
	for (let i = 0; i < 100 && !reads.text.includes(`"step ${sent}"`); i++)
		await sleep(50);
	assert.match(reads.text, new RegExp(`"step ${sent}"`));
	[stuck, reads].forEach((f) => f.socket.destroy());
	assert.equal(await s.end(), 0, s.errors);
});

await it('what is wrong with its files is one sentence; the board here runs on and shows it as a fault', async () => {
	c.make('past', 'ours', 'serverAuth', ['20240101000000Z', '20240201000000Z']);
	writeFileSync(c.path('text'), 'no certificate\n');
	c.openssl('ec', '-in', 'server.key', '-aes128', '-passout', 'pass:x', '-out', 'locked.key');
	writeFileSync(c.path('open.key'), c.read('server.key'));
	chmodSync(c.path('open.key'), 0o644);
	c.revoke('ours', 'old.pem', [], 0);
	const used = String(station.elsewhere);
	for (const [more, sentence] of [
		[{ certificate: c.path('none.pem') }, /certificate .*none\.pem: No such file or directory: let the station's user read it, or correct \[board elsewhere\] in station\.ini/],
		[{ certificate: c.path('text') }, /certificate .*text: .*: give a PEM certificate/],
		[{ certificate: c.path('past.pem'), key: c.path('past.key') }, /certificate .*past\.pem: its time is over: have a new one made/],
		[{ key: c.path('client.key') }, /key .*client\.key: .*mismatch.*: give the certificate's PEM key, without a pass phrase/],
		[{ key: c.path('locked.key') }, /key .*locked\.key: .*: give the certificate's PEM key, without a pass phrase/],
		[{ key: c.path('open.key') }, /key .*open\.key: every user can read or change it: close it/],
		[{ key: c.folder }, /key .*: it is no file: name one/],
		[{ clients: c.path('text') }, /clients .*text: .*: give the PEM certificates of the authorities/],
		[{ revoked: c.path('none.pem') }, /revoked .*none\.pem: No such file or directory: let the station's user read it/],
		[{ revoked: c.path('text') }, /revoked .*text: .*: give the authorities' lists as PEM/],
		[{ revoked: c.path('old.pem') }, /revoked .*old\.pem: the time of a list is over: have a new one made/],
		[{ revoked: c.path('foreign-list.pem') }, /revoked .*foreign-list\.pem: no list in it was signed by \/CN=Test authority ours of clients: add it to the file/],
		[{ 'elsewhere-port': used }, /board elsewhere: 127\.0\.0\.1 port \d+: Address already in use: end the program that uses it, or set another/],
		[{ elsewhere: '192.0.2.1' }, /board elsewhere: 192\.0\.2\.1 port 0: Cannot assign requested address/],
	]) {
		const s = await start(more), told = [];
		const r = await fetch(`${s.address}events?room=1`), reader = r.body.getReader();
		for (let i = 0; i < 5 && !/event: view[^]*\n\n/.test(told.join('')); i++)
			told.push(new TextDecoder().decode((await reader.read()).value));
		await reader.cancel();
		const faults = JSON.parse(/event: view\r?\ndata: (.*)/.exec(told.join(''))[1]).view.faults;
		assert.match(s.errors, sentence);
		assert.equal(faults.length, scenes.on.faults.length + 1);
		assert.match(faults.at(-1), sentence);
		assert.equal(s.elsewhere, undefined);
		assert.equal(await s.end(), 0, s.errors);
		if (more['elsewhere-port'] || more.elsewhere)
			continue;
		const check = spawnSync(program, [...words(more), '--check'], { encoding: 'utf8', timeout: 5000 });
		assert.equal(check.status, 1);
		assert.match(check.stderr, sentence);
	}
	assert.equal(spawnSync(program, [...words(), '--check'], { timeout: 5000 }).status, 0);
	const part = spawnSync(program, ['--elsewhere', '127.0.0.1', '--host', 'x'], { input: '', encoding: 'utf8', timeout: 5000 });
	assert.equal(part.status, 2);
	assert.match(part.stderr, /--elsewhere needs --host, --certificate, --key and --clients/);
});

// The texts of the files, as the daemon hands them in.
const texts = (more = {}) => ({ tls: Object.fromEntries(Object.entries({ certificate: 'server.pem', key: 'server.key', clients: 'ours.pem', ...more }).map(([k, v]) => [k, c.read(v).toString()])) });

await it('certificates that are handed in anew hold for who comes then; who is revoked since is closed, and nobody else', async () => {
	const s = await start(), lost = follow('?room=1', s, 'lost'), stays = follow('?room=1', s), here = await fetch(`${s.address}events?room=1`);
	const shown = (socket) => socket.getPeerCertificate().subject.CN;
	await sleep(400);
	assert.match(lost.text, /event: view/);
	assert.equal(shown(stays.socket), 'server');
	const silent = bare('', s.elsewhere);
	await sleep(200);
	c.make('renewed', 'ours', 'serverAuth');
	s.tell(texts({ certificate: 'renewed.pem', key: 'renewed.key', revoked: 'revoked.pem' }));
	await within(3000, new Promise((done) => lost.socket.on('close', done)));
	await within(3000, silent.done);
	await says(() => s.errors, /board elsewhere: a page at 127\.0\.0\.1 is closed: certificate revoked/);
	await says(() => s.errors, /its certificates were read again/);
	assert.match((await ask('/', { on: s, who: 'lost' })).error, /CERTIFICATE_REVOKED/);
	const later = follow('', s), length = stays.text.length;
	s.view(scenes.off);
	await sleep(500);
	assert.equal(shown(later.socket), 'renewed');
	assert.match(stays.text.slice(length), /event: view/);
	assert.equal(stays.closed, false);
	// An authority that is not admitted any more takes all with it that it signed.
	s.tell(texts({ clients: 'foreign.pem' }));
	await within(3000, new Promise((done) => stays.socket.on('close', done)));
	assert.equal((await ask('/', { on: s, who: 'stranger' })).state, 200);
	assert.ok((await ask('/', { on: s })).error);
	const reader = here.body.getReader();
	assert.equal((await reader.read()).done, false, 'the page here was closed');
	await reader.cancel();
	assert.equal(await s.end(), 0, s.errors);
});

await it('texts that are wrong change nothing, and stand on the board until right ones come', async () => {
	const s = await start(), stays = follow('?room=1', s), last = () => JSON.parse([...stays.text.matchAll(/event: view\r?\ndata: (.*)\r?\n\r?\n/g)].at(-1)?.[1] ?? '{"view":{"faults":["none came"]}}').view.faults;
	for (const [what, sentence] of [
		[texts({ key: 'client.key' }), /key .*server\.key: .*mismatch/],
		[texts({ clients: 'server.key' }), /clients .*ours\.pem: .*: give the PEM certificates of the authorities/],
		[texts({ revoked: 'foreign-list.pem' }), /no list in it was signed by/],
		[{ tls: {} }, /certificate .*: give a PEM certificate/],
		[{ tls: { fault: 'board elsewhere: key board.key: Permission denied: let the station\'s user read it' } }, /board\.key: Permission denied/],
	]) {
		s.tell(what);
		s.view(scenes.on);
		await says(() => last().at(-1), sentence);
		await says(() => s.errors, sentence);
		assert.equal((await ask('/', { on: s })).state, 200);
	}
	s.tell(texts());
	s.view(scenes.on);
	await says(() => `${last().length} faults`, new RegExp(`^${scenes.on.faults.length} faults`));
	assert.deepEqual(last(), scenes.on.faults);
	assert.equal(stays.closed, false);
	assert.equal(await s.end(), 0, s.errors);
});

await it('a door that was not opened for want of right files is opened by a new start, once they are right', async () => {
	const s = await start({ key: c.path('client.key') });
	s.tell(texts({ key: 'client.key' }));
	await sleep(500);
	assert.equal(s.child.exitCode, null, s.errors);
	s.tell(texts());
	assert.equal(await within(2000, s.ended), 0, s.errors);
	await says(() => s.errors, /board elsewhere: it can be opened now: started anew/);
	clearInterval(s.heart);
});

await it('a connection for which there is no memory is not served in plain instead', async () => {
	writeFileSync(c.path('none.c'), 'void *SSL_new(void *c) { return (void *)((long)c & 0); }\n');
	execFileSync('cc', ['-shared', '-fPIC', '-o', c.path('none.so'), c.path('none.c')]);
	if (watched)
		return; // its sanitizer must be loaded first
	process.env.LD_PRELOAD = c.path('none.so');
	const s = await start();
	delete process.env.LD_PRELOAD;
	const b = bare(`GET / HTTP/1.1\r\nHost: localhost:${s.elsewhere}\r\n\r\n`, s.elsewhere);
	await b.done;
	assert.doesNotMatch(b.text, /200 OK|<html/);
	assert.match(b.text, /^HTTP\/1\.1 403 Forbidden[^]*only to browsers with a certificate/);
	assert.equal((await fetch(s.address)).status, 200);
	await s.end();
});

await it('it is confined with TLS as well, and has opened no file since', () => {
	const text = readFileSync(`/proc/${station.child.pid}/status`, 'utf8');
	assert.match(text, /NoNewPrivs:\s+1/);
	assert.match(text, /Seccomp:\s+2/);
	const open = execFileSync('sh', ['-c', `ls -l /proc/${station.child.pid}/fd`], { encoding: 'utf8' });
	assert.doesNotMatch(open, /board-tls-/);
});

await it('it ends with its input, leaving no page open', async () => {
	const f = follow('?room=1');
	await sleep(300);
	assert.match(f.text, /event: view/);
	assert.equal(await station.end(), 0, station.errors);
	await sleep(200);
	assert.ok(f.closed);
});
await it('the commands of the man page make certificates that are admitted, and a board that is trusted', async () => {
	const at = c.path('man'), page = readFileSync(join(source, 'config/man/bandtally-board.roff'), 'utf8');
	mkdirSync(at);
	const run = (what) => {
		const commands = new RegExp(`begin ${what}\n([^]*)\\.\\\\" end ${what}`).exec(page)[1].replaceAll('\\-', '-').replaceAll('\\e', '\\');
		const made = spawnSync('sh', ['-ec', commands], { cwd: at, encoding: 'utf8' });
		assert.equal(made.status, 0, made.stderr);
	};
	run('commands');
	const s = await start({ host: 'board.example.org', certificate: join(at, 'board.pem'), key: join(at, 'board.key'), clients: join(at, 'clients.pem') });
	assert.ok(s.elsewhere, s.errors);
	const file = (name) => readFileSync(join(at, name)), wall = { on: s, who: null, ca: file('clients.pem'), servername: 'board.example.org', headers: { Host: `board.example.org:${s.elsewhere}` } };
	assert.equal((await ask('/', { ...wall, pfx: file('wall.p12'), passphrase: 'choose-one' })).state, 200);
	assert.match((await ask('/', { ...wall, cert: file('board.pem'), key: file('board.key') })).error, /UNSUPPORTED_CERTIFICATE|BAD_CERTIFICATE/);
	assert.match((await ask('/', { ...wall, ...identity('client') })).error, /UNKNOWN_CA|BAD_SIGNATURE|DECRYPT_ERROR/);
	assert.equal(await s.end(), 0, s.errors);
	run('revoking');
	const later = await start({ host: 'board.example.org', certificate: join(at, 'board.pem'), key: join(at, 'board.key'), clients: join(at, 'clients.pem'), revoked: join(at, 'revoked.pem') });
	assert.ok(later.elsewhere, later.errors);
	const shut = await ask('/', { ...wall, on: later, headers: { Host: `board.example.org:${later.elsewhere}` }, pfx: file('wall.p12'), passphrase: 'choose-one' });
	assert.match(shut.error ?? '', /CERTIFICATE_REVOKED/);
	assert.equal(await later.end(), 0, later.errors);
});

// From station.ini to the wall of another room: the real daemon, and Chromium with a certificate.
const data = c.path('data');
mkdirSync(data);
for (const [file, from] of [['board.pem', 'server.pem'], ['board.key', 'server.key'], ['clients.pem', 'ours.pem']])
	copyFileSync(c.path(from), join(data, file));
chmodSync(join(data, 'board.key'), 0o600);
const ini = (more = '') => writeFileSync(join(data, 'station.ini'), `[site]\nletters = BC\nname = Example Hospital\n\n[room 1]\nname = Theatre 1\n\n[room 2]\nname = Theatre 2\n\n[board]\nstart = yes\nport = 0\n\n[board elsewhere]\nstart = yes\naddress = 127.0.0.1\nport = 0\nhosts = board.example.org localhost\ncertificate = board.pem\nkey = ${c.path('data/board.key')}\nclients = clients.pem\n${more}`);
const check = () => spawnSync(join(bin, 'bandtallyd'), ['--data', data, '--check'], { encoding: 'utf8', timeout: 10_000 });
async function daemon() {
	const d = { log: '', child: spawn(join(bin, 'bandtallyd'), ['--data', data], { stdio: ['ignore', 'ignore', 'pipe'] }) };
	d.gone = new Promise((done) => d.child.on('exit', done));
	process.on('exit', () => d.child.kill('SIGKILL'));
	d.child.stderr.on('data', (t) => { d.log += t; });
	for (let i = 0; i < 100 && !/the board is at .*/.test(d.log); i++)
		await sleep(100);
	await sleep(200);
	d.here = /http:\/\/127\.0\.0\.1:\d+\//.exec(d.log)?.[0];
	d.elsewhere = +/the board elsewhere is at https:\/\/board\.example\.org:(\d+)\//.exec(d.log)?.[1];
	return d;
}
const tool = (...more) => spawnSync(join(bin, 'bandtally'), ['--data', data, ...more], { encoding: 'utf8', timeout: 10_000 });

await it('the daemon starts it as station.ini says, and a browser with a certificate shows the second room\'s board', async () => {
	ini();
	const sound = check();
	assert.equal(sound.status, 0, sound.stderr);
	const d = await daemon();
	assert.ok(d.elsewhere, d.log);
	const b = await browser(), origin = `https://localhost:${d.elsewhere}`;
	const identified = await b.newContext({ ignoreHTTPSErrors: true, clientCertificates: [{ origin, certPath: c.path('client.pem'), keyPath: c.path('client.key') }] });
	const page = await identified.newPage(), faults = [];
	page.on('pageerror', (e) => faults.push(String(e)));
	page.on('console', (m) => m.type() === 'error' && faults.push(m.text()));
	await page.goto(`${origin}/?room=2`);
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	assert.match(await page.textContent('#place'), /^Theatre 2$/);
	assert.equal(await page.isVisible('#type'), false);
	const first = await identified.newPage();
	await first.goto(origin);
	await first.waitForFunction(() => /^Theatre 1$/.test(document.getElementById('place').textContent));
	const list = tool('label', 'cards', '--list', '--room', '1'), card = list.stdout.split('\n').map((l) => l.split('\t')).find((l) => l[2] === 'NEW CASE');
	assert.ok(card, list.stderr);
	assert.equal(tool('scan', card[0]).status, 0);
	await first.waitForFunction(() => /^Theatre 1 · case 1$/.test(document.getElementById('place').textContent), null, { timeout: 5000 });
	assert.match(await page.textContent('#place'), /^Theatre 2$/);
	assert.deepEqual(faults, []);
	const nobody = await (await b.newContext({ ignoreHTTPSErrors: true })).newPage();
	await assert.rejects(nobody.goto(origin), /net::ERR_/);
	await b.close();
	d.child.kill('SIGTERM');
	assert.equal(await d.gone, 0, d.log);
});

await it('where typing is set there too, a ticket for it opens the key in a browser with a certificate, and the code counts', async () => {
	ini('typing = yes\n');
	const d = await daemon(), told = tool('board', '--room', '2', '--elsewhere').stdout.trim();
	assert.match(told, new RegExp(`^https://board\\.example\\.org:${d.elsewhere}/ticket/[\\w-]{43}$`));
	const b = await browser(), origin = `https://localhost:${d.elsewhere}`;
	const page = await (await b.newContext({ ignoreHTTPSErrors: true, clientCertificates: [{ origin, certPath: c.path('client.pem'), keyPath: c.path('client.key') }] })).newPage();
	await page.goto(told.replace('board.example.org', 'localhost'));
	assert.equal(page.url(), `${origin}/?room=2`);
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	await page.click('#type');
	await page.fill('#code', tool('label', 'cards', '--list', '--room', '2').stdout.split('\n').map((l) => l.split('\t')).find((l) => l[2] === 'NEW CASE')[0]);
	await page.click('#keyed .send');
	await page.waitForFunction(() => /Case \d+ opened in Theatre 2\.$/.test(document.getElementById('judged').textContent));
	await page.goto(`${origin}/?room=1`);
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	await page.click('#type');
	assert.match(await page.textContent('#keyed'), /^Typing is closed: ask for a new ticket.*bandtally board --room 1 --elsewhere and opens/);
	await b.close();
	d.child.kill('SIGTERM');
	assert.equal(await d.gone, 0, d.log);
	ini();
});

await it('on SIGHUP the daemon reads the files again: a page that is connected is closed when it is revoked', async () => {
	ini('revoked = revoked.pem\n');
	c.revoke('ours', 'data/revoked.pem');
	c.make('stolen', 'ours', 'clientAuth');
	const d = await daemon(), s = { elsewhere: d.elsewhere }, stolen = follow('?room=1', s, 'stolen'), stays = follow('?room=1', s);
	await sleep(500);
	assert.match(stolen.text, /event: view/);
	c.revoke('ours', 'data/revoked.pem', ['stolen']);
	d.child.kill('SIGHUP');
	await within(3000, new Promise((done) => stolen.socket.on('close', done)));
	await says(() => d.log, /a page at 127\.0\.0\.1 is closed: certificate revoked/);
	assert.match((await ask('/', { on: s, who: 'stolen' })).error, /CERTIFICATE_REVOKED/);
	const length = stays.text.length;
	writeFileSync(join(data, 'revoked.pem'), 'nothing\n');
	assert.match(check().stderr, /revoked .*revoked\.pem: .*: give the authorities' lists as PEM/);
	d.child.kill('SIGHUP');
	for (let i = 0; i < 30 && !/event: view/.test(stays.text.slice(length)); i++)
		await sleep(100);
	assert.match(stays.text.slice(length), /"faults":\[[^\]]*give the authorities' lists as PEM/);
	await says(() => d.log, /give the authorities' lists as PEM/);
	assert.match((await ask('/', { on: s, who: 'stolen' })).error, /CERTIFICATE_REVOKED/);
	assert.equal((await ask('/', { on: s })).state, 200);
	rmSync(join(data, 'revoked.pem'));
	d.child.kill('SIGHUP');
	for (let i = 0; i < 30 && !/revoked.pem: No such file/.test(stays.text); i++)
		await sleep(100);
	assert.match(stays.text, /revoked\.pem: No such file or directory: let the station's user read it/);
	c.revoke('ours', 'data/revoked.pem');
	const before = stays.text.length;
	d.child.kill('SIGHUP');
	await says(() => stays.text.slice(before), /event: view/);
	await sleep(200);
	assert.doesNotMatch(stays.text.slice(stays.text.lastIndexOf('event: view')), /revoked\.pem/);
	assert.equal(stays.closed, false);
	d.child.kill('SIGTERM');
	assert.equal(await d.gone, 0, d.log);
	ini();
});

await it('with a wrong file the check says so and fails; the station runs, and its own board shows the fault', async () => {
	chmodSync(join(data, 'board.key'), 0o644);
	const r = check();
	assert.equal(r.status, 1);
	assert.match(r.stderr, /board elsewhere: key .*board\.key: every user can read or change it: close it with 'chmod o= /);
	assert.doesNotMatch(r.stdout, /are sound/);
	const d = await daemon();
	assert.ok(d.here, d.log);
	assert.ok(!d.elsewhere);
	const b = await browser(), page = await b.newPage();
	await page.goto(d.here);
	await page.waitForFunction(() => /every user can read or change it/.test(document.getElementById('note').textContent), null, { timeout: 10_000 });
	await page.waitForFunction(() => document.documentElement.dataset.trouble === 'no');
	await b.close();
	d.child.kill('SIGTERM');
	assert.equal(await d.gone, 0, d.log);
});

await it('it is off unless it is switched on, and listens nowhere then', async () => {
	ini('');
	writeFileSync(join(data, 'station.ini'), readFileSync(join(data, 'station.ini'), 'utf8').replace('[board elsewhere]\nstart = yes\n', '[board elsewhere]\n'));
	assert.equal(check().status, 0);
	const d = await daemon();
	assert.ok(d.here, d.log);
	assert.ok(!d.elsewhere);
	d.child.kill('SIGTERM');
	assert.equal(await d.gone, 0, d.log);
});
end();
