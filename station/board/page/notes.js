// At most three notes: what is wrong with the station, what the open case owes, what is owed besides. The rest are counted.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { age, runs, slipValues, t, whole } from './words.js';

const TURN_MS = 5000, MOST = 3;

// `page`: what the page itself knows. soundWaits; stray: a scanner that is not the station's typed into it; typingOver:
// its cookie is not taken any more. Each note: {kind, text, at_ms: since when by the wall clock, 0 not known}.
export function notesOf(view, status, passed_ms, { soundWaits, stray, typingOver }) {
	const list = [], add = (kind, text, at_ms = 0) => list.push({ kind, text, at_ms });
	for (const f of new Set([...(view?.faults ?? [])]))
		add('fault', f);
	if (view?.clock)
		add('fault', view.clock);
	if (stray)
		add('fault', t('stray'));
	for (const d of view?.digits ?? [])
		if (d.gap && runs(d))
			add('fault', t(d.by_wall_ms ? 'gap-by-wall' : 'gap-at-least', { digit: d.number, time: d.on_at, n: whole(d.stretch_ms + passed_ms) }));
	for (const d of (view?.debts ?? []).filter((x) => !x.next))
		add('owed', t('owed', { what: d.name }));
	const here = (s) => s.case === view?.case?.number, slips = view?.slips ?? [];
	const slip = (s) => add('slip', t(s.kind === 'reconciliation' ? 'slip-of' : 'slip-of-kind', slipValues(s)), s.since_ms);
	slips.filter(here).forEach(slip);
	if (typingOver)
		add('quiet', t('typing-over'));
	for (const w of view?.waits ?? [])
		add('waits', w);
	if (soundWaits)
		add('quiet', t('sound-waits'));
	if (view?.suspended_case)
		add('owed', t('suspended-case', { case: view.suspended_case }));
	for (const n of view?.owed ?? [])
		add('owed', t('incident-owed', { case: n.case }), n.since_ms);
	slips.filter((s) => !here(s)).forEach(slip);
	if (status && !status.printer)
		add('slip', t('no-printer'));
	return list;
}

// Those that stand, and what is said of the others; `further`: how many there are besides that no view lists.
export function chosen(list, now_ms, further) {
	const some = list.slice(0, MOST), rest = list.slice(MOST), n = rest.length + further;
	const oldest = Math.min(...rest.map((r) => r.at_ms || Infinity));
	return { some, more: !n ? '' : Number.isFinite(oldest) ? t('and-more-oldest', { n, words: age(now_ms - oldest) }) : t('and-more', { n }) };
}

const node = (n, ...after) => el('p', { class: `note ${n.kind}` }, shape(n.kind), el('span', {}, n.text), ...after);

// Where there is no room they take turns in one place, as high as the highest, so that nothing else moves. A fault stands.
export function drawNotes(box, list, { flows, turns, now_ms, further }) {
	const { some, more } = chosen(list, now_ms, further), last = more ? [el('span', { class: 'more' }, more)] : [];
	if (flows)
		return void put(box, ...list.map((n) => node(n)), ...(more && further ? [el('p', { class: 'note' }, t('and-more', { n: further }))] : []));
	if (!turns)
		return void put(box, ...some.map((n, i) => node(n, ...(i === some.length - 1 ? last : []))));
	const faults = some.filter((n) => n.kind === 'fault'), others = some.filter((n) => n.kind !== 'fault');
	put(box, ...inTurn(faults, others.length ? [] : last), ...inTurn(others, last));
}

function inTurn(notes, last) {
	const now = Math.floor(performance.now() / TURN_MS) % notes.length;
	return notes.length ? [el('div', { class: 'turn' }, ...notes.map((n, i) => {
		const p = node(n, ...(notes.length > 1 ? [el('span', { class: 'place' }, `${i + 1}/${notes.length}`)] : []), ...last.map((x) => x.cloneNode(true)));
		p.classList.toggle('later', i !== now);
		return p;
	}))] : [];
}
