// The board's HTTP side, asked by hand: who may ask, what is hostile, who is slow.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { bin, Station } from './station.mjs';
import { scenes, status, view } from './scenes.mjs';
import { end, it, sleep } from './told.mjs';

const program = join(bin, 'bandtally-board');
const station = await Station.start();
const host = `127.0.0.1:${station.port}`;
station.view(scenes.on);
station.tell({ status: status() });
station.replies = () => ({ verdict: 'accepted', said: 'Taken.' });

// Sends bytes, and gives back all that comes until the other side closes (or `patience_ms`).
function raw(bytes, { port = station.port, patience_ms = 3000 } = {}) {
	return new Promise((done) => {
		let got = '';
		const s = connect(port, '127.0.0.1', () => s.write(bytes));
		s.setTimeout(patience_ms, () => s.destroy());
		s.on('data', (d) => { got += d.toString('latin1'); });
		s.on('error', () => {});
		s.on('close', () => done(got));
	});
}
const get = (path, headers = {}, method = 'GET', body = '') => raw(`${method} ${path} HTTP/1.1\r\n` +
	Object.entries({ Host: host, ...headers }).map(([k, v]) => `${k}: ${v}\r\n`).join('') +
	(body ? `Content-Length: ${Buffer.byteLength(body)}\r\n` : '') + `\r\n${body}`);
