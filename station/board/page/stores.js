// The page of a stores bench: what is asked there, what is to be done today, what lies where. The station decides; here it is
// shown, and typed what a scanner cannot say.
import './stores-words.js';
import { $, el, put, say } from './dom.js';
import { Link } from './link.js';
import { language, speak } from './sentences.js';
import { ask, send } from './stores-ask.js';
import { showLabel, setUpRuler } from './stores-label.js';
import { cameBack, changes, day, had, lots, missed, printings, quarantines, recalled, shortfalls, tasks, trays } from './stores-lists.js';
import { hour, label, reply, t } from './words.js';

const room = Number(new URLSearchParams(location.search).get('room')) || 0;
const state = { view: null, at: 0, status: null, typing: 'off', part: 'today', previewed: false };
const stores = () => state.view?.stores;
const mayType = () => state.typing === 'yes';
const number = () => state.view?.room.number ?? room;

function trouble() {
	const silent = link.silence();
	if (link.refused)
		return link.refused;
	if (getComputedStyle(document.documentElement).getPropertyValue('--whole').trim() !== '1')
		return t('desk-not-styled');
	if (silent)
		return t('desk-silent', { n: Math.floor(silent / 1000) });
	if (!link.heard)
		return t('desk-waiting');
	if (!stores())
		return t('st-no-bench');
	return state.view.distrust ? t('desk-distrust', { words: state.view.distrust }) : '';
}

/* --- what is asked ---------------------------------------------------------------------------------- */

// Whether somebody's badge is asked for.
const asksBadge = () => !!state.view?.deeds.some((d) => d.kind === 'badge');

// The field is free at once for what is typed next; what was refused comes back, unless something stands there already.
let steps = 0;
async function step(what) {
	const mine = ++steps, typed = $('typed').value;
	const back = () => {
		if (mine !== steps || $('typed').value)
			return;
		$('typed').value = typed;
		$('typed').select();
	};
	$('typed').value = '';
	$('typed').focus();
	say($('judged'), t('is-sent'));
	try {
		const r = await ask(number(), { do: 'step', step: what });
		say($('judged'), '');
		if (r.verdict === 'refused')
			back();
	} catch (why) {
		back();
		say($('judged'), why.message);
	}
}

const button = (words, act, cls = 'card') => {
	const b = el('button', { type: 'button', class: cls, disabled: !mayType() }, words);
	b.addEventListener('click', act);
	return b;
};

// A card of a room stands for each room.
function deedNodes(v) {
	const cards = [...v.cards];
	return v.deeds.flatMap((d) => {
		if (d.kind !== 'card')
			return [];
		const c = cards.shift(), to = d.truth === 'room-of';
		if (to)
			return (state.status?.rooms ?? []).filter((r) => !r.stores).map((r) => el('li', {}, button(r.name, () => step({ to_room: r.number }))));
		return [el('li', {}, button(c.words, () => step({ card: c.number })), d.words ? ` ${d.words}` : '')];
	});
}

function drawCards() {
	const list = stores()?.cards ?? [], drawn = [mayType(), state.view?.language, ...list.map((c) => c.words), ...(state.status?.rooms ?? []).map((r) => r.name)].join();
	if (drawn === $('cards').dataset.drawn)
		return;
	$('cards').dataset.drawn = drawn;
	$('cards').replaceChildren(...list.map((c) => el('li', {}, button(c.words, () => step({ card: c.number })))),
		...(state.status?.rooms ?? []).filter((r) => !r.stores).map((r) => el('li', {}, button(`→ ${r.name}`, () => step({ to_room: r.number })))));
}

function drawBench(v) {
	const last = v?.recent?.[0], deeds = v ? deedNodes(v) : [], drawn = [mayType(), v?.next, ...deeds.map((d) => d.textContent)].join('\n');
	$('said').dataset.verdict = last?.verdict ?? '';
	put($('said'), ...(last ? [el('b', {}, `${reply(last.verdict)} `), last.said] : []));
	say($('next'), v?.next ?? '');
	if (drawn !== $('deeds').dataset.drawn) {
		$('deeds').dataset.drawn = drawn;
		$('deeds').replaceChildren(...deeds);
	}
	drawCards();
	$('type').hidden = $('other').hidden = !mayType();
	$('closed').hidden = mayType() || !v;
	say($('typed-how'), t(asksBadge() ? 'st-badge-how' : 'st-typed-how'));
}

