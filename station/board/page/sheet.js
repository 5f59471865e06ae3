// The count sheet: what lies where, grouped by state, what needs a person first. And, when they are due, the
// discrepancy search and the sign-out in its place.
import { el, put } from './dom.js';
import { shape, tally } from './shapes.js';
import { intended } from './words.js';

const groups = [
	['extra', 'extra item', 'extra item'],
	['missing', 'missing', 'still to be found'],
	['off', 'off, not yet accounted for', 'off, not yet accounted for'],
	['on', 'on a digit', 'on a digit'],
	['in', 'counted in', 'counted in'],
	['accounted', 'accounted for', 'accounted for'],
	['away', 'isolated, not in the count', 'isolated, not in the count'],
	['back', 'returned unopened', 'returned unopened'],
];
const places = { here: 'in', on: 'on', off: 'off', accounted: 'accounted', extra: 'extra', isolated: 'away', returned: 'back' };

function groupOf(item) {
	const g = places[item.place];
	return g && g !== 'extra' && g !== 'accounted' && item.missing > 0 ? 'missing' : g;
}

const counted = (item) => ['in', 'on', 'off', 'accounted', 'missing'].includes(groupOf(item));

function itemText(item) {
	const part = item.shown > 0 && item.shown < item.pieces;
	return item.name + (part ? `, ${item.shown} of ${item.pieces} shown` : '') +
		(item.condition ? `, ${item.condition}` : '') + (item.unlisted ? ', not listed' : '') +
		(item.dropped ? ', dropped' : '') + (item.added ? ', added' : '');
}

// Equal texts become one with their number.
function together(items, pieces) {
	const found = new Map();
	for (const i of items)
		found.set(itemText(i), (found.get(itemText(i)) ?? 0) + pieces(i));
	return [...found].map(([text, n]) => (n > 1 ? `${n} × ${text}` : text));
}

// Short lists stand in one line; a long one becomes several parts, so that it can be shown by turns.
const LONG = 70;
function inParts(texts) {
	const parts = [];
	for (const t of texts)
		if (parts.length && parts.at(-1).length + t.length < LONG)
			parts[parts.length - 1] += ` · ${t}`;
		else
			parts.push(t);
	return parts;
}

function contentOf(key, items, view) {
	const pieces = (i) => (key === 'missing' ? i.missing : i.pieces || 1);
	if (key !== 'on' && key !== 'off')
		return inParts(together(items, pieces));
	const numbers = [...new Set(items.map((i) => i.digit))];
	return numbers.map((n) => {
		const d = view.digits.find((x) => x.number === n);
		return `${d ? `${d.name}${key === 'on' && d.on_at && view.digits.length < 4 ? `, since ${d.on_at}` : ''}: ` : ''}${together(items.filter((i) => i.digit === n), pieces).join(' · ')}`;
	});
}

function groupNodes(view) {
	return groups.flatMap(([key, usual, plain]) => {
		const items = view.items.filter((i) => groupOf(i) === key);
		if (!items.length)
			return [];
		const n = items.reduce((sum, i) => sum + (key === 'missing' ? i.missing : i.pieces || 1), 0);
		const head = (more) => el('h3', {}, shape(key === 'back' ? 'away' : key), el('span', {}, (view.awake ? plain : usual) + more),
			...(more ? [] : [el('b', {}, `${n}`), tally(n)]));
		return contentOf(key, items, view).map((t, i) => el('div', { class: `group ${key}${i ? ' more' : ''}` }, head(i ? ', more' : ''), el('p', {}, t)));
	});
}

export function summary(view) {
	const items = view.items.filter(counted), sum = (f) => items.reduce((n, i) => n + f(i), 0);
	const all = sum((i) => i.pieces || 1), back = sum((i) => (groupOf(i) === 'accounted' ? i.pieces || 1 : i.shown ?? 0));
	return all ? `${back} of ${all} accounted for` : 'nothing in yet';
}

function searchNodes(view) {
	const steps = view.search, done = steps.filter((s) => s.answered).length;
	return [
		el('h2', {}, el('span', {}, view.awake ? 'Counting again' : 'Discrepancy: search'), el('span', {}, `${done} of ${steps.length} answered`)),
		...groupNodes(view).filter((g) => /missing|extra|off/.test(g.className)).map((g) => { g.classList.add('pinned'); return g; }),
		el('ol', { class: 'steps' }, ...steps.map((s, i) => el('li', {
			class: s.answered ? 'done' : i === done ? 'here' : 'open', 'aria-current': i === done ? 'step' : undefined,
		}, shape(s.answered ? 'done' : i === done ? 'here' : 'open'), el('span', {}, `${i + 1}. ${s.text}`)))),
	];
}

function pointNodes(view) {
	const yes = view.case.points_yes, no = view.case.point_no;
	return [
		el('h2', {}, el('span', {}, 'Sign-out: read aloud'), el('span', {}, summary(view))),
		el('ol', { class: 'steps' }, ...view.points.map((text, i) => {
			const state = i + 1 === no ? 'missing' : i < yes ? 'done' : 'open';
			return el('li', { class: state }, shape(state), el('span', {}, `${i + 1}. ${text}${i + 1 === no ? ' NO: held' : i < yes ? ' YES' : ''}`));
		})),
	];
}

export const signingOut = (view) =>
	!!view?.case && (view.case.sign_out || view.question === 'point' || view.case.point_no > 0);
// While lines are counted again, they stand there and the steps wait.
export const searching = (view) => (view?.search?.length ?? 0) > 0 && !view.asked_item;

export function drawSheet(box, view) {
	box.dataset.counting = view?.case && view.case.final !== 'none' ? 'yes' : 'no';
	if (!view?.case)
		put(box, el('h2', {}, view ? 'No case is open here' : 'Nothing is known here'), el('p', { class: 'intended' }, intended));
	else if (signingOut(view))
		put(box, ...pointNodes(view));
	else if (searching(view))
		put(box, ...searchNodes(view));
	else
		put(box, el('h2', {}, el('span', {}, view.case.discrepancy ? `Counting again: ${summary(view).replace(' accounted for', '')}` : `Sheet: ${summary(view)}`)), ...groupNodes(view));
}