const state = (answer) => +(/^HTTP\/1\.[01] (\d+)/.exec(answer)?.[1] ?? 0);
// The cookie of a room, by the ticket that the browser would follow.
const cookieOf = async (room = 1, s = station) => {
	const { pathname, host: h } = new URL(s.ticket(room));
	return /Set-Cookie: ([^;]+);/.exec(await raw(`GET ${pathname} HTTP/1.1\r\nHost: ${h}\r\n\r\n`, { port: s.port }))[1];
};
const keyed = (body, headers = {}) => get('/keyed', { Origin: `http://${host}`, 'Content-Type': 'application/json', Cookie: cookie, ...headers }, 'POST', body);
const watched = readFileSync(program).includes('__asan_init'); // its memory says nothing
const mem_kB = () => +/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${station.child.pid}/status`, 'utf8'))[1];

// Follows the events; `events` grows as they come.
function follow(query = '', port = station.port, headers = '') {
	const f = { text: '', closed: false };
	f.socket = connect(port, '127.0.0.1', () => f.socket.write(`GET /events${query} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n${headers}\r\n`));
	f.socket.on('data', (d) => { f.text += d; });
	f.socket.on('error', () => {});
	f.socket.on('close', () => { f.closed = true; });
	return f;
}

await it('the page and each file it names come whole, and together they are at most 100 kB', async () => {
	let bytes = 0;
	const seen = new Set(), wanted = ['/', '/desk'];
	for (const path of wanted) {
		if (seen.has(path))
			continue;
		seen.add(path);
		const answer = await get(path);
		assert.equal(state(answer), 200, path);
		const body = answer.slice(answer.indexOf('\r\n\r\n') + 4);
		bytes += path === '/desk' || path === '/desk.js' ? 0 : body.length;
		for (const [, , name] of body.matchAll(/(src|href)="(\/[^"]+)"/g))
			wanted.push(name);
		for (const [, name] of body.matchAll(/from '\.(\/[^']+)'/g))
			wanted.push(name);
	}
	assert.ok(seen.size >= 14, `only ${[...seen]}`);
	assert.ok(bytes <= 100_000, `${bytes} bytes`);
});

await it('what a camera sees goes to a page of this machine that was opened with a ticket of that room, and to no other', async () => {
	station.view(view({ room: { number: 98, name: 'Theatre 98', single: false } }));
	const own = follow('?room=1', station.port, `Cookie: ${await cookieOf(1)}\r\n`), open = follow('?room=1');
	const others = [follow('?room=98', station.port, `Cookie: ${await cookieOf(98)}\r\n`), follow('?room=98', station.port, `Cookie: ${await cookieOf(1)}\r\n`),
		follow('?room=1', station.port, `Cookie: ${await cookieOf(0)}\r\n`), follow('?desk=1', station.port, `Cookie: ${await cookieOf(0)}\r\n`), open];
	await sleep(300);
	for (let n = 0; n < 5; n++) {
		station.tell({ picture: { room: 1, jpeg: `AAAA${n}AAA`, codes: [[1, 2, 3, 4, true]] } });
		await sleep(60);
	}
	station.tell({ picture: { room: 1 } });
	await sleep(300);
	assert.equal(own.text.match(/event: picture/g).length, 6);
	assert.match(own.text, /data: {"codes":\[\[1,2,3,4,true\]\],"jpeg":"AAAA4AAA","room":1}/);
	for (const f of others) {
		assert.doesNotMatch(f.text, /picture|AAAA/);
		assert.match(f.text, /event: hello/);
	}
	const late = follow('?room=1', station.port, `Cookie: ${await cookieOf(1)}\r\n`); // nothing was kept for it
	await sleep(300);
	assert.doesNotMatch(late.text, /picture|AAAA/);
	assert.match(late.text, /Cache-Control: no-store/);
	[own, late, ...others].forEach((f) => f.socket.destroy());
});

await it('a page that does not read gets no pictures that wait for it', async () => {
	const slow = follow('?room=1', station.port, `Cookie: ${await cookieOf(1)}\r\n`), other = follow('?room=1'), jpeg = 'A'.repeat(3600);
	await sleep(300);
	slow.socket.pause();
	const before = mem_kB();
	for (let n = 0; n < 2000; n++) {
		station.tell({ picture: { room: 1, jpeg, codes: [] } });
		n % 100 || await sleep(20);
	}
	station.view(scenes.on);
	for (let n = 0; n < 200 && (other.text.match(/event: view/g) ?? []).length < 2; n++) // all were taken, for this comes behind them
		await sleep(50);
	assert.ok(watched || mem_kB() - before < 3000, `${mem_kB() - before} kB more`);
	assert.doesNotMatch(other.text, /picture/);
	[slow, other].forEach((f) => f.socket.destroy());
});

await it('every answer forbids what is inline or foreign, and none but that to a ticket sets a cookie', async () => {
	for (const path of ['/', '/board.css', '/board.js', '/desk', '/nothing', '/events?room=x']) {
		const answer = await get(path);
		assert.match(answer, /Content-Security-Policy: default-src 'none'; script-src 'self'; style-src 'self';/, path);
		assert.doesNotMatch(answer, /unsafe|Set-Cookie/i, path);
		assert.match(answer, /X-Content-Type-Options: nosniff/, path);
		assert.doesNotMatch(answer, /<script(?![^>]*src)|\sstyle=|\son[a-z]+="/i, path);
	}
});

await it('another name for this machine is not answered (a page elsewhere that points here)', async () => {
	for (const h of ['evil.example', `evil.example:${station.port}`, '127.0.0.1', `127.0.0.1:${station.port + 1}`, `127.0.0.1:${station.port}.evil.example`, ''])
		assert.ok([400, 403].includes(state(await get('/', { Host: h }))), h);
	assert.equal(state(await get('/', { Host: `localhost:${station.port}` })), 200);
	assert.ok([400, 403].includes(state(await raw('GET / HTTP/1.0\r\n\r\n'))));
	assert.ok([400, 403].includes(state(await raw(`GET / HTTP/1.1\r\nHost: ${host}\r\nHost: evil.example\r\n\r\n`))));
	assert.ok([400, 403].includes(state(await raw(`GET http://evil.example/ HTTP/1.1\r\nHost: ${host}\r\n\r\n`))));
	assert.equal(state(await get('/events', { Origin: 'http://evil.example' })), 403);
});

await it('it listens on the loopback address only', async () => {
	const port = station.port.toString(16).toUpperCase().padStart(4, '0');
	const listening = ['/proc/net/tcp', '/proc/net/tcp6'].flatMap((f) => { try { return readFileSync(f, 'utf8').split('\n'); } catch { return []; } })
		.map((l) => l.trim().split(/\s+/)).filter((w) => w[3] === '0A' && w[1].endsWith(`:${port}`)).map((w) => w[1]);
	assert.deepEqual(listening, [`0100007F:${port}`]);
});

