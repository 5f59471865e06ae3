// The view for people at a desk: every room at a glance, what is owed and what has failed. Nothing can be entered.
import { $, el, put, say } from './dom.js';
import { drawElsewhere } from './elsewhere.js';
import { Link } from './link.js';
import { shape } from './shapes.js';
import { sound } from './sound.js';
import { summary } from './sheet.js';
import { ago, digitWords, t } from './words.js';

const rooms = new Map(); // number -> { view, at }
let status = null;
const AGAIN_MS = 30000; // while it stands it is heard again

function trouble() {
	const silent = link.silence();
	if (link.refused)
		return link.refused;
	if (getComputedStyle(document.documentElement).getPropertyValue('--whole').trim() !== '1')
		return 'This page loaded only in part. Load it again; do not rely on it.';
	if (silent)
		return `No word from the station for ${Math.floor(silent / 1000)} s. What stands here may no longer be true; in the rooms: count by hand.`;
	if (!link.heard)
		return 'Waiting for the station.';
	return status?.distrust ? `${status.distrust}. In the rooms: count by hand.` : '';
}

function roomRow({ view: v, at }) {
	const passed = performance.now() - at, c = v.case;
	const digits = v.digits.map((d) => {
		const w = digitWords(d, passed);
		return w && el('div', {}, `${d.name}: ${w}${d.reminded ? ', reminder' : ''}`);
	}).filter(Boolean);
	const cell = (cls, ...what) => el('td', { class: cls }, ...what);
	const kind = c ? [`case ${c.number}`, c.single && 'single-person count', c.discrepancy && 'discrepancy', c.patient_left && 'patient has left'].filter(Boolean).join(', ') : 'no case open';
	return el('tr', {}, cell('', el('b', {}, v.room.name)), cell('', kind + (v.suspended_case ? `; case ${v.suspended_case} suspended` : '')),
		cell('time', ...digits), cell('', c ? summary(v) : ''), cell('', v.distrust ? `${v.distrust}. Count by hand.` : v.next), cell('', typeof v.last_scan_ms === 'number' ? ago(v.last_scan_ms + passed) : 'none'));
}

const list = (kind, texts, none) => (texts.length ? el('ul', {}, ...texts.map((text) => el('li', {}, shape(kind), el('span', {}, text)))) : el('p', {}, none));

// The desk sounds for one thing only, and as loudly as its rooms are set to.
let heard = 0;
function hear(present) {
	const now = performance.now();
	if (present && (!heard || now - heard >= AGAIN_MS))
		sound('reminder', { sound: [...rooms.values()][0]?.view.sound }, true);
	heard = !present ? 0 : !heard || now - heard >= AGAIN_MS ? now : heard;
}

function draw() {
	const bad = trouble(), all = [...rooms.values()].sort((a, b) => a.view.room.number - b.view.room.number);
	$('trouble').hidden = !bad;
	say($('trouble'), bad);
	drawElsewhere($('elsewhere'), status?.elsewhere);
	hear(!bad && status?.elsewhere?.length);
	say($('place'), status?.site_name ? `Count desk · ${status.site_name}` : 'Count desk');
	say($('facts'), status ? `${status.open_cases} open, last case ${status.last_case}` : '');
	say($('intended'), t('intended'));
	put($('rooms'), all.length ? el('table', {}, el('thead', {}, el('tr', {}, ...['Room', 'Case', 'Digits', 'Accounted for', 'Next in the room', 'Last scan'].map((text) => el('th', { scope: 'col' }, text)))),
		el('tbody', {}, ...all.map(roomRow))) : el('p', {}, 'No room is known yet.'));
	put($('cases'), status?.cases?.length ? el('table', {}, el('thead', {}, el('tr', {}, ...['Case', 'Room', 'Opened', 'Ended', 'Outcome'].map((text) => el('th', { scope: 'col' }, text)))),
		el('tbody', {}, ...status.cases.map((c) => el('tr', {}, ...[`case ${c.case}`, c.room, c.opened, c.ended || 'not ended', c.outcome].map((text) => el('td', {}, /unresolved/.test(text) ? el('b', {}, text) : text)))))) : el('p', {}, 'No case today.'));
	put($('slips'), list('slip', (status?.slips ?? []).map((s) => `Slip ${s.number}, case ${s.case}, ${s.kind}: ${s.state}`).concat(status?.slips_older ? [`And ${status.slips_older} older`] : []), 'Each slip was read back, or none was made.'));
	put($('owed'), list('owed', [...(status?.owed ?? []).map((n) => `Case ${n.case}: incident number`),
		...(status?.after ?? []).map((a) => `Case ${a.case}, since ${a.at}: ${t(`owed-${a.what}`)}${a.digit ? `, ${a.digit}` : ''}`),
		...all.flatMap(({ view: v }) => v.debts.map((d) => `${v.room.name}, case ${v.case?.number}: ${d}`))], 'Nothing is owed that the station knows of.'));
	put($('faults'), list('fault', [...new Set([...(status?.clock ? [status.clock] : []), ...(status?.faults ?? []), ...all.flatMap(({ view: v }) => v.faults ?? []), ...(status && !status.printer ? ['No printer is set: slips are written as PDF.'] : [])])], 'None that the station knows of.'));
}

const link = new Link('/events?desk=1', {
	alive() {},
	hello() {},
	closed() { rooms.clear(); status = null; draw(); },
	view(view, at) { rooms.set(view.room.number, { view, at }); draw(); },
	status(s) { status = s; draw(); },
});
setInterval(draw, 250);
draw();