/* --- parts ------------------------------------------------------------------------------------------ */

const PARTS = ['today', 'stock', 'labels', 'recall', 'trays', 'import'];

function drawParts() {
	const drawn = `${state.part} ${language()}`;
	if (drawn !== $('parts').dataset.drawn) {
		$('parts').dataset.drawn = drawn;
		const held = $('parts').contains(document.activeElement) ? document.activeElement.dataset.part : '';
		$('parts').replaceChildren(...PARTS.map((p) => {
			const b = el('button', { type: 'button', 'data-part': p, 'aria-pressed': String(p === state.part), 'aria-controls': p }, t(`st-${p}`));
			b.addEventListener('click', () => open(p));
			return b;
		}));
		$('parts').querySelector(`[data-part="${held}"]`)?.focus();
	}
	for (const p of PARTS)
		$(p).hidden = p !== state.part;
}

function open(part) {
	state.part = part;
	if (part === 'stock')
		void seek();
	if (part === 'trays')
		void showFound();
	draw();
}

function printButton(part) {
	const b = el('button', { type: 'button', class: 'print' }, t('st-print'));
	b.addEventListener('click', () => {
		const now = new Date();
		say($('printed'), t('st-printed', { date: day(now.getFullYear() * 10000 + (now.getMonth() + 1) * 100 + now.getDate()), time: hour(state.view.at_ms + performance.now() - state.at, state.view.utc_min ?? 0) }));
		print();
	});
	$(part).querySelector('.print')?.remove();
	$(part).querySelector('h2').after(b);
}

/* --- the stock -------------------------------------------------------------------------------------- */

let sought = 0;

async function seek() {
	const mine = ++sought;
	if (!mayType()) { // what the view has is shown to all
		const s = stores();
		put($('lots'), lots(s?.stock ?? []));
		return say($('found'), s?.more ? t('st-more', { n: s.more }) : '');
	}
	try {
		const r = await ask(number(), { do: 'stock', text: $('seek-text').value.trim(), only: $('seek-only').value });
		if (mine !== sought)
			return undefined;
		put($('lots'), lots(r.stock));
		return say($('found'), r.more ? t('st-more', { n: r.more }) : t('st-found', { n: r.stock.length }));
	} catch (why) {
		return say($('found'), why.message);
	}
}

/* --- recall and catalogue --------------------------------------------------------------------------- */

async function showRecall(e) {
	e.preventDefault();
	const of = { line: $('recall-key').value.trim(), lot: $('recall-lot').value.trim() };
	put($('recalled'), el('p', {}, t('st-wait')));
	try {
		const { recall } = await ask(number(), { do: 'recall', ...of });
		put($('recalled'), ...recalled(of, recall));
	} catch (why) {
		put($('recalled'), el('p', { class: 'wrong' }, why.message));
	}
}

// Asked anew only where a deed at a bench may have changed it.
async function showFound() {
	const now = [mayType(), state.view?.language, JSON.stringify(stores()?.missing), state.view?.recent?.[0]?.said].join();
	if (now === $('came-back').dataset.of)
		return;
	$('came-back').dataset.of = now;
	if (!mayType())
		return put($('came-back'), el('p', {}, t('st-came-closed')));
	try {
		const { found } = await ask(number(), { do: 'shortfalls' });
		return put($('came-back'), cameBack(found));
	} catch (why) {
		$('came-back').dataset.of = '';
		return put($('came-back'), el('p', { class: 'wrong' }, why.message));
	}
}

async function showHad(e) {
	e.preventDefault();
	const line = $('had-key').value.trim(), since = Number($('had-since').value.replaceAll('-', ''));
	put($('had'), el('p', {}, t('st-wait')));
	try {
		const r = await ask(number(), { do: 'used', line, since });
		put($('had'), ...had(line, r.used));
	} catch (why) {
		put($('had'), el('p', { class: 'wrong' }, why.message));
	}
}

function mayTake(yes) {
	state.previewed = yes;
	$('take').disabled = !yes;
}

