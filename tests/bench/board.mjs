// The board's figures (DESIGN section 10), each beside a reference of the same run:
//   node tests/bench/board.mjs [--json]     BANDTALLY_BIN names the programs' folder
// paint      from the daemon's line to the painted page, beside the same text sent by a bare Node server
// page       all bytes that the page is made of
// 100 pages  processor time while 100 pages follow 5 updates a second, beside a bare Node server that does the same
// memory     resident, meanwhile
// elsewhere  the same with 32 pages by TLS beside 100 here
import { createServer } from 'node:http';
import { connect } from 'node:net';
import { connect as connectTls } from 'node:tls';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { browser } from '../page/browser.mjs';
import { Certificates } from '../page/certificates.mjs';
import { Station } from '../page/station.mjs';
import { scenes, status } from '../page/scenes.mjs';
import { sleep } from '../page/told.mjs';

const CHANGES = 300, SECONDS = 10;
const items = [], json = process.argv.includes('--json');
function item(name, value, unit, reference, goal, met) {
	items.push({ name, value, unit, reference, ratio: reference ? +(value / reference).toFixed(3) : null, goal, met });
}
const quantile = (list, q) => [...list].sort((x, y) => x - y)[Math.min(list.length - 1, Math.ceil(list.length * q) - 1)];
const ticks = +execFileSync('getconf', ['CLK_TCK']);
const cpu_s = (pid) => { const f = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' '); return (+f[11] + +f[12]) / ticks; };

const b = await browser();

// Notes when each change named 'change N' has been painted: the task after the frame that shows it.
const watch = `window.painted = new Map(); new MutationObserver(() => { const t = document.getElementById('next').textContent;
	requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = () => window.painted.has(t) || window.painted.set(t, performance.timeOrigin + performance.now()); c.port2.postMessage(0); }); })
	.observe(document.getElementById('next'), { childList: true, characterData: true, subtree: true });`;
async function paint(page, send) {
	await page.evaluate(watch);
	const sent = new Map();
	for (let i = 0; i < CHANGES; i++) {
		sent.set(`change ${i}.`, performance.timeOrigin + performance.now());
		send(`change ${i}.`);
		await sleep(60 + (i * 7) % 23);
	}
	await sleep(500);
	const painted = new Map(await page.evaluate(() => [...window.painted]));
	const times = [...sent].map(([t, at]) => painted.get(t) - at);
	if (times.some(Number.isNaN))
		throw new Error(`${times.filter(Number.isNaN).length} of ${CHANGES} changes were never painted`);
	return times;
}

// The reference: a server of a few lines that sends the same bytes, and a page that only shows the text.
const listeners = new Set();
const bare = createServer((q, r) => {
	if (q.url !== '/events')
		return r.setHeader('Content-Type', 'text/html').end('<p id=next>-</p><script>new EventSource("/events").onmessage = (e) => { document.getElementById("next").textContent = JSON.parse(e.data).view.next; }</script>');
	r.writeHead(200, { 'Content-Type': 'text/event-stream' });
	r.flushHeaders();
	listeners.add(r);
	r.on('close', () => listeners.delete(r));
}).listen(0, '127.0.0.1');
await new Promise((done) => bare.on('listening', done));
const bareAddress = `http://127.0.0.1:${bare.address().port}/`;
const bareSend = (view) => { const m = `data: ${JSON.stringify({ view })}\n\n`; listeners.forEach((r) => r.write(m)); };

const station = await Station.start();
station.beat();
station.tell({ status: status() });
station.view(scenes.on);
const open = async (address) => { const p = await b.newPage({ viewport: { width: 1920, height: 1080 } }); await p.goto(address); await sleep(1500); return p; };
let page = await open(bareAddress);
const reference = await paint(page, (next) => bareSend({ ...scenes.question, next }));
await page.close();
page = await open(station.address);
const ours = await paint(page, (next) => station.view({ ...scenes.question, next }));
await page.close();
await b.close();
item('reply to painted page, p99', +quantile(ours, 0.99).toFixed(1), 'ms', +quantile(reference, 0.99).toFixed(1), '≤ 50', quantile(ours, 0.99) <= 50);
item('reply to painted page, median', +quantile(ours, 0.5).toFixed(1), 'ms', +quantile(reference, 0.5).toFixed(1), null, null);

