// The board of one room: what the station last said, drawn; and, when it says nothing, that it says nothing.
import { $, el, put, say } from './dom.js';
import { drawFigure } from './figure.js';
import { drawElsewhere } from './elsewhere.js';
import { drawNotes, notesOf } from './notes.js';
import { drawSheet, searching, signingOut } from './sheet.js';
import { Link } from './link.js';
import { setUpChoices } from './choices.js';
import { setUpKeyed } from './keyed.js';
import { shape } from './shapes.js';
import { sound, waits } from './sound.js';
import { stray, watchStrays } from './strays.js';
import { turn } from './pages.js';
import { ago, verdict } from './words.js';

// The reply to the last scan stands over the next step until it is old news.
const SAID_MS = { accepted: 90000, question: 300000, refused: 300000 };
const AGAIN_MS = 30000; // a reminder or fault that stays is heard again
const asked = new URLSearchParams(location.search).get('room');
const state = { view: null, at: 0, status: null, typing: 'off', heard: {} };
const passed = () => (state.view ? performance.now() - state.at : 0);
const flows = () => getComputedStyle(document.documentElement).getPropertyValue('--flows').trim() === '1';
const styled = () => getComputedStyle(document.documentElement).getPropertyValue('--whole').trim() === '1';

function lastSaid(v) {
	const last = v?.recent?.[0];
	return last && last.ago_ms + passed() < SAID_MS[last.verdict] ? last : null;
}

// Why the board cannot be trusted now, in words, or ''.
function trouble() {
	const silent = link.silence();
	if (link.refused)
		return `${link.refused} Count by hand on the paper sheet.`;
	if (!styled())
		return 'This page loaded only in part. Count by hand on the paper sheet, and load it again.';
	if (silent)
		return `No word from the station for ${Math.floor(silent / 1000)} s. Count by hand on the paper sheet.`;
	if (!link.heard)
		return 'Waiting for the station. Until it speaks, count by hand on the paper sheet.';
	if (!state.view)
		return `The station does not know ${asked ? `room ${asked}` : 'any room'}. Count by hand on the paper sheet.`;
	const why = state.view.distrust;
	return why ? `${/[.:!?]$/.test(why) ? why : `${why}.`} ${/by hand/i.test(why) ? '' : 'Count by hand on the paper sheet.'}`.trim() : '';
}

function drawStrip(v, bad) {
	const c = v?.case;
	say($('place'), v ? `${v.room.name}${c ? ` · case ${c.number}` : ''}` : 'Count board');
	const facts = c ? [
		c.single && 'single-person count', c.patient_left && 'patient has left the room',
		c.cancelled && 'cancelled, count owed', v.awake && 'patient awake',
	].filter(Boolean) : [];
	say($('kind'), facts.join(' · '));
	say($('since'), bad && v ? `last word ${ago(passed())}` : typeof v?.last_scan_ms === 'number' ? `last scan ${ago(v.last_scan_ms + passed())}` : v ? 'no scan yet' : '');
}

// What is to be scanned stands in capitals, and is drawn as the card that it is.
function strong(text, cards) {
	return text.split(/(\b[A-Z][A-Z]+(?: [A-Z]+)*\b)/).map((t, i) => (i % 2 ? el('b', { class: cards.includes(t) ? 'card' : undefined }, t) : t));
}

function drawNow(v, bad) {
	const last = lastSaid(v);
	const kind = bad ? 'trouble' : v.question ? 'question' : last?.verdict === 'refused' ? 'refused' :
		v.case?.discrepancy || v.case?.point_no || v.items.some((i) => i.missing > 0) ? 'missing' :
		v.digits.some((d) => d.reminded) ? 'reminder' : 'do';
	$('now').dataset.kind = kind;
	$('said').dataset.verdict = last?.verdict ?? '';
	put($('tab'), shape({ trouble: 'fault', question: 'question', refused: 'refused', missing: 'missing', reminder: 'reminder', do: 'here' }[kind]));
	if (bad)
		put($('said'), v ? 'What stands below is the last word, and may no longer be true.' : '');
	else
		put($('said'), ...(last ? [shape(last.verdict), last.verdict !== 'question' && el('b', {}, `${verdict(last.verdict, v.awake)}: `), last.said].filter(Boolean) : []));
	const words = bad ? [] : v.cards.map((c) => c.words.split(': ').at(-1)), parts = strong(bad || v.next, words);
	const named = parts.filter((p) => p.className === 'card').map((p) => p.textContent);
	put($('next'), ...parts);
	put($('cards'), ...words.filter((w) => !named.includes(w)).map((w) => el('li', {}, w)));
}