const cookie = await cookieOf();

await it('a ticket is changed once for a cookie that no script and no other site sees, and leaves the address', async () => {
	const { pathname } = new URL(station.ticket());
	assert.equal(state(await get(pathname, {}, 'HEAD')), 404, 'a look at the head uses it up');
	assert.equal(state(await get(pathname, { Host: 'evil.example' })), 403);
	const answer = await get(pathname);
	assert.equal(state(answer), 303);
	assert.match(answer, /\r\nLocation: \/\?room=1\r\n/);
	assert.match(answer, new RegExp(`\\r\\nSet-Cookie: bandtally-${station.port}-1=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict\\r\\n`));
	assert.match(answer, /\r\nCache-Control: no-store\r\n/);
	assert.match(answer, /\r\nReferrer-Policy: no-referrer\r\n/);
	const told = station.lines.filter((l) => l.ticket).length;
	for (const path of [pathname, `/ticket/${'A'.repeat(43)}`, '/ticket/', `${pathname}x`, `${pathname}/..`]) {
		const again = await get(path);
		assert.equal(state(again), 403, path);
		assert.match(again, /does not work any more: it works once, and within a minute/);
		assert.doesNotMatch(again, /Set-Cookie/);
	}
	assert.equal(station.lines.filter((l) => l.ticket).length, told, 'the daemon is asked about tickets that it never gave');
});

await it('without a cookie that is let in for that room nothing is typed, and the daemon hears nothing of it', async () => {
	const good = '{"room":1,"code":"BTBC10104051"}', value = cookie.split('=')[1], name = `bandtally-${station.port}`;
	for (const c of ['', 'x', `${name}-1=`, `${name}-1=${'A'.repeat(43)}`, `${name}-2=${value}`, `${name}-0=${value}`, `${name}-1=${value}x`, `${name}-1=${value.slice(1)}`, `${name}-1="${value}"`, `bandtally-${station.port + 1}-1=${value}`, `x${cookie}`, cookie.replace('-1=', '-01 ='), `${name}-1 = ${value}`])
		assert.equal(state(await keyed(good, { Cookie: c })), 403, c);
	assert.match(await keyed(good, { Cookie: '' }), /\r\n\r\nTyping is closed: ask for a new ticket\. Whoever looks after the station gets one with 'bandtally board'/);
	assert.equal(state(await keyed('{"room":2,"code":"X"}')), 400, 'room 2 is not known yet');
	assert.deepEqual(station.lines.filter((l) => l.keyed), []);
	assert.equal(state(await keyed(good, { Cookie: `other=1; ${name}-1=${'A'.repeat(43)};${cookie}; more=2` })), 200);
	station.lines = station.lines.filter((l) => !l.keyed);
});

await it('a page is told what its cookie lets it do, again when that changes, and the daemon that the page is open', async () => {
	const s = await Station.start();
	s.view(scenes.on);
	const c = await cookieOf(1, s), hash = s.cookies[0].hash, pages = {};
	for (const [name, header] of [['with', `Cookie: ${c}\r\n`], ['without', ''], ['other', `Cookie: ${c.replace('-1=', '-2=')}\r\n`]])
		pages[name] = follow('?room=1', s.port, header);
	await sleep(200);
	const hello = (name) => [...pages[name].text.matchAll(/event: hello\r?\ndata: \{"typing":"(\w+)"\}/g)].map((m) => m[1]);
	assert.deepEqual([hello('with'), hello('without'), hello('other')], [['yes'], ['no'], ['no']]);
	assert.deepEqual(s.lines.filter((l) => l.open), [{ v: 1, open: hash }]);
	s.cookies = [];
	s.letIn();
	await sleep(200);
	assert.deepEqual([hello('with'), hello('without'), hello('other')], [['yes', 'over'], ['no'], ['no']]);
	for (let i = 0; i < 1200; i++)
		s.tell({ alive: true });
	await sleep(200);
	assert.equal(s.lines.filter((l) => l.open).length, 1, 'a cookie that is not let in is told of');
	s.cookies = [{ hash, room: 1, types: true }];
	s.letIn();
	for (let i = 0; i < 600; i++)
		s.tell({ alive: true });
	await sleep(200);
	assert.deepEqual(hello('with'), ['yes', 'over', 'yes']);
	assert.equal(s.lines.filter((l) => l.open === hash).length, 2);
	await s.end();
});

