// Where the sheet would get too little room, what can wait gives way, least needed first; the reply to a fresh scan and the
// next step never do.
import { $, deep } from './dom.js';

// In this order; each stays gone for the ones after it.
const GIVE_WAY = ['words-of-buttons', 'intended', 'agreed', 'team', 'since', 'notes-turn', 'old-reply', 'figure', 'notes', 'next', 'shout', 'clocks', 'sheet', 'faults', 'type'];
const ORDERS = {
	idle: ['words-of-buttons', 'intended', 'sheet', 'notes-turn', 'old-reply', 'next', 'shout', 'notes', 'faults', 'type'],
	search: ['words-of-buttons', 'agreed', 'notes-turn', 'cards', 'notes', 'old-reply', 'figure', 'sheet', 'shout', 'next', 'faults', 'type'],
	points: ['words-of-buttons', 'agreed', 'team', 'notes-turn', 'old-reply', 'next', 'figure', 'notes', 'sheet', 'faults', 'type'], // they are what is to be read
	// It is answered before the sheet is read.
	question: ['words-of-buttons', 'intended', 'agreed', 'team', 'since', 'notes-turn', 'old-reply', 'figure', 'notes', 'sheet', 'next', 'shout', 'clocks', 'faults', 'type'],
};
// How much of the sheet is to be seen before what is less needed stands beside it.
const MOST_MM = { points: 190, search: 30, count: 112, case: 112, idle: 112 };

function overflows() {
	return $('main').scrollHeight > $('main').clientHeight + 1;
}

// Its head, what must stand, and one further line; or that it is empty.
function least(box) {
	const high = (e) => e?.offsetHeight ?? 0, lines = [...box.querySelectorAll('tbody > tr:not(.pinned)')].map(high);
	return high(box.querySelector('thead, h2, .empty')) + [...box.querySelectorAll('tr.pinned')].reduce((sum, e) => sum + high(e), 0) + Math.max(0, ...lines);
}

// All while something else can go, half once the drawing has gone, then the least.
function enough(mm, gone, order) {
	if (overflows())
		return false;
	const drawing = order.includes('figure') ? order.indexOf('figure') : order.length, part = gone > drawing + 1 ? 0 : gone > drawing ? 0.5 : 1, most = MOST_MM[document.documentElement.dataset.part] * mm;
	const need = gone > order.indexOf('sheet') ? 0 : Math.max(least($('sheet')), part * Math.min(deep($('sheet')), most));
	return !need || $('middle').clientHeight + 1 >= need;
}

const found = { of: '', gone: 0 };

// `notes(turns)` draws them, below each other or by turns. `of` says what is drawn: for the same nothing is tried again.
export function fit(wall, of, notes) {
	const root = document.documentElement, mm = Math.hypot(innerWidth, innerHeight) / 609.6, order = ORDERS[root.dataset.part] ?? ORDERS[$('now').dataset.kind] ?? GIVE_WAY;
	const same = `${innerWidth} ${innerHeight} ${root.dataset.part} ${of}` === found.of;
	Object.assign(found, { of: `${innerWidth} ${innerHeight} ${root.dataset.part} ${of}`, gone: same ? found.gone : 0 });
	for (let first = true; ; found.gone++, first = false) {
		root.dataset.gone = order.slice(0, found.gone).join(' ');
		if (first || order[found.gone - 1] === 'notes-turn')
			notes(wall && order.indexOf('notes-turn') < found.gone);
		if (!wall || same || found.gone === order.length || enough(mm, found.gone, order))
			return;
	}
}