// Where the hands and the sheet would get too little room, what can wait is left out, least needed first:
// 1 the cards that fit as well, 2 the reply where it was accepted, 3 what waits beside a fault.
function fit(wall) {
	const root = document.documentElement, mm = parseFloat(getComputedStyle($('next')).fontSize) / 24.4;
	const need = { points: 186, search: 122, count: 132 }[root.dataset.part] ?? 108;
	for (let level = 0; level <= 3; level++) {
		root.dataset.squeeze = level;
		if (!wall || $('middle').clientHeight / mm >= need)
			return;
	}
}

function draw() {
	const v = state.view, bad = trouble(), wall = !flows();
	document.documentElement.dataset.trouble = bad ? 'yes' : 'no';
	const limbs = new Set((v?.digits ?? []).map((d) => Math.floor((d.number - 1) / 10)));
	document.documentElement.dataset.many = limbs.size > 1 || v?.digits.length > 3 ? 'yes' : 'no';
	document.documentElement.dataset.part = signingOut(v) ? 'points' : searching(v) ? 'search' : v?.case?.final === 'asking' ? 'count' : v?.case ? 'case' : 'idle';
	if (bad) // nothing may lie over it
		document.querySelectorAll('dialog[open]').forEach((d) => d.close());
	drawStrip(v, bad);
	drawElsewhere($('elsewhere'), v?.elsewhere);
	drawNow(v, bad);
	drawSheet($('sheet'), v);
	drawNotes($('note'), notesOf(v, state.status, passed(), { said: lastSaid(v), soundWaits: waits(), stray: stray(), typingOver: state.typing === 'over' }), !wall);
	$('type').hidden = state.typing === 'off' || !v;
	fit(wall);
	turn($('sheet'), !wall);
	drawFigure($('figure'), v, passed());
	hear(bad);
}

// Sounds follow what is new; a fault or a reminder is heard again while it stays.
function hear(bad) {
	const h = state.heard, v = state.view, now = performance.now();
	const due = (name, present, play = () => sound(name, v)) => {
		if (!present)
			return void delete h[name];
		if (h[name] && now - h[name] < AGAIN_MS)
			return;
		h[name] = now;
		play();
	};
	due('fault', bad || v?.faults?.length);
	due('reminder', !bad && v?.digits.some((d) => d.reminded));
	due('elsewhere', !bad && v?.elsewhere?.length, () => sound('reminder', v, true));
}

function hearScan(before, v) {
	const key = (x) => x?.recent?.[0] && `${Math.round((x.at_ms - x.recent[0].ago_ms) / 50)} ${x.recent[0].said}`;
	if (before && key(before) !== key(v) && v.recent?.[0])
		sound(v.recent[0].verdict, v);
}

put($('type'), shape('keys'), el('span', {}, 'Type a code'));
put($('settings'), shape('light'), el('span', {}, 'Light and sound'));
// A dialog that nobody touches gives the board back.
const IDLE_MS = 60000;
let idle = 0;
for (const news of ['pointerdown', 'keydown'])
	addEventListener(news, () => {
		clearTimeout(idle);
		idle = setTimeout(() => document.querySelectorAll('dialog[open]').forEach((d) => d.close()), IDLE_MS);
	});

watchStrays(() => { sound('refused', state.view); draw(); });
const keyed = setUpKeyed(state);
setUpChoices(state);
const link = new Link(`/events${asked ? `?room=${encodeURIComponent(asked)}` : ''}`, {
	alive() {},
	hello(h) { state.typing = h.typing; keyed.allowed(); },
	view(v, at) {
		const before = state.view;
		Object.assign(state, { view: v, at });
		hearScan(before, v);
		draw();
	},
	status(s) { state.status = s; },
	closed() { Object.assign(state, { view: null, status: null, typing: 'off' }); draw(); }, // what was seen before goes
});
setInterval(draw, 250);
addEventListener('resize', draw);
draw();