await it('who leaves before the daemon has answered costs nothing, and is not mistaken for another', async () => {
	const s = await Station.start();
	s.view(scenes.on);
	const c = await cookieOf(1, s), h = `127.0.0.1:${s.port}`, body = '{"room":1,"code":"X"}';
	const ask = `POST /keyed HTTP/1.1\r\nHost: ${h}\r\nOrigin: http://${h}\r\nCookie: ${c}\r\nContent-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${body}`;
	for (let i = 0; i < 20; i++)
		await raw(ask, { port: s.port, patience_ms: 30 });
	const ids = s.lines.filter((l) => l.keyed).map((l) => l.keyed.id);
	assert.equal(new Set(ids).size, 20);
	const last = raw(ask, { port: s.port });
	const { keyed: mine } = await s.line((l) => l.keyed && !ids.includes(l.keyed.id));
	for (const id of [...ids, 'x', ''])
		s.tell({ reply: { id, verdict: 'accepted', said: 'Not yours.' } });
	s.tell({ reply: { id: mine.id, verdict: 'refused', said: 'Yours.' } });
	assert.match(await last, /200 OK[^]*\r\n\r\n\{"id":"t\d+","said":"Yours\.","verdict":"refused"\}$/);
	const many = Array.from({ length: 40 }, () => raw(ask, { port: s.port, patience_ms: 1000 }));
	const answers = await Promise.all(many);
	assert.equal(answers.filter((a) => state(a) === 503).length, 8, 'as many wait as may');
	for (const { keyed: k } of s.lines.filter((l) => l.keyed))
		s.tell({ reply: { id: k.id, verdict: 'accepted', said: 'Late.' } });
	s.replies = () => ({ verdict: 'accepted', said: 'Again.' });
	assert.equal(state(await raw(ask, { port: s.port })), 200, 'there is a place again');
	s.replies = null;
	const pending = raw(ask, { port: s.port });
	await sleep(100);
	assert.equal(await s.end(), 0, s.errors);
	assert.equal(await pending, '', 'one that still waits when the board ends is left');
});

