// Each reply that the station is known to give (tests/states/REPLIES.md) stands on the wall, whole and under nothing, at
// every size, whatever waits besides; so does what comes next. And the longest that it could ever give.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { b, open, station, walls } from './page.mjs';
import { scenes } from './scenes.mjs';
import { end, it } from './told.mjs';

const file = join(dirname(fileURLToPath(import.meta.url)), '../states/REPLIES.md');
// What the room looks like under a heading of that file: as full as it can be then.
const rooms = [
	[/^No case/, 'idle'], [/suspended/, 'idle'], [/^Discrepancy: the search/, 'search-complete'], [/^Discrepancy/, 'discrepancy-two'], [/^Final count: all there/, 'look'],
	[/^Final count agreed/, 'look'], [/^Final count/, 'final-count'], [/^Ready for the sign-out/, 'sign-out'], [/half an hour/, 'reminder'], [/'is it off\?'/, 'question'],
	[/is it on\?|On before/, 'maybe-on'], [/^The tourniquet is off/, 'off'], [/^One operator: who/, 'who-looked'], [/^One operator/, 'alone'], [/tourniquet is on|handover/, 'four-digits'], [/./, 'counting-in'],
];
const notes = { 1: 'one-note', 6: 'six-notes', 12: 'twelve-notes' };

// One row for each sentence, with the longest that follows it.
const rows = new Map();
let heading = '';
for (const line of readFileSync(file, 'utf8').split('\n')) {
	const cells = line.split(' | ').map((c) => c.replace(/^\||\|$/g, '').trim());
	if (line.startsWith('## '))
		heading = line.slice(3);
	if (cells.length === 4 && /^(accepted|refused|question)$/.test(cells[1])) {
		const scene = rooms.find(([is]) => is.test(heading))[1], key = cells[2], before = rows.get(key);
		if (!before || before.next.length < cells[3].length)
			rows.set(key, { scene, verdict: cells[1], said: cells[2], next: cells[3] });
	}
}
const sentence = 'Case 41 ended UNRESOLVED, incident number owed. 1 finger tourniquet of 2 shown intact; finger tourniquet, green, M: not found. ';
rows.set('longest', { scene: 'four-digits', verdict: 'refused', said: sentence.repeat(4).slice(0, 400), next: sentence.repeat(3).slice(0, 300) });
rows.set('longest, idle', { scene: 'idle', verdict: 'accepted', said: sentence.repeat(4).slice(0, 400), next: 'When the paper is in your hand: scan the code on the slip. Next patient: scan NEW CASE.' });

// Runs in the page: what of a sentence cannot be read, '' nothing.
async function hidden(said, next) {
	const until = performance.now() + 10000;
	while (!document.getElementById('said').innerText.replace(/\s+/g, ' ').includes(said) && performance.now() < until)
		await new Promise((done) => setTimeout(done, 4));
	const wrong = (id, words) => {
		const e = document.getElementById(id), range = document.createRange();
		if (!e.innerText.replace(/\s+/g, ' ').includes(words))
			return `${id} does not say it`;
		range.selectNodeContents(e);
		for (const r of range.getClientRects()) {
			if (r.width < 1)
				continue;
			if (r.top < -1 || r.left < -1 || r.right > innerWidth + 1 || r.bottom > innerHeight + 1)
				return `${id} leaves the screen`;
			for (const x of [r.left + 2, (r.left + r.right) / 2, r.right - 2])
				for (const y of [r.top + r.height * 0.2, r.bottom - r.height * 0.2])
					if (!e.contains(document.elementFromPoint(x, y)))
						return `${id} lies under ${document.elementFromPoint(x, y)?.id || document.elementFromPoint(x, y)?.className}`;
		}
		return '';
	};
	return wrong('said', said) || wrong('next', next);
}

// One wall after the other: pages that draw beside each other take far longer together than one by one.
for (const [wall, viewport] of Object.entries(walls)) {
	const page = await open(viewport);
	for (const [count, scene] of Object.entries(notes))
		await it(`each of ${rows.size} replies stands on a wall of ${wall}, with ${count} note${count > 1 ? 's' : ''}`, async () => {
			const waits = Object.fromEntries(['debts', 'slips', 'owed', 'faults'].map((k) => [k, scenes[scene][k]])), out = [];
			let n = 0;
			for (const { scene: name, verdict, said, next } of rows.values()) {
				const base = scenes[name], mark = `${said} (${++n})`, searches = base.search.some((s) => s.state === 'open') && base.cards.some((c) => c.number === 60);
				const words = searches ? base.search.find((s) => s.state === 'open').text : next.replace(/\.$/, '');
				station.view({ ...base, ...waits, next, recent: [{ ago_ms: 0, verdict, said: mark }], last_scan_ms: 0 });
				const why = await page.evaluate(([f, ...w]) => new Function(`return (${f})(...arguments)`)(...w), [hidden.toString(), ...[mark, words].map((w) => w.replace(/\s+/g, ' '))]);
				if (why)
					out.push(`${why}: ${name}: ${mark} → ${next}`);
			}
			assert.deepEqual(out.slice(0, 20), [], `${out.length} of ${rows.size}`);
			assert.deepEqual(page.faults, []);
		});
	await page.close();
}

await it('a reply stands in the dialog too, where that lies over the board, and the other dialog gives way', async () => {
	const page = await open();
	station.view({ ...scenes.on, next: 'now' });
	await page.click('#type');
	station.view({ ...scenes.on, recent: [{ ago_ms: 0, verdict: 'refused', said: 'Not counted in: it expired.' }] });
	await page.waitForFunction(() => document.getElementById('news')?.textContent === 'Refused: Not counted in: it expired.');
	assert.ok(await page.isVisible('#news'));
	await page.click('#keyed .close');
	await page.click('#settings');
	station.view({ ...scenes.on, recent: [{ ago_ms: 0, verdict: 'refused', said: 'Not counted in: it was used before.' }] });
	await page.waitForFunction(() => !document.querySelector('dialog[open]'));
});

await b.close();
await station.end();
end();