let bytes = 0;
const names = new Set(['']);
for (const name of names) {
	const text = await (await fetch(station.address + name)).text();
	bytes += Buffer.byteLength(text);
	for (const [, n] of [...text.matchAll(/(?:src|href)="\/([^"]+)"/g), ...text.matchAll(/from '\.\/([^']+)'/g)])
		names.add(n);
}
item('page, all its files', +(bytes / 1000).toFixed(1), 'kB', 100, '≤ 100', bytes <= 100_000);

const plain = (port) => () => connect(port, '127.0.0.1');
async function many(pages, pid, send) {
	let got = 0;
	const sockets = pages.map(([open, port, name]) => {
		const s = open();
		s.on('error', () => {});
		s.write(`GET /events HTTP/1.1\r\nHost: ${name}:${port}\r\n\r\n`);
		s.on('data', (d) => { got += d.length; });
		return s;
	});
	await sleep(1500);
	const beat = setInterval(send, 200);
	await sleep(1000);
	got = 0;
	const before = [cpu_s(pid), process.cpuUsage()];
	await sleep(SECONDS * 1000);
	const after = [cpu_s(pid), process.cpuUsage(before[1])], resident = resident_MiB(pid);
	clearInterval(beat);
	sockets.forEach((p) => p.destroy());
	if (got < size * pages.length * 5 * SECONDS * 0.9)
		throw new Error(`the ${pages.length} pages got only ${got} bytes`);
	return { station: (after[0] - before[0]) / SECONDS, self: (after[1].user + after[1].system) / 1e6 / SECONDS, resident };
}
const resident_MiB = (pid) => +/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))[1] / 1024;
const size = Buffer.byteLength(JSON.stringify({ ...scenes['full-sheet'], next: 'step 10' }));
const times = (count, page) => Array.from({ length: count }, () => page);
let n = 0;
const step = () => ({ ...scenes['full-sheet'], next: `step ${++n}` });
const run = await many(times(100, [plain(station.port), station.port, '127.0.0.1']), station.child.pid, () => station.view(step()));
const barePort = bare.address().port;
const alone = await many(times(100, [plain(barePort), barePort, '127.0.0.1']), process.pid, () => bareSend(step()));
item('100 pages, 5 updates a second', +(run.station * 100).toFixed(2), '% of a core', +(alone.self * 100).toFixed(2), '≤ 10', run.station <= 0.1);
item('resident memory with 100 pages', +run.resident.toFixed(1), 'MiB', 16, '≤ 16', run.resident <= 16);

const c = new Certificates();
process.on('exit', () => c.remove());
c.authority('ours');
c.make('server', 'ours', 'serverAuth');
c.make('client', 'ours', 'clientAuth');
const both = await Station.start('--elsewhere', '127.0.0.1', '--elsewhere-port', '0', '--host', 'localhost', '--certificate', c.path('server.pem'), '--key', c.path('server.key'), '--clients', c.path('ours.pem'));
both.beat();
both.view(scenes.on);
const elsewhere = both.lines[0].listening.elsewhere;
const identity = { servername: 'localhost', ca: c.read('ours.pem'), cert: c.read('client.pem'), key: c.read('client.key') };
const walls = Array.from({ length: 32 }, (_, i) => [() => connectTls({ host: '127.0.0.1', localAddress: `127.0.0.${i + 2}`, port: elsewhere, ...identity }), elsewhere, 'localhost']);
const all = await many([...times(100, [plain(both.port), both.port, '127.0.0.1']), ...walls], both.child.pid, () => both.view(step()));
item('the same with 32 pages elsewhere by TLS', +(all.station * 100).toFixed(2), '% of a core', +(run.station * 100).toFixed(2), '≤ 10', all.station <= 0.1);
item('resident memory with 100 pages here and 32 by TLS', +all.resident.toFixed(1), 'MiB', 16, '≤ 16', all.resident <= 16);
await both.end();
await station.end();
bare.close();
bare.closeAllConnections();

if (json)
	console.log(JSON.stringify(items));
else
	items.forEach((i) => console.log(`${i.name}: ${i.value} ${i.unit}${i.reference ? ` (reference ${i.reference}, ratio ${i.ratio})` : ''}${i.goal ? `, goal ${i.goal}: ${i.met ? 'met' : 'NOT met'}` : ''}`));
process.exit(items.every((i) => i.met !== false) ? 0 : 1);
