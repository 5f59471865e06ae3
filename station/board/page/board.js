// The board of one room: what the station last said; and, when it says nothing, that it says nothing.
import { $, el, put, say } from './dom.js';
import { drawClocks, running } from './clocks.js';
import { drawFigure, limbsOf } from './figure.js';
import { drawElsewhere, nobodyAnswers, remindsHere } from './elsewhere.js';
import { drawNotes, notesOf } from './notes.js';
import { drawSheet, searching, searchSummary, signingOut, stepsOf } from './sheet.js';
import { drawShout, owedLine } from './shout.js';
import { fit } from './fit.js';
import { Link } from './link.js';
import { setUpChoices } from './choices.js';
import { setUpKeyed } from './keyed.js';
import { shape } from './shapes.js';
import { sound, waits } from './sound.js';
import { stray, watchStrays } from './strays.js';
import { turn } from './pages.js';
import { speak } from './sentences.js';
import { ago, hour, key, label, reply, t } from './words.js';

// The reply to the last scan stands over the next step until it is old; while fresh, everything gives way to it.
const SAID_MS = { accepted: 90000, question: 300000, refused: 300000 };
const FRESH_MS = 20000;
const STANDS_MS = 90000; // an instruction that nobody has to follow now is written small from then on
const AGAIN_MS = 30000; // a reminder or fault that stays is heard again
const STEP_DONE = 60; // the card's number: code/own-codes.h
const asked = new URLSearchParams(location.search).get('room');
const state = { view: null, views: 0, at: 0, status: null, typing: 'off', heard: {} };
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
		return `${link.refused} ${t('by-hand')}`;
	if (!styled())
		return t('not-styled');
	if (silent && !state.view?.stopped)
		return t('silent', { n: Math.floor(silent / 1000) });
	if (!link.heard)
		return t('waiting');
	if (!state.view)
		return asked ? t('no-such-room', { room: asked }) : t('no-room');
	const why = state.view.distrust;
	return why ? `${why} ${t('by-hand')}` : '';
}

// Until when what stands below was true, by the station's clock: what is copied from the wall by hand is copied with it.
function lastWord(v) {
	const silent = link.silence();
	return t('last-word', { ...ago(silent), time: hour(v.at_ms + passed() - silent, v.utc_min ?? 0) });
}

function drawStrip(v, bad) {
	const c = v?.case;
	say($('place'), !v ? t('board') : c ? t('place', { room: v.room.name, case: c.number }) : v.room.name);
	say($('practice'), v?.practice ? t('practice') : '');
	const facts = c ? [c.single && t('single-person'), c.patient_left && t('patient-left'), c.cancelled && t('cancelled'), v.awake && t('awake')].filter(Boolean) : [];
	say($('kind'), facts.join(' · '));
	say($('since'), bad && v ? lastWord(v) : typeof v?.last_scan_ms === 'number' ? t('last-scan', ago(v.last_scan_ms + passed())) : v ? t('no-scan') : '');
	say($('hour'), v ? hour(v.at_ms + passed(), v.utc_min ?? 0) : '');
}