await it('a board whose view is closed sends nothing to who has no ticket for it', async () => {
	const s = await Station.start('--closed');
	const early = follow('', s.port); // before any room is known
	s.view(scenes.on);
	s.view({ ...scenes.idle, room: { number: 2, name: 'Theatre 2', single: false } });
	s.tell({ status: status() });
	const [one, two, desk] = [await cookieOf(1, s), await cookieOf(2, s), await cookieOf(0, s)].map((c) => `Cookie: ${c}\r\n`);
	const pages = { first: ['', one], own: ['?room=1', one], other: ['?room=2', one], all: ['?desk=1', two], desk: ['?desk=1', desk], both: ['?room=2', desk], none: ['?room=1', ''] };
	for (const [name, [query, header]] of Object.entries(pages))
		pages[name] = follow(query, s.port, header);
	await sleep(300);
	for (const [name, sees] of [['first', true], ['own', true], ['other', false], ['all', false], ['desk', true], ['both', true], ['none', false]]) {
		assert.equal(state(pages[name].text), sees ? 200 : 403, name);
		assert.equal(/event: (view|status)/.test(pages[name].text), sees, name);
	}
	assert.equal(state(early.text), 403);
	assert.equal(state(await raw(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${s.port}\r\n\r\n`, { port: s.port })), 200);
	s.cookies = s.cookies.filter((c) => c.room !== 1);
	s.letIn();
	await sleep(200);
	assert.ok(pages.own.closed && pages.first.closed && !pages.desk.closed, 'a page stays though its cookie ended');
	Object.values(pages).forEach((p) => p.socket.destroy());
	assert.equal(await s.end(), 0, s.errors);
});

await it('a typed code comes only from the board\'s own page, for a room of this station, and reaches the daemon once', async () => {
	const good = '{"room":1,"code":"BTBC10104051"}';
	assert.equal(state(await keyed(good, { Origin: `http://${host}\r\nOrigin: http://evil.example` })), 403);
	assert.equal(state(await keyed(good, { Origin: `http://${host}\r\nOrigin: http://${host}` })), 403);
	assert.equal(state(await keyed(good, { Origin: 'http://evil.example' })), 403);
	assert.equal(state(await get('/keyed', { 'Content-Type': 'application/json' }, 'POST', good)), 403);
	assert.equal(state(await keyed(good, { 'Content-Type': 'text/plain' })), 415);
	for (const bad of ['{"room":7,"code":"X"}', '{"room":1,"code":""}', '{"room":1}', '[]', 'x', '{"room":1,"code":"a\\u0007"}', `{"room":1,"code":"${'1'.repeat(129)}"}`, '{"room":1,"code":"A","code":"B"}'])
		assert.equal(state(await keyed(bad)), 400, bad);
	assert.equal(state(await get('/keyed')), 404);
	for (const method of ['PUT', 'DELETE'])
		assert.equal(state(await get('/keyed', {}, method, 'x')), 405, method);
	assert.ok([400, 413].includes(state(await keyed(`{"room":1,"code":"${'1'.repeat(3000)}"}`))));
	const chunk = '4'.repeat(600);
	assert.ok([400, 413].includes(state(await raw(`POST /keyed HTTP/1.1\r\nHost: ${host}\r\nOrigin: http://${host}\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n258\r\n${chunk}\r\n258\r\n${chunk}\r\n0\r\n\r\n`))));
	const answer = await keyed(good);
	assert.equal(state(answer), 200);
	const { id, verdict, said } = JSON.parse(answer.slice(answer.indexOf('\r\n\r\n') + 4));
	assert.deepEqual([verdict, said], ['accepted', 'Taken.']);
	assert.deepEqual(station.lines.filter((l) => l.keyed).map((l) => l.keyed), [{ id, room: 1, code: 'BTBC10104051', cookie: cookie.split('=')[1] }]);
});

await it('with --no-keyed nothing can be typed, and the page is told so', async () => {
	const s = await Station.start('--no-keyed');
	s.view(scenes.on);
	const h = `127.0.0.1:${s.port}`, f = follow('', s.port);
	await sleep(150);
	assert.match(f.text, /event: hello\r?\ndata: \{"typing":"off"\}/);
	const body = '{"room":1,"code":"X"}';
	assert.equal(state(await raw(`POST /keyed HTTP/1.1\r\nHost: ${h}\r\nOrigin: http://${h}\r\nContent-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${body}`, { port: s.port })), 403);
	assert.equal(await s.end(), 0);
});

await it('each room has its own board, and the desk has them all', async () => {
	station.view({ ...scenes.idle, room: { number: 2, name: 'Theatre 2', single: false } });
	const first = follow(), two = follow('?room=2'), desk = follow('?desk=1'), none = follow('?room=9');
	await sleep(150);
	station.view(scenes.question);
	await sleep(150);
	assert.match(first.text, /Is it off/);
	assert.doesNotMatch(first.text, /"room":\{"name":"Theatre 2"/);
	assert.match(two.text, /"room":\{"name":"Theatre 2"/);
	assert.doesNotMatch(two.text, /Is it off/);
	assert.match(desk.text, /Is it off/);
	assert.match(desk.text, /"room":\{"name":"Theatre 2"/);
	assert.doesNotMatch(none.text, /event: view/);
	[first, two, desk, none].forEach((f) => f.socket.destroy());
});

await it('only a page that reads can follow: the head of the events alone is refused', async () => {
	assert.equal(state(await get('/events?room=1', {}, 'HEAD')), 405);
	assert.equal(state(await get('/board.js', {}, 'HEAD')), 200);
});

await it('a page that comes late is told how old the last word is', async () => {
	station.view(scenes.on);
	await sleep(700);
	const f = follow('?room=1');
	await sleep(150);
	const age = +/"age_ms":(\d+),"view"/.exec(f.text)[1];
	assert.ok(age >= 600 && age < 1500, `${age} ms`);
	f.socket.destroy();
});

await it('wrong lines from the daemon are passed over and the next one counts', async () => {
	const f = follow('?room=1');
	await sleep(100);
	for (const line of ['', 'x', '{', '[]', '{"v":2,"alive":true}', '{"v":1}', '{"v":1,"view":7}', '{"v":1,"view":{"room":{"number":0}}}', '{"v":1,"view":{"room":{"number":100}}}', '{"v":1,"view":{"room":{"number":1},"x":0.5}}', '{"v":1,"reply":{}}', '{"v":1,"reply":{"id":"t1"}}', '{"v":1,"entry":{}}', '{"v":1,"entry":{"id":"t1","room":1,"cookie":"x; Domain=example"}}', '{"v":1,"let_in":[]}', '{"v":1,"let_in":{"tickets":[],"cookies":[{"hash":"x"}]}}', '{"v":1,"alive":false}', '{"v":1,"status":3}', '\u0000', '{"v":1,"v":1,"alive":true}'])
		station.write(`${line}\n`);
	station.write(`{"v":1,"view":"${'x'.repeat(700_000)}"}\n`);
	station.tell({ alive: true });
	await sleep(400);
	station.letIn(); // a wrong list lets nobody in
	assert.equal(f.text.match(/event: alive/g)?.length, 1);
	assert.equal(f.text.match(/event: view/g)?.length, 1);
	assert.equal(station.child.exitCode, null);
	f.socket.destroy();
});

await it('ten thousand hostile requests do not end it, and it still answers', async () => {
	let seed = 7;
	const random = (n) => { seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; return Math.floor(seed / 4294967296 * n); };
	const parts = ['GET ', 'POST ', '/', '/events', '/keyed', '?room=', '%00', '%2e%2e/', '../../etc/passwd', ' HTTP/1.1', ' HTTP/9.9', '\r\n', '\n', '\r', 'Host: ', host, 'Origin: null', 'Content-Length: ', '-1', '99999999999999999999', '4', 'Transfer-Encoding: chunked', 'Expect: 100-continue', '\r\n\r\n', '0\r\n\r\n', 'ffffffff\r\n', '\u0000', '\u00ff\u00fe', 'A'.repeat(9000), ': ', 'Upgrade: websocket', 'http://[::', 'x'.repeat(300), '{"room":1,"code":"'];
	const one = () => {
		if (random(3) === 0)
			return Buffer.from(Array.from({ length: random(400) }, () => random(256)));
		let text = random(2) ? `${['GET', 'POST', 'HEAD', 'OPTIONS'][random(4)]} /${['', 'events', 'keyed', 'desk'][random(4)]}` : '';
		for (let i = random(12); i > 0; i--)
			text += parts[random(parts.length)];
		return Buffer.from(text, 'latin1');
	};
	const before = mem_kB();
	for (let i = 0; i < 10_000; i += 50)
		await Promise.all(Array.from({ length: 50 }, () => new Promise((done) => {
			const s = connect(station.port, '127.0.0.1', () => { s.write(one()); setTimeout(() => s.destroy(), 15); });
			s.on('error', () => {});
			s.on('close', done);
			s.resume();
		})));
	assert.equal(station.child.exitCode, null, station.errors);
	assert.equal(state(await get('/')), 200);
	assert.ok(watched || mem_kB() - before < 4096, `${before} kB before, ${mem_kB()} after`);
});

await it('four thousand good requests, each damaged a little, are answered or refused in order, and cost no memory', async () => {
	let seed = 23;
	const random = (n) => { seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; return Math.floor(seed / 4294967296 * n); };
	const body = '{"room":1,"code":"BTBC10104051"}', head = `Host: ${host}\r\nOrigin: http://${host}\r\nCookie: ${cookie}\r\n`;
	const good = [`GET / HTTP/1.1\r\n${head}Accept: text/html\r\n\r\n`, `GET /board.js HTTP/1.1\r\n${head}\r\n`, `HEAD /desk HTTP/1.1\r\n${head}\r\n`, `GET /events?room=1 HTTP/1.1\r\n${head}\r\n`,
		`POST /keyed HTTP/1.1\r\n${head}Content-Type: application/json\r\nContent-Length: ${body.length}\r\n\r\n${body}`,
		`POST /keyed HTTP/1.1\r\n${head}Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n${body.length.toString(16)}\r\n${body}\r\n0\r\n\r\n`];
	const damaged = () => {
		let bytes = Buffer.from(good[random(good.length)], 'latin1');
		for (let i = random(4); i >= 0; i--) {
			const at = random(bytes.length), to = at + random(12);
			bytes = [() => { bytes[at] = random(256); return bytes; }, () => Buffer.concat([bytes.subarray(0, at), bytes.subarray(to)]), () => Buffer.concat([bytes.subarray(0, to), bytes.subarray(at)]),
				() => Buffer.concat([bytes.subarray(0, at), Buffer.from('9'.repeat(random(30))), bytes.subarray(at)])][random(4)]();
		}
		return bytes;
	};
	const seen = {};
	for (let i = 0; i < 4000; i += 40)
		await Promise.all(Array.from({ length: 40 }, () => new Promise((done) => {
			let got = '';
			const s = connect(station.port, '127.0.0.1', () => { s.end(damaged()); setTimeout(() => s.destroy(), 40); });
			s.on('error', () => {});
			s.on('data', (d) => { got += d.toString('latin1'); });
			s.on('close', () => { const n = /^HTTP\/\S+ (\d+) /.exec(got)?.[1] ?? (got ? 'other' : 'none'); seen[n] = (seen[n] ?? 0) + 1; done(); });
		})));
	assert.equal(station.child.exitCode, null, station.errors);
	assert.ok(station.lines.filter((l) => l.keyed).length > 10, JSON.stringify(seen));
	for (const n of [200, 400, 403])
		assert.ok(seen[n] > 10, JSON.stringify(seen));
	for (const n of Object.keys(seen))
		assert.ok(['none', '200', '400', '403', '404', '405', '413', '415', '417', '501', '503'].includes(n), JSON.stringify(seen));
	assert.equal(state(await get('/')), 200);
	assert.ok(watched || mem_kB() <= 16 * 1024, `${mem_kB()} kB resident`);
});

await it('more connections than it has descriptors neither end it nor keep it busy, and it answers again', async () => {
	const cpu = () => { const f = readFileSync(`/proc/${station.child.pid}/stat`, 'utf8').split(') ')[1].split(' '); return +f[11] + +f[12]; };
	const many = Array.from({ length: 450 }, () => { const s = connect(station.port, '127.0.0.1'); s.on('error', () => {}); return s; });
	await sleep(500);
	const before = cpu(), words = station.errors.length;
	await sleep(2000);
	assert.ok(cpu() - before < 60, `${(cpu() - before) * 10} ms of 2,000`);
	assert.ok(station.errors.length - words < 4000, `${station.errors.length - words} bytes of log`);
	many.forEach((s) => s.destroy());
	await sleep(500);
	assert.equal(state(await get('/')), 200);
});

await it('a path that climbs out of the page finds nothing', async () => {
	for (const path of ['/../main.c', '/..%2fmain.c', '/%2e%2e/%2e%2e/etc/passwd', '//etc/passwd', '/board.css/', '/./board.css', '/index.html%00.css'])
		assert.ok([400, 403, 404].includes(state(await get(path))), path);
});

await it('headers of more than 8 kB are refused', async () => {
	assert.ok([0, 400, 413, 431].includes(state(await get('/', { 'X-Long': 'x'.repeat(20_000) }))));
});

await it('who sends a byte now and then is let go within 12 s, whatever is sent', async () => {
	const began = Date.now();
	const slow = (bytes) => new Promise((done) => {
		const s = connect(station.port, '127.0.0.1', () => s.write(bytes));
		const drip = setInterval(() => s.write('x'), 1000);
		s.on('error', () => {});
		s.setTimeout(0);
		setTimeout(() => s.destroy(), 20_000).unref();
		s.on('close', () => { clearInterval(drip); done(Date.now() - began); });
		s.resume();
	});
	const times = await Promise.all([slow(`GET / HTTP/1.1\r\nHost: ${host}\r\nX: `), slow('G'), slow(`POST /keyed HTTP/1.1\r\nHost: ${host}\r\nContent-Length: 900\r\n\r\n`)]);
	assert.ok(times.every((t) => t < 12_500), `${times} ms`);
});

await it('a page that does not read is dropped, and the others do not wait for it', async () => {
	const stuck = follow('?room=1'), reads = follow('?room=1');
	await sleep(150);
	stuck.socket.pause();
	const before = mem_kB(), big = view({ ...scenes['full-sheet'], debts: Array.from({ length: 300 }, (_, i) => `a debt that fills the line, number ${i}`) });
	let sent = 0;
	while (!/does not take/.test(station.errors) && sent < 20_000) {
		station.view({ ...big, next: `step ${++sent}` });
		if (sent % 2 === 0)
			await sleep(4);
	}
	assert.match(station.errors, /a page does not take what it is sent: it is dropped/);
	for (let i = 0; i < 100 && !reads.text.includes(`"step ${sent}"`); i++)
		await sleep(50);
	assert.match(reads.text, new RegExp(`"step ${sent}"`));
	assert.ok(!reads.closed);
	assert.ok(watched || mem_kB() - before < 6144, `${before} kB before, ${mem_kB()} after`);
	stuck.socket.destroy();
	reads.socket.destroy();
	await sleep(100);
});

await it('a hundred pages follow at once, and one more than 128 is told why not', async () => {
	await sleep(200);
	const many = Array.from({ length: 128 }, () => follow('?room=1'));
	await sleep(600);
	assert.equal(many.filter((f) => /event: view/.test(f.text)).length, 128);
	const answer = await get('/events?room=1');
	assert.equal(state(answer), 503);
	assert.match(answer, /Too many pages follow this board: close one of them/);
	assert.equal(state(await get('/')), 200);
	const kB = mem_kB();
	many.forEach((f) => f.socket.destroy());
	await sleep(300);
	const again = follow('?room=1');
	await sleep(200);
	assert.match(again.text, /event: view/);
	again.socket.destroy();
	if (!watched)
		assert.ok(kB <= 16 * 1024, `${kB} kB resident`);
});

await it('it is confined once it listens: no new privileges, a filter on its calls, no file can be opened', () => {
	const text = readFileSync(`/proc/${station.child.pid}/status`, 'utf8');
	assert.match(text, /NoNewPrivs:\s+1/);
	assert.match(text, /Seccomp:\s+2/);
});

await it('wrong words, a used port and help are told in plain sentences', () => {
	const run = (...words) => spawnSync(program, words, { input: '', encoding: 'utf8', timeout: 5000 });
	assert.equal(run('--help').status, 0);
	assert.match(run('--help').stdout, /--no-keyed/);
	assert.equal(run('--port', '70000').status, 2);
	assert.match(run('--port', 'x').stderr, /^bandtally-board: --port: 'x' is no number of 0 to 65535: give one/);
	assert.equal(run('more').status, 2);
	const used = run('--port', String(station.port));
	assert.equal(used.status, 1);
	assert.match(used.stderr, /page server: 127\.0\.0\.1 port \d+: .*: end the program that uses it/);
});

await it('it ends with its input, leaving no page open', async () => {
	const f = follow('?room=1');
	await sleep(150);
	assert.equal(await station.end(), 0, station.errors);
	await sleep(100);
	assert.ok(f.closed);
});
end();
