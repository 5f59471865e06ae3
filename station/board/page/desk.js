// The view for people at a desk: every room at a glance, what is owed and what has failed. Nothing can be entered.
import { $, el, put, say } from './dom.js';
import { drawElsewhere, nobodyAnswers } from './elsewhere.js';
import { Link } from './link.js';
import { shape } from './shapes.js';
import { sound } from './sound.js';
import { summary } from './sheet.js';
import { part, speak } from './sentences.js';
import { ago, digitName, digitWords, hour, key, label, list, slipValues, t } from './words.js';

const rooms = new Map(); // number -> { view, at }
let status = null;
const AGAIN_MS = 30000; // while it stands it is heard again

function trouble() {
	const silent = link.silence();
	if (link.refused)
		return link.refused;
	if (getComputedStyle(document.documentElement).getPropertyValue('--whole').trim() !== '1')
		return t('desk-not-styled');
	if (silent && !status?.stopped)
		return t('desk-silent', { n: Math.floor(silent / 1000) });
	if (!link.heard)
		return t('desk-waiting');
	return status?.distrust ? t('desk-distrust', { words: status.distrust }) : '';
}

const said = ({ what, n }) => part(what, { n });

function roomRow({ view: v, at }) {
	const passed = performance.now() - at, c = v.case;
	const digits = v.digits.map((d) => {
		const w = digitWords(d, passed);
		return w && el('div', {}, t(d.reminded ? 'told-reminder' : 'told-digit', { digit: d.number, words: w }));
	}).filter(Boolean);
	const cell = (cls, ...what) => el('td', { class: cls }, ...what);
	const kind = c ? list([t('desk-case', { case: c.number }), c.single && t('single-person'), c.discrepancy && t('desk-in-discrepancy'), c.patient_left && t('desk-left')].filter(Boolean)) : t('desk-no-case');
	return el('tr', {}, cell('', el('b', {}, v.room.name)), cell('', v.suspended_case ? t('desk-suspended', { words: kind, case: v.suspended_case }) : kind),
		cell('time', ...digits), cell('', c ? summary(v) : ''), cell('', v.distrust ? t('desk-room-distrust', { words: v.distrust }) : v.next), cell('', said(typeof v.last_scan_ms === 'number' ? ago(v.last_scan_ms + passed) : { what: key('desk-none') })));
}

const rows = (kind, texts, none) => (texts.length ? el('ul', {}, ...texts.map((text) => el('li', {}, shape(kind), el('span', {}, text)))) : el('p', {}, none));

const heads = (...names) => names.map((name) => el('th', { scope: 'col' }, t(`head-${name}`)));

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
	hear(!bad && nobodyAnswers(status?.elsewhere));
	say($('place'), status?.site_name ? t('desk-of', { text: status.site_name }) : t('desk'));
	say($('facts'), status ? t('desk-facts', { n: status.open_cases, case: status.last_case }) : '');
	say($('hour'), all.length ? hour(all[0].view.at_ms + performance.now() - all[0].at, all[0].view.utc_min ?? 0) : '');
	say($('intended'), t('intended'));
	put($('rooms'), all.length ? el('table', {}, el('thead', {}, el('tr', {}, ...heads('room', 'case', 'digits', 'accounted', 'next', 'last'))),
		el('tbody', {}, ...all.map(roomRow))) : el('p', {}, t('desk-no-room')));
	put($('cases'), status?.cases?.length ? el('table', {}, el('thead', {}, el('tr', {}, ...heads('room', 'case', 'opened', 'ended', 'outcome'))),
		el('tbody', {}, ...status.cases.map((c) => el('tr', {}, ...[c.room, t('desk-case', { case: c.case }), c.opened, c.ended || t('desk-not-ended')].map((text) => el('td', {}, text)), el('td', { class: c.outcome }, el(c.outcome === 'unresolved' ? 'b' : 'span', {}, t(`end-${c.outcome}`))))))) : el('p', {}, t('desk-no-case-today')));
	put($('slips'), rows('slip', (status?.slips ?? []).map((s) => t('desk-slip', slipValues(s))).concat(status?.slips_older ? [t('desk-older', { n: status.slips_older })] : []), t('desk-all-seen')));
	put($('owed'), rows('owed', [...(status?.owed ?? []).map((n) => t('desk-incident', { case: n.case })),
		...(status?.after ?? []).map((a) => t('desk-after', { case: a.case, time: a.at, text: a.digit ? `${t(`owed-${a.what}`)}, ${digitName(a.digit)}` : t(`owed-${a.what}`) })),
		...all.flatMap(({ view: v }) => v.debts.map((d) => t('desk-debt', { room: v.room.name, case: v.case?.number, what: d.name })))], t('desk-nothing-owed')));
	put($('faults'), rows('fault', [...new Set([...(status?.clock ? [status.clock] : []), ...(status?.faults ?? []), ...all.flatMap(({ view: v }) => v.faults ?? []), ...(status && !status.printer ? [t('no-printer')] : [])])], t('desk-no-fault')));
}

// In the site's language, as soon as it is here.
async function hearLanguage() {
	if (!await speak(status?.language))
		return;
	label();
	draw();
}

label();
const link = new Link('/events?desk=1', {
	alive() {},
	hello() {},
	closed() { rooms.clear(); status = null; draw(); },
	view(view, at) { rooms.set(view.room.number, { view, at }); draw(); },
	status(s) { status = s; draw(); void hearLanguage(); },
});
setInterval(draw, 250);
setInterval(() => { document.title = `${t(document.body.dataset.title)} ${new Date().toTimeString().slice(0, 8)}`; }, 1000); // for bandtally-kiosk
draw();