// What is to be scanned is drawn as the printed card that it is. A comma behind it begins no line.
function strong(text, cards) {
	if (!cards.length)
		return [text];
	const names = [...cards].sort((a, b) => b.length - a.length).map((c) => c.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
	const parts = text.replace(/\.$/, (stop) => (cards.some((c) => text.endsWith(c + stop)) ? '' : stop)).split(new RegExp(`(?<![\\p{L}\\d])(${names.join('|')})(?![\\p{L}\\d])([,;:.)]*)`, 'u'));
	return parts.map((x, i) => (i % 3 === 1 ? el('span', { class: 'whole' }, el('b', { class: 'card' }, x), parts[i + 1]) : i % 3 ? '' : x));
}

// The case that ended here last, until its slip is in somebody's hand.
function ended(v) {
	const e = v?.case || v?.after?.length ? null : v?.ended;
	return e && (e.ago_ms + passed() < SAID_MS.accepted || v.slips.some((s) => s.case === e.case)) ? e : null;
}

const cardsOf = (v) => v.cards.map((c) => c.words.split(': ').at(-1));
const searches = (v) => searching(v) && v.cards.some((c) => c.number === STEP_DONE);

function nextParts(v, bad) {
	if (bad)
		return [bad];
	if (!searches(v))
		return strong(v.next, [...cardsOf(v), ...v.deeds.map((d) => d.then).filter(Boolean)]);
	const at = stepsOf(v);
	return [shape('here'), t('step', { n: at + 1, step: v.search[at].text })];
}

// In the search each card stands with the truth that it answers; else the sentence names them all.
function cardNodes(v) {
	return searches(v) ? v.deeds.filter((d) => d.card).map((d) => el('li', {}, el('b', { class: 'card' }, d.card), el('span', {}, d.words && ` ${d.words}`))) : [];
}

// An instruction that has stood for a while, about tourniquets that are on, gives its place to the minutes.
function stands(v, kind) {
	const last = v?.recent?.[0];
	return kind === 'do' && running(v, 0).length > 0 && !(last && last.ago_ms + passed() < STANDS_MS);
}

function kindOf(v, bad, last) {
	return bad ? 'trouble' : v.question ? 'question' : last?.verdict === 'refused' ? 'refused' :
		v.case?.discrepancy || v.case?.point_no || v.items.some((i) => i.missing > 0) ? 'missing' :
		v.digits.some((d) => d.reminded) ? 'reminder' : 'do';
}

function drawSaid(v, bad, last) {
	const fresh = !bad && last && last.ago_ms + passed() < FRESH_MS;
	Object.assign($('said').dataset, { verdict: bad ? '' : last?.verdict ?? '', fresh: fresh ? 'yes' : 'no' });
	if (bad)
		put($('said'), v ? t('may-be-old') : '');
	else
		put($('said'), ...(last ? [el('b', {}, `${reply(last.verdict, v.awake)} `), last.said] : []));
}

function onParts(d) {
	return [el('b', {}, t(d.state === 'on' ? 'on' : 'maybe-on', { digit: d.number })), t(d.next_reminder_min ? 'since-reminder' : 'since', { time: d.on_at, n: d.next_reminder_min })];
}

function drawNow(v, bad) {
	const last = lastSaid(v), kind = kindOf(v, bad, last), end = bad ? null : ended(v), clocks = drawClocks($('clocks'), v, passed());
	$('now').dataset.kind = kind;
	$('now').dataset.stands = end || (!bad && stands(v, kind)) ? 'yes' : 'no';
	say($('after'), bad ? '' : owedLine(v));
	drawSaid(v, bad, last);
	$('done').hidden = !end;
	say($('done'), end ? t(`ended-${end.outcome}`, { case: end.case, time: end.at }) : '');
	put($('next'), ...nextParts(v, bad));
	put($('cards'), ...(bad ? [] : cardNodes(v)));
	put($('on'), ...(clocks.length === 1 ? onParts(clocks[0]) : []));
}

function drawTeam(v, bad) {
	const c = !bad && v?.case, held = c && !searching(v) ? v.agreed.at(-1) : null;
	say($('team'), !c ? '' : searching(v) ? searchSummary(v) : v.team.length ? v.team.map((m) => t('member', { place: `place-${m.place}`, person: m.name })).join(' · ') : t('nobody-badged'));
	say($('agreed'), held ? t(held.circulating ? 'agreed' : 'agreed-alone', { what: key(`count-${held.count}`), time: held.at, person: held.field, other_person: held.circulating, recorder: held.recorded }) : '');
}

function draw() {
	const v = state.view, bad = trouble(), wall = !flows(), root = document.documentElement;
	if (state.typing !== 'over') // for kiosks
		document.title = `${t('board')} ${new Date().toTimeString().slice(0, 8)}`;
	root.dataset.practice = v?.practice ? 'yes' : 'no';
	root.dataset.trouble = bad ? 'yes' : 'no';
	root.dataset.limbs = bad && !v ? 0 : limbsOf(v?.digits ?? []).length;
	root.dataset.part = signingOut(v) ? 'points' : searching(v) ? 'search' : v?.case?.final === 'asking' ? 'count' : v?.case ? 'case' : 'idle';
	if (bad) // nothing may lie over it
		document.querySelectorAll('dialog[open]').forEach((d) => d.close());
	drawStrip(v, bad);
	drawElsewhere($('elsewhere'), v?.elsewhere);
	drawShout($('shout'), bad ? null : v, passed());
	drawNow(v, bad);
	drawSheet($('sheet'), v);
	drawTeam(v, bad);
	$('type').hidden = state.typing === 'off' || !v;
	const notes = notesOf(v, state.status, passed(), { soundWaits: waits(), stray: stray(), typingOver: state.typing === 'over' });
	const drawn = [state.views, bad, $('clocks').textContent, $('shout').textContent, $('said').textContent, $('said').dataset.fresh, $('now').dataset.stands, ...notes.map((n) => n.text)].join('\n');
	fit(wall, drawn, (turns) => drawNotes($('note'), notes, { flows: !wall, turns, now_ms: (v?.at_ms ?? 0) + passed(), further: (v?.slips_older ?? 0) + (v?.owed_more ?? 0) }));
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
	due('reminder', !bad && (v?.digits.some((d) => d.reminded) || remindsHere(v?.elsewhere, v?.room.number)));
	due('elsewhere', !bad && nobodyAnswers(v?.elsewhere, v?.room.number), () => sound('reminder', v, true));
}

// What was scanned meanwhile must not lie under a dialog: the choices go, the typing says it.
function hearScan(before, v) {
	const key = (x) => x?.recent?.[0] && `${Math.round((x.at_ms - x.recent[0].ago_ms) / 50)} ${x.recent[0].said}`;
	if (!before || key(before) === key(v) || !v.recent?.[0])
		return;
	$('choices').close();
	keyed.scanned(v.recent[0], v.awake);
	sound(v.recent[0].verdict, v);
}

function labels() {
	label();
	put($('type'), shape('keys'), el('span', {}, t('type-a-code')));
	put($('settings'), shape('light'), el('span', {}, t('light-and-sound')));
}
labels();

// In the room's language, as soon as it is here.
async function hearLanguage(v) {
	if (!await speak(v.language))
		return;
	state.views++;
	labels();
	draw();
}

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
		Object.assign(state, { view: v, views: state.views + 1, at });
		hearScan(before, v);
		draw();
		void hearLanguage(v);
	},
	status(s) { state.status = s; },
	picture: (p) => import('./camera.js').then((c) => c.picture(p, state, draw)),
	closed() { Object.assign(state, { view: null, status: null, typing: 'off' }); draw(); }, // what was seen before goes
});
setInterval(draw, 250);
addEventListener('resize', draw);
draw();