async function showImport(preview) {
	const file = $('file').files[0];
	if (!file)
		return put($('changes'), el('p', { class: 'wrong' }, t('st-file-again')));
	put($('changes'), el('p', {}, t('st-wait')));
	mayTake(false);
	try {
		if (preview)
			await send(number(), file);
		const r = await ask(number(), { do: 'import', preview, whole: $('whole').checked });
		put($('changes'), ...changes(r, !preview));
		mayTake(preview);
	} catch (why) {
		put($('changes'), el('p', { class: 'wrong' }, why.message));
	}
	return undefined;
}

async function saveCatalogue() {
	try {
		const { csv } = await ask(number(), { do: 'lines' }), a = el('a', { download: 'catalogue.csv', href: URL.createObjectURL(new Blob([csv], { type: 'text/csv' })) });
		a.click();
		URL.revokeObjectURL(a.href);
	} catch (why) {
		put($('changes'), el('p', { class: 'wrong' }, why.message));
	}
}

/* --- all ---------------------------------------------------------------------------------------------- */

function fillKeys() {
	const keys = [...new Set((stores()?.stock ?? []).map((l) => l.key))].sort();
	put($('keys'), ...keys.map((k) => el('option', { value: k })));
}

function draw() {
	const v = state.view, s = stores(), bad = trouble();
	$('trouble').hidden = !bad;
	say($('trouble'), bad);
	say($('place'), v ? v.room.name : t('st-title'));
	say($('person'), !s ? '' : s.person ? t('st-person', { person: s.person }) : t('st-nobody'));
	say($('intended'), t('intended'));
	drawBench(s ? v : null);
	drawParts();
}

function drawLists() {
	const s = stores();
	if (!s)
		return;
	put($('tasks'), tasks(s));
	put($('printings'), printings(s.labels));
	put($('quarantines'), quarantines(s.quarantine));
	put($('short'), shortfalls(s.short));
	put($('missed'), missed(s.missing));
	put($('lists'), trays(s.trays));
	fillKeys();
	if (state.part === 'stock')
		void seek();
	if (state.part === 'trays')
		void showFound();
}

function words() {
	label();
	for (const part of ['today', 'stock', 'recall', 'trays'])
		printButton(part);
	const now = $('seek-only').value;
	put($('seek-only'), ...['', 'due', 'waits', 'withheld', 'rooms', 'unaccounted'].map((o) => el('option', { value: o }, t(`st-only-${o || 'all'}`))));
	$('seek-only').value = now;
}

async function hearLanguage(v) {
	if (!await speak(v.language))
		return;
	words();
	drawLists();
	draw();
}

words();
let typedSince = 0;
$('seek').addEventListener('submit', (e) => { e.preventDefault(); void seek(); });
$('seek-only').addEventListener('change', () => void seek());
$('seek-text').addEventListener('input', () => { clearTimeout(typedSince); typedSince = setTimeout(seek, 250); });
$('ask-recall').addEventListener('submit', showRecall);
$('ask-had').addEventListener('submit', showHad);
$('ask-label').addEventListener('submit', (e) => { e.preventDefault(); void showLabel(number()); });
setUpRuler();
$('ask-import').addEventListener('submit', (e) => { e.preventDefault(); void showImport(true); });
$('take').addEventListener('click', () => void showImport(false));
$('export').addEventListener('click', saveCatalogue);
for (const id of ['file', 'whole'])
	$(id).addEventListener('change', () => mayTake(false));
$('type').addEventListener('submit', (e) => {
	e.preventDefault();
	const text = $('typed').value.trim();
	if (text)
		void step(asksBadge() && /^\d{1,6}$/.test(text) ? { badge: Number(text) } : { text });
});
const link = new Link(`/events?room=${room || 1}`, {
	alive() {},
	hello(h) { state.typing = h.typing; drawLists(); draw(); },
	view(view, at) { Object.assign(state, { view, at }); drawLists(); draw(); void hearLanguage(view); },
	status(s) { state.status = s; draw(); },
	closed() { Object.assign(state, { view: null, status: null, typing: 'off' }); draw(); },
});
setInterval(draw, 250);
setInterval(() => {
	if (state.typing !== 'over') // for kiosks
		document.title = `${t(document.body.dataset.title)} ${new Date().toTimeString().slice(0, 8)}`;
}, 1000);
draw();
