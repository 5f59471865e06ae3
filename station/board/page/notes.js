// What must not be forgotten, one line after the other: faults first, then what is owed, slips, and scans before.
import { el, put } from './dom.js';
import { shape } from './shapes.js';
import { ago, digitWords, minutes, verdict } from './words.js';

const TURN_MS = 5000;

const teamText = (view) => (view.team.map((t) => `${t.place}: ${t.name}`).join(' · ') || 'Nobody is badged yet') +
	(view.case.single ? ' · single-person count' : '');

const agreedText = (a) => `${a.at}, ${a.count}: ` + (a.circulating ?
	`agreed aloud by ${a.field} and ${a.circulating}, recorded by ${a.recorded}.` : `single-person, by ${a.field}.`);

// `page`: what the page itself knows. said: the last reply stands above already; soundWaits; stray: a scanner that
// is not the station's typed into it; typingOver: its cookie is not taken any more.
export function notesOf(view, status, passed_ms, { said, soundWaits, stray, typingOver }) {
	const list = [], add = (kind, text) => list.push({ kind, text });
	for (const f of new Set([...(view?.faults ?? [])]))
		add('fault', f);
	if (view?.clock)
		add('fault', view.clock);
	if (stray)
		add('fault', 'Not counted: a scanner that the station does not know typed into this page. Use the room\'s own scanner; scanners.ini lists which are known.');
	for (const d of view?.digits ?? [])
		if (d.gap && (d.state === 'on' || d.state === 'maybe-on'))
			add('fault', `Clock gap: ${d.name} on ${d.by_wall_ms ? `since ${d.on_at} by the wall clock; at least` : 'for at least'} ${minutes(d.stretch_ms + passed_ms)}${d.by_wall_ms ? ' are known' : '; the wall clock cannot be trusted'}.`);
	for (const d of view?.digits ?? [])
		if (d.reminded)
			add('reminder', `Reminder: ${d.name}, ${digitWords(d, passed_ms)}. Scan any badge to acknowledge.`);
	for (const d of view?.debts ?? [])
		add('owed', `Owed: ${d}.`);
	if (view?.suspended_case)
		add('owed', `Case ${view.suspended_case} is suspended here: its clocks go on. SUSPEND continues it.`);
	for (const n of view?.owed ?? [])
		add('owed', `Case ${n}: incident number owed.`);
	if (view?.owed_more)
		add('owed', `And ${view.owed_more} more: incident number owed.`);
	for (const s of view?.slips ?? [])
		add('slip', `Slip ${s.number}, case ${s.case}${s.kind === 'reconciliation' ? '' : `, ${s.kind}`}: ${s.state}, not seen yet.`);
	if (view?.slips_older)
		add('slip', `And ${view.slips_older} older: not seen yet.`);
	if (view?.case)
		add('team', teamText(view));
	for (const a of view?.agreed ?? [])
		add('agreed', agreedText(a));
	if (typingOver)
		add('quiet', 'Typing is closed: ask for a new ticket.');
	if (soundWaits)
		add('quiet', 'Sound waits until this board is touched once.');
	if (status && !status.printer)
		add('slip', 'No printer is set: slips are written as PDF.');
	for (const r of (view?.recent ?? []).slice(said ? 1 : 0, 3))
		add(r.verdict, `${ago(r.ago_ms + passed_ms)}, ${verdict(r.verdict, view.awake).toLowerCase()}: ${r.said}`);
	return list;
}

const node = (n, place) => el('p', { class: `note ${n.kind}` }, shape(n.kind), el('span', {}, n.text), ...(place ? [el('span', { class: 'place' }, place)] : []));

// Notes that take turns lie in one place, so that the place is as high as the highest and nothing else moves.
function turns(notes) {
	const now = Math.floor(performance.now() / TURN_MS) % notes.length;
	return notes.length ? [el('div', { class: 'turn' }, ...notes.map((n, i) => {
		const p = node(n, notes.length > 1 ? `${i + 1}/${notes.length}` : '');
		p.classList.toggle('waits', i !== now);
		return p;
	}))] : [];
}

// On the wall the others take turns under the faults, which stay; in a scrolling page all of them stand.
export function drawNotes(box, list, flows) {
	if (flows)
		put(box, ...list.map((n) => node(n)));
	else
		put(box, ...turns(list.filter((n) => n.kind === 'fault')), ...turns(list.filter((n) => n.kind !== 'fault')));
}
